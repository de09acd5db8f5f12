#!/usr/bin/env bash
# Sets up, builds and tests on a bare Debian 12.
#   bash tests/run.sh          the native build and its tests: build/
#   bash tests/run.sh --all    and the pages in a browser, Clang with the sanitizers, the form checks, fuzzing, Arm, WebAssembly, a consumer's build
#   bash tests/run.sh NAME...  only these steps: native pages clang format tidy consumer fuzz arm64 wasm
# LATEST_START_S=SECONDS: a step that would begin later than that is left out, and that is said at the end.
# Every step is tried even when one before it failed. The last line sums up: test cases and checks, passed and failed.
set -uo pipefail
cd "$(dirname "$0")/.."
top=$PWD
build=$top/build
jobs=$(nproc)
passed=0
failed=0
failures=()

# --- keeping count ---

pass() { passed=$((passed + ${1:-1})); }
fail() {
    failed=$((failed + ${2:-1}))
    failures+=("$1")
}

# Runs a command quietly; its output is shown only when it fails.
quietly() {
    local log=$build/last_step.log
    "$@" >"$log" 2>&1 </dev/null && return 0
    grep -vE "^\[[0-9]+/[0-9]+\] (Building|Linking|Embedding)" "$log" | tail -n 60
    return 1
}

# One check: passed or failed as a whole.
check() {
    local name=$1
    shift
    if quietly "$@"; then
        pass
    else
        fail "$name"
    fi
}

# Adds up what a run of ctest wrote down: test cases of Catch programs, and other tests as one each.
tally() {
    local name=$1 log=$2 good bad
    read -r good bad < <(awk '
        function close_test() {
            if (verdict == "") return
            if (!counted && verdict == "good") good++
            if (verdict == "bad" && !counted_bad) bad++
            verdict = ""; counted = 0; counted_bad = 0
        }
        /^[0-9]+\/[0-9]+ Test(ing)?: / { close_test() }
        /^All tests passed \(/ { counted = 1; for (i = 1; i <= NF; i++) if ($i == "in") good += $(i + 1) }
        /^test cases: / {
            counted = 1
            for (i = 3; i <= NF; i++) {
                if ($i == "passed") good += $(i - 1)
                if ($i == "failed") { bad += $(i - 1); counted_bad += $(i - 1) }
            }
        }
        /^Test Passed\.$/ { verdict = "good" }
        /^Test Failed\.$|^Test timed out|^Test Not Run|^Unable to find executable/ { verdict = "bad" }
        END { close_test(); print good + 0, bad + 0 }' "$log")
    pass "$good"
    if [ "$bad" -gt 0 ]; then fail "$name tests" "$bad"; fi
}

# --- building and testing one variant ---

launcher=()
if command -v ccache >/dev/null; then
    launcher=(-DCMAKE_C_COMPILER_LAUNCHER=ccache -DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
fi

configure() {
    local folder=$1
    shift
    cmake -S "$top" -B "$folder" -G Ninja "${launcher[@]}" "$@"
}

run_tests() {
    local name=$1 folder=$2 log=$2/Testing/Temporary/LastTest.log
    rm -f "$log"
    local before=$failed verdict=0
    ctest --test-dir "$folder" -j "$jobs" --output-on-failure --timeout 900 </dev/null || verdict=$?
    if [ -f "$log" ]; then tally "$name" "$log"; fi
    if [ $verdict -ne 0 ] && [ "$failed" -eq "$before" ]; then fail "$name: ctest did not finish well"; fi
}

# variant NAME FOLDER [cmake options]
variant() {
    local name=$1 folder=$2
    shift 2
    if quietly configure "$folder" "$@" && quietly cmake --build "$folder" -j "$jobs"; then
        run_tests "$name" "$folder"
    else
        fail "$name does not build"
    fi
}

# --- the steps ---

step_native() { variant native "$build" -C tests/toolchains/native.cmake; }

# The HTML papers of the jobs that the native tests have made, by an HTML checker and in a browser.
step_pages() {
    check "the HTML papers" bash tests/paper/pages/check.sh "$build/fixtures/troubled_job" "$build/fixtures/awkward_jobs"/*/
    tail -n 2 "$build/last_step.log"
}

# One build holds three: the fuzz targets, Clang's warnings, and every test watched for wrong memory and undefined behaviour.
step_clang() {
    export ASAN_OPTIONS=detect_leaks=1:strict_string_checks=1 UBSAN_OPTIONS=print_stacktrace=1
    variant "clang with sanitizers" "$build/clang" -C tests/toolchains/watched.cmake
}

our_files() { find lib cli tests \( -name '*.h' -o -name '*.cpp' \) | sort; }

step_format() { check "clang-format" format_all; }
format_all() { our_files | xargs clang-format --dry-run -Werror; }

# clang-tidy reads the files together as they are compiled, which takes far less time (one room: 24 s, not 84). That each also compiles by
# itself is asked apart: a source file, which includes its own header first, and a header that has no source file.
step_tidy() {
    check "clang-tidy" tidy_all
    check "files that do not compile by themselves" compile_alone
}
tidy_all() {
    watched_commands "$build/tidy" &&
        find "$build/tidy/CMakeFiles" -name 'unity_*_cxx.cxx' | xargs -P "$jobs" -n 1 clang-tidy --quiet -p "$build/tidy"
}
compile_alone() {
    watched_commands "$build/alone" -DCMAKE_UNITY_BUILD=OFF && alone | xargs -P "$jobs" -n 8 clang-tidy --quiet -p "$build/alone" --checks=-*,misc-static-assert
}
watched_commands() {
    configure "$@" -C tests/toolchains/watched.cmake && cmake --build "$1" --target undersheet_schema
}
alone() {
    local header
    find lib cli -name '*.cpp'
    for header in lib/*/*.h cli/*.h; do [ -f "${header%.h}.cpp" ] || echo "$header"; done
}

# Installs into a folder of its own and builds somebody else's program against that.
step_consumer() { check "a consumer's build" consume; }
consume() {
    local prefix=$build/consumer/prefix
    rm -rf "$build/consumer" &&
        cmake --install "$build" --prefix "$prefix" &&
        cmake -S tests/consumer -B "$build/consumer/build" -G Ninja -DCMAKE_PREFIX_PATH="$prefix" &&
        cmake --build "$build/consumer/build" &&
        "$build/consumer/build/consumer"
}

# The six readers of what strangers hand over for a minute each, the other targets for ten seconds; one check a target.
step_fuzz() {
    local target seconds runs crashes before=$((passed + failed)) main=(strict entry handed_over method lines picture) rest
    mapfile -t rest < <(ls tests/fuzz/corpus | grep -vxF "$(printf '%s\n' "${main[@]}")")
    while read -r target seconds runs crashes; do
        echo "fuzz $target: $runs executions in $seconds s, crashes: $crashes"
        if [ "$crashes" = 0 ]; then pass; else fail "fuzz $target"; fi
    done < <(bash tests/fuzz/run.sh 60 "${main[@]}" && bash tests/fuzz/run.sh 10 "${rest[@]}")
    if [ $((passed + failed - before)) -ne $((${#main[@]} + ${#rest[@]})) ]; then fail "fuzz targets that do not build"; fi
}

# A cross build compiles the libraries in from source. Warnings are the native builds' business: at -O1 GCC 12 invents some.
cross() {
    local name=$1
    if ! bash tests/sources.sh "$build/sources"; then
        fail "$name has no sources"
        return
    fi
    variant "$name" "$build/$name" -C tests/toolchains/together.cmake -DCMAKE_TOOLCHAIN_FILE="$top/tests/toolchains/$name.cmake" \
        -DUNDERSHEET_BUNDLED_SOURCES_DIR="$build/sources" -DUNDERSHEET_BUILD_CLI=OFF \
        -DUNDERSHEET_WARNINGS_AS_ERRORS=OFF \
        -DCMAKE_BUILD_TYPE=Quick -DCMAKE_C_FLAGS_QUICK=-O1 -DCMAKE_CXX_FLAGS_QUICK=-O1
}
step_arm64() { cross arm64; }
step_wasm() { NODE_PATH=/usr/share/nodejs cross wasm; }

# --- which of them ---

if [ "${1:-}" = --all ]; then
    steps=(native pages format consumer clang tidy fuzz arm64 wasm)
elif [ $# -gt 0 ]; then
    steps=("$@")
else
    steps=(native)
fi
for step in "${steps[@]}"; do
    if ! declare -F "step_$step" >/dev/null; then
        echo "run: no step \"$step\"; there are: native pages clang format tidy consumer fuzz arm64 wasm, or --all" >&2
        exit 2
    fi
done

mkdir -p "$build"
if [ "${steps[*]}" = native ]; then bash tests/setup.sh || exit 1; else bash tests/setup.sh --all || exit 1; fi

left_out=()
for step in "${steps[@]}"; do
    if [ "$SECONDS" -gt "${LATEST_START_S:-$SECONDS}" ]; then
        left_out+=("$step")
        continue
    fi
    started=$SECONDS
    echo "== $step"
    "step_$step"
    echo "== $step took $((SECONDS - started)) s"
done

if [ ${#left_out[@]} -gt 0 ]; then echo "NOT RUN, the time was used up: ${left_out[*]}"; fi
for failure in "${failures[@]}"; do echo "failed: $failure"; done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
