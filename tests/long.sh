#!/usr/bin/env bash
# For nights: every test program again and again in another order each time, watched by the sanitizers, then the
# benchmark. Finds tests that lean on one another and faults that show only now and then.
#   bash tests/long.sh [ROUNDS]     (default 20)
# Ends with "N rounds passed, N failed"; a failed round names its seed, so that it can be run again.
set -uo pipefail
cd "$(dirname "$0")/.."
rounds=${1:-20}
if ! [[ $rounds =~ ^[1-9][0-9]*$ ]]; then
    echo "long: \"$rounds\" is no number of rounds" >&2
    exit 2
fi

bash tests/run.sh native clang || exit 1

passed=0
failed=0
for ((round = 1; round <= rounds; round++)); do
    seed=$((RANDOM * 32768 + RANDOM))
    for program in build/clang/test_*; do
        if "$program" --order rand --rng-seed "$seed" --use-colour no >build/long.log 2>&1 </dev/null; then
            passed=$((passed + 1))
        else
            failed=$((failed + 1))
            tail -n 40 build/long.log
            echo "failed: $program --order rand --rng-seed $seed"
        fi
    done
done

build/tests/bench/undersheet-bench || failed=$((failed + 1))
echo "$passed rounds passed, $failed failed"
[ "$failed" -eq 0 ]
