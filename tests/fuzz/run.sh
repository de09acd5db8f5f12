#!/usr/bin/env bash
# Builds the libFuzzer targets and runs each for so many seconds, two at a time, beginning with the saved inputs.
#   bash tests/fuzz/run.sh SECONDS [TARGET...]
# Prints one row a target: its name, seconds, executions, crashes. libFuzzer stops at the first crash (wrong memory, undefined
# behaviour, a broken promise, a leak, more than 25 s or 1 GiB for one input): the end of its log is shown, with the seed,
# and the input is kept in build/fuzz/found/TARGET. What reached something new is kept in build/fuzz/grown/TARGET.
set -uo pipefail
cd "$(dirname "$0")/../.."
seconds=${1:-}
if ! [[ $seconds =~ ^[1-9][0-9]*$ ]]; then
    echo "fuzz: for how many seconds? bash tests/fuzz/run.sh SECONDS [TARGET...]" >&2
    exit 2
fi
shift
folder=$PWD/build/fuzz
targets=("$@")
if [ $# -eq 0 ]; then mapfile -t targets < <(ls tests/fuzz/corpus); fi

launcher=()
if command -v ccache >/dev/null; then
    launcher=(-DCMAKE_C_COMPILER_LAUNCHER=ccache -DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
fi
mkdir -p "$folder"
if ! { cmake -S . -B build/clang -G Ninja "${launcher[@]}" -C tests/toolchains/watched.cmake &&
    cmake --build build/clang -j "$(nproc)" --target "${targets[@]/#/fuzz_}"; } >"$folder/build.log" 2>&1 </dev/null; then
    tail -n 40 "$folder/build.log" >&2
    exit 1
fi

run_one() {
    local target=$1 log=$folder/$1.log runs crashes=0 verdict=0
    mkdir -p "$folder/grown/$target" "$folder/found/$target"
    ASAN_OPTIONS=quarantine_size_mb=32 UBSAN_OPTIONS=print_stacktrace=1 \
        "build/clang/fuzz_$target" -max_total_time="$seconds" -timeout=25 -rss_limit_mb=1024 -max_len=8192 \
        -print_final_stats=1 -artifact_prefix="$folder/found/$target/" \
        "$folder/grown/$target" "tests/fuzz/corpus/$target" >"$log" 2>&1 </dev/null || verdict=$?
    if [ $verdict -ne 0 ]; then
        crashes=1
        tail -n 60 "$log" >&2
    fi
    runs=$(awk '/^stat::number_of_executed_units/ { print $2 }' "$log")
    echo "$target $seconds ${runs:-0} $crashes"
}

running=0
for target in "${targets[@]}"; do
    run_one "$target" &
    running=$((running + 1))
    if [ $running -eq 2 ]; then
        wait -n
        running=1
    fi
done
wait
