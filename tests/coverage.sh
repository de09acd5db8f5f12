#!/usr/bin/env bash
# Which lines and branches the tests reach: bash tests/coverage.sh
# A build of its own in build/coverage (GCC, --coverage, not optimised), every test program once, then a table, a row for each part.
# Branches that only an exception takes are left out (gcovr's --exclude-throw-branches): GCC counts one behind almost every
# call, and what memory does when it runs out is tried by test_oom. What it then tidies up, piece by piece, has branches too, which
# gcovr cannot tell from ours: the last columns leave out, on lines that ran and behind a closing brace, the branches of blocks
# that nothing ever entered (gcov's "never executed"). Every file stands in build/coverage/files.csv and branches.csv.
#   COVERAGE_BUILD=FOLDER      another place for the build
set -uo pipefail
cd "$(dirname "$0")/.."
build=${COVERAGE_BUILD:-build/coverage}
bash tests/setup.sh --coverage || exit 1
mkdir -p "$build"
log=$build/last_step.log
if ! cmake -S . -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DUNDERSHEET_PRECOMPILE=ON \
    -DCMAKE_CXX_FLAGS="--coverage -fprofile-update=atomic" -DCMAKE_EXE_LINKER_FLAGS=--coverage >"$log" 2>&1 ||
    ! cmake --build "$build" >"$log" 2>&1; then
    tail -n 40 "$log" >&2
    exit 1
fi
find "$build" -name '*.gcda' -delete
failed=0
for program in "$build"/test_*; do
    case $program in *test_oom) continue ;; esac # its memory is not the machine's
    left_out=() # files may not grow there, and counting writes files
    case $program in *test_cli) left_out=("~a file size limit refuses*") ;; esac
    "$program" --use-colour no "${left_out[@]}" >"$log" 2>&1 </dev/null || { failed=1 && tail -n 20 "$log" && echo "failed: $program"; }
done
export UNDERSHEET DRAW_PHOTO # whole jobs, typed
UNDERSHEET=$(realpath "$build/cli/undersheet") DRAW_PHOTO=$(realpath "$build/fixtures/draw-photo")
for job in small_dormer/run.sh demo/job.sh tamper.sh; do
    bash "fixtures/$job" "$(realpath "$build")/jobs" >"$log" 2>&1 || { failed=1 && tail -n 20 "$log" && echo "failed: $job"; }
done
gcovr --root . --object-directory "$build" --filter 'lib/' --filter 'cli/' --exclude-throw-branches --csv -o "$build/files.csv" "$build" || exit 1

# FILE,BRANCHES,REACHED of each source, from gcov's own account of it.
entered() {
    local data
    while read -r data; do
        gcov -b -c -t "$data" 2>/dev/null
    done < <(find "$build/CMakeFiles" -name '*.gcda' -path '*/lib/*' | sort) | awk -v top="$PWD/" '
        { where = index($0, ":    0:Source:") }
        where { file = substr($0, where + 14); sub(top, "", file); next }
        file !~ /^lib\/.*\.cpp$/ { next }
        /^ *[0-9#=*-]+\**: *[0-9]+:/ { ran = $1 !~ /#|=/ || $0 ~ /: *[0-9]+: *}[;)]*$/; next }
        /^branch .*\(throw\)/ { next }
        /^branch .* taken / { all[file]++; if ($4 != "0") met[file]++; next }
        /^branch .* never executed/ { if (!ran) all[file]++ }
        END { for (f in all) print f "," all[f] "," met[f] + 0 }' | sort
}
entered >"$build/branches.csv"

# Which part a file belongs to. The state machine: what may move a part, and what state it is in.
awk -F, '
    function part_of(file) {
        if (file ~ /^lib\/entry\//) return "entry"
        if (file ~ /^lib\/book\//) return "book"
        if (file ~ /^lib\/job\/(guards|parts|derive_parts|replay|view|steps|clashes|settle|fold|told|job)[a-z_]*\./) return "state machine"
        return "the rest"
    }
    FILENAME ~ /branches/ { part = part_of($1); entered[part] += $2; entered_met[part] += $3; next }
    FNR > 1 {
        part = part_of($1)
        lines[part] += $2; lines_met[part] += $3; branches[part] += $5; branches_met[part] += $6
    }
    function share(met, all) { return all > 0 ? 100 * met / all : 0 }
    END {
        printf "%-14s %8s %8s %7s   %9s %7s   %9s %7s\n", "part", "lines", "reached", "", "branches", "reached", "entered", "reached"
        n = split("entry,book,state machine,the rest", order, ",")
        for (i = 1; i <= n; i++) {
            p = order[i]
            printf "%-14s %8d %8d %6.1f%%   %9d %6.1f%%   %9d %6.1f%%\n", p, lines[p], lines_met[p], share(lines_met[p], lines[p]),
                branches[p], share(branches_met[p], branches[p]), entered[p], share(entered_met[p], entered[p])
        }
    }' "$build/files.csv" "$build/branches.csv"
exit $failed
