#!/usr/bin/env bash
# For nights: every test program again and again in another order each time, watched by the sanitizers; every fuzz target
# for an hour; every bit of the demo job's evidence, and the power cut at every step of its commands; what the tests reach;
# the benchmark. Finds tests that lean on one another, faults that show only now and then, and inputs that nobody thought of.
#   bash tests/long.sh [ROUNDS]            (default 20)
#   LONG_FUZZ_SECONDS=600 LONG_SCHEDULES=100000 bash tests/long.sh   shorter; 0 seconds leave fuzzing out
# Ends with two tables: what was run, with seconds, runs and failures (a failed round names its seed, so that it can be run
# again), and the goals of docs/reliability.md, with what was reached. A shortened run misses the goals that it did not try.
set -uo pipefail
cd "$(dirname "$0")/.."
rounds=${1:-20}
fuzz_seconds=${LONG_FUZZ_SECONDS:-3600}
if ! [[ $rounds =~ ^[1-9][0-9]*$ && $fuzz_seconds =~ ^[0-9]+$ ]]; then
    echo "long: \"$rounds\" rounds and \"$fuzz_seconds\" seconds are no numbers" >&2
    exit 2
fi

# --- the tables ---

table=()
failed=0
# row WHAT SECONDS RUNS FAILED
row() {
    table+=("$(printf '%-20s %8s %14s %8s' "$@")")
    failed=$((failed + $4))
}

goals=()
missed=0
# goal WHAT WANTED GOT MET?  the last as commands say it: 0 is yes
goal() {
    local said=met
    if [ "$4" -ne 0 ]; then said="not met" missed=$((missed + 1)); fi
    goals+=("$(printf '%-26s %-20s %-32s %s' "$1" "$2" "$3" "$said")")
}

# all_of GOAL PATTERN: adds up the "N of N" of the log's lines with the pattern.
all_of() {
    local good all
    read -r good all < <(awk -v pattern="$2" '$0 ~ pattern && match($0, /[0-9]+ of [0-9]+/) {
        split(substr($0, RSTART, RLENGTH), number, " of "); good += number[1]; all += number[2] }
        END { print good + 0, all + 0 }' build/long.log)
    goal "$1" "all" "$good of $all" $((all == 0 || good != all))
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

# The whole demo job, typed at the program that watches itself.
watched_demo() {
    local started=$SECONDS bad=0
    UNDERSHEET=build/clang/cli/undersheet DRAW_PHOTO=build/clang/fixtures/draw-photo \
        bash fixtures/demo/job.sh build/long_demo >build/long.log 2>&1 </dev/null || bad=1
    if [ $bad -ne 0 ]; then tail -n 40 build/long.log; fi
    row "demo, watched" $((SECONDS - started)) 1 $bad
}

fuzzing() {
    local target seconds runs crashes seen=0 crashed=0
    while read -r target seconds runs crashes; do
        row "fuzz $target" "$seconds" "$runs" "$crashes"
        seen=$((seen + 1)) crashed=$((crashed + crashes))
    done < <(if [ "$fuzz_seconds" -gt 0 ]; then bash tests/fuzz/run.sh "$fuzz_seconds"; fi)
    if [ $seen -eq 0 ] && [ "$fuzz_seconds" -gt 0 ]; then row "fuzz does not build" 0 0 1; fi
    goal "fuzzing, each target" "3600 s, 0 crashes" "$seen for $fuzz_seconds s, $crashed crashes" \
        $((seen == 0 || fuzz_seconds < 3600 || crashed > 0))
}

benchmark() {
    local started=$SECONDS bad=0
    build/tests/bench/undersheet-bench 2>&1 | tee build/long.log
    bad=$((PIPESTATUS[0] != 0))
    row benchmark $((SECONDS - started)) 1 $bad
    local took
    took=$(sed -nE 's/^verify_many: 10000 entries verified in ([0-9.]+) s.*/\1/p' build/long.log)
    awk -v took="${took:-99}" 'BEGIN { exit took >= 3 }'
    goal "verify 10,000 entries" "< 3 s" "${took:-not measured}" $?
}

# Schedules of several phones, by chance; LONG_SCHEDULES says how many, LONG_BOOK_SCHEDULES how many with real books.
schedules() {
    local started=$SECONDS bad=0 many=${LONG_SCHEDULES:-10000000} books=${LONG_BOOK_SCHEDULES:-1000}
    UNDERSHEET_SCHEDULES=$many build/test_job --use-colour no "whatever phones do apart*" >build/long.log 2>&1 || bad=1
    if [ $bad -ne 0 ]; then tail -n 40 build/long.log; fi
    row schedules $((SECONDS - started)) "$many" $bad
    goal "schedules that agree" "10000000" "$((bad == 0 ? many : 0))" $((bad != 0 || many < 10000000))
    started=$SECONDS bad=0
    UNDERSHEET_BOOK_SCHEDULES=$books build/test_desk --use-colour no "phones that write*" >build/long.log 2>&1 || bad=1
    if [ $bad -ne 0 ]; then tail -n 40 build/long.log; fi
    row "schedules of books" $((SECONDS - started)) "$books" $bad
}

# Every bit of the demo job's evidence, and the power cut behind every step of its commands. What was N of N is printed.
evidence() {
    local started=$SECONDS bad=0 shelf=/tmp
    UNDERSHEET_EVERY_BIT=build/fixtures/troubled_job/demo.book \
        build/test_book --use-colour no "every bit of a book*" 2>&1 </dev/null | tee build/long.log
    if ! grep -q "^All tests passed" build/long.log; then bad=1; fi
    row "every bit" $((SECONDS - started)) 1 $bad
    all_of "bits reported" "^every bit: "
    if [ -d /dev/shm ]; then shelf=/dev/shm; fi # the real disk is not what is tried
    started=$SECONDS bad=0
    UNDERSHEET_POWER_DEMO=1 TMPDIR=$shelf build/test_power --use-colour no 2>&1 </dev/null | tee build/long.log
    if ! grep -q "^All tests passed" build/long.log; then bad=1; fi
    row "power cuts" $((SECONDS - started)) 1 $bad
    all_of "cuts recovered" "^power: "
}

reached() {
    local started=$SECONDS bad=0 part share wanted said
    bash tests/coverage.sh | tee build/long.log
    if grep -q "^failed: " build/long.log; then bad=1; fi
    row coverage $((SECONDS - started)) 1 $bad
    for part in entry book "state machine" "the rest"; do
        read -r share wanted said < <(sed -nE "s/^$part .* ([0-9.]+%) +>= ([0-9]+%) (.*)/\\1 \\2 \\3/p" build/long.log)
        goal "branches of $part" ">= ${wanted:-?}" "${share:-not counted}" $([ "$said" = met ]; echo $?)
    done
}

bash tests/run.sh native clang || exit 1
in_any_order
watched_demo
schedules
evidence
reached
fuzzing
benchmark

printf '%-20s %8s %14s %8s\n' what seconds runs failed
printf '%s\n' "${table[@]}"
echo "$failed failed"
printf '\n%-26s %-20s %-32s %s\n' goal wanted got ""
printf '%s\n' "${goals[@]}"
[ $((failed + missed)) -eq 0 ]
