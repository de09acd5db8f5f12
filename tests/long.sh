#!/usr/bin/env bash
# For nights: every test program again and again in another order each time, watched by the sanitizers; every fuzz target
# for an hour; every bit of the demo job's evidence, and the power cut at every step of its commands; the benchmark. Finds
# tests that lean on one another, faults that show only now and then, and inputs that nobody thought of.
#   bash tests/long.sh [ROUNDS]            (default 20)
#   LONG_FUZZ_SECONDS=600 LONG_SCHEDULES=100000 bash tests/long.sh   shorter; 0 seconds leave fuzzing out
# Ends with a table, a row for each: what, seconds, runs, failed. A failed round names its seed, so that it can be run again.
set -uo pipefail
cd "$(dirname "$0")/.."
rounds=${1:-20}
fuzz_seconds=${LONG_FUZZ_SECONDS:-3600}
if ! [[ $rounds =~ ^[1-9][0-9]*$ && $fuzz_seconds =~ ^[0-9]+$ ]]; then
    echo "long: \"$rounds\" rounds and \"$fuzz_seconds\" seconds are no numbers" >&2
    exit 2
fi

# --- the table ---

table=()
failed=0
# row WHAT SECONDS RUNS FAILED
row() {
    table+=("$(printf '%-20s %8s %14s %8s' "$@")")
    failed=$((failed + $4))
}

# --- what is run; each adds its rows ---

in_any_order() {
    local started=$SECONDS good=0 bad=0 round seed program
    for ((round = 1; round <= rounds; round++)); do
        seed=$((RANDOM * 32768 + RANDOM))
        for program in build/clang/test_*; do
            if "$program" --order rand --rng-seed "$seed" --use-colour no >build/long.log 2>&1 </dev/null; then
                good=$((good + 1))
            else
                bad=$((bad + 1))
                tail -n 40 build/long.log
                echo "failed: $program --order rand --rng-seed $seed"
            fi
        done
    done
    row "in any order" $((SECONDS - started)) $((good + bad)) "$bad"
}

fuzzing() {
    local target seconds runs crashes seen=0
    if [ "$fuzz_seconds" -eq 0 ]; then return; fi
    while read -r target seconds runs crashes; do
        row "fuzz $target" "$seconds" "$runs" "$crashes"
        seen=$((seen + 1))
    done < <(bash tests/fuzz/run.sh "$fuzz_seconds")
    if [ $seen -eq 0 ]; then row "fuzz does not build" 0 0 1; fi
}

benchmark() {
    local started=$SECONDS bad=0
    build/tests/bench/undersheet-bench || bad=1
    row benchmark $((SECONDS - started)) 1 $bad
}

# Schedules of several phones, by chance; LONG_SCHEDULES says how many.
schedules() {
    local started=$SECONDS bad=0 many=${LONG_SCHEDULES:-10000000}
    UNDERSHEET_SCHEDULES=$many build/test_job --use-colour no "whatever phones do apart*" >build/long.log 2>&1 || bad=1
    if [ $bad -ne 0 ]; then tail -n 40 build/long.log; fi
    row schedules $((SECONDS - started)) "$many" $bad
}

# Every bit of the demo job's evidence, and the power cut behind every step of its commands. What was N of N is printed.
evidence() {
    local started=$SECONDS bad=0 shelf=/tmp
    UNDERSHEET_EVERY_BIT=build/fixtures/troubled_job/demo.book \
        build/test_book --use-colour no "every bit of a book*" 2>&1 </dev/null | tee build/long.log
    if ! grep -q "^All tests passed" build/long.log; then bad=1; fi
    row "every bit" $((SECONDS - started)) 1 $bad
    if [ -d /dev/shm ]; then shelf=/dev/shm; fi # the real disk is not what is tried
    started=$SECONDS bad=0
    UNDERSHEET_POWER_DEMO=1 TMPDIR=$shelf build/test_power --use-colour no 2>&1 </dev/null | tee build/long.log
    if ! grep -q "^All tests passed" build/long.log; then bad=1; fi
    row "power cuts" $((SECONDS - started)) 1 $bad
}

bash tests/run.sh native clang || exit 1
in_any_order
schedules
evidence
fuzzing
benchmark

printf '%-20s %8s %14s %8s\n' what seconds runs failed
printf '%s\n' "${table[@]}"
echo "$failed failed"
[ "$failed" -eq 0 ]
