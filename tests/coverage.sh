#!/usr/bin/env bash
# Which lines and branches the tests reach: bash tests/coverage.sh
# A build of its own in build/coverage (Clang's source-based counting), every test program once and three whole jobs, then a table, a
# row for each part: what it reached, and the goal. Ends with 1 when a goal is missed. A branch is one way out of a condition
# as it is written in the source: the tidying-up behind an exception, which compilers count too, is none.
#   COVERAGE_BUILD=FOLDER      another place for the build
# Each file stands in build/coverage/files.txt. What one of them has not reached:
#   llvm-cov-14 show $(cat build/coverage/objects) -show-branches=count lib/job/guards.cpp
set -uo pipefail
cd "$(dirname "$0")/.."
build=${COVERAGE_BUILD:-build/coverage}
bash tests/setup.sh --coverage || exit 1
mkdir -p "$build"
build=$(realpath "$build")
log=$build/last_step.log
# Not test_oom, whose memory is not the machine's, nor what reaches no source of ours.
programs=(test_base test_trade test_entry test_method test_pdf test_job test_book test_paper test_desk test_fuzz test_cli test_power)
if ! cmake -S . -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DUNDERSHEET_PRECOMPILE=ON -DCMAKE_C_COMPILER=clang-14 \
    -DCMAKE_CXX_COMPILER=clang++-14 -DCMAKE_CXX_FLAGS_DEBUG=-O0 \
    -DCMAKE_CXX_FLAGS="-fprofile-instr-generate -fcoverage-mapping" >"$log" 2>&1 ||
    ! cmake --build "$build" --target undersheet draw-photo "${programs[@]}" >"$log" 2>&1; then
    tail -n 40 "$log" >&2
    exit 1
fi

rm -rf "$build/counted"
export LLVM_PROFILE_FILE=$build/counted/%4m.profraw # programs started at once share four files each
failed=0
for program in "${programs[@]}"; do
    left_out=() # files may not grow there, and counting writes files
    if [ "$program" = test_cli ]; then left_out=("~a file size limit refuses*"); fi
    "$build/$program" --use-colour no "${left_out[@]}" >"$log" 2>&1 </dev/null || { failed=1 && tail -n 20 "$log" && echo "failed: $program"; }
done
export UNDERSHEET=$build/cli/undersheet DRAW_PHOTO=$build/fixtures/draw-photo # whole jobs, typed
for job in small_dormer/run.sh demo/job.sh tamper.sh; do
    bash "fixtures/$job" "$build/jobs" >"$log" 2>&1 || { failed=1 && tail -n 20 "$log" && echo "failed: $job"; }
done

objects=("$build/cli/undersheet")
for program in "${programs[@]}"; do objects+=(-object "$build/$program"); done
echo "${objects[@]}" "-instr-profile=$build/counted/all" >"$build/objects"
if ! llvm-profdata-14 merge -sparse -o "$build/counted/all" "$build"/counted/*.profraw ||
    ! llvm-cov-14 report "${objects[@]}" -instr-profile="$build/counted/all" lib cli >"$build/files.txt"; then exit 1; fi

# Which part a file belongs to. The state machine: what may move a part, and what state it is in.
awk '
    function part_of(file) {
        if (file ~ /^lib\/entry\//) return "entry"
        if (file ~ /^lib\/book\//) return "book"
        if (file ~ /^lib\/job\/(guards|parts|derive_parts|replay|view|steps|clashes|settle|fold|told|job)[a-z_]*\./) return "state machine"
        return "the rest"
    }
    /^(lib|cli)\// {
        part = part_of($1)
        lines[part] += $8; lines_missed[part] += $9; branches[part] += $11; branches_missed[part] += $12
    }
    function share(missed, all) { return all > 0 ? 100 * (all - missed) / all : 0 }
    END {
        printf "%-14s %8s %8s   %9s %8s   %6s\n", "part", "lines", "reached", "branches", "reached", "goal"
        count = split("entry,book,state machine,the rest", order, ",")
        for (i = 1; i <= count; i++) {
            p = order[i]
            goal = p == "the rest" ? 85 : 95
            reached = share(branches_missed[p], branches[p])
            met = reached >= goal ? "met" : "not met"
            if (met != "met") missed = 1
            printf "%-14s %8d %7.2f%%   %9d %7.2f%%   >= %d%% %s\n", p, lines[p], share(lines_missed[p], lines[p]), branches[p], reached, goal, met
        }
        exit missed
    }' "$build/files.txt" || failed=1
exit $failed
