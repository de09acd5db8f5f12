#!/usr/bin/env bash
# Installs what building and testing needs on Debian 12: `bash tests/setup.sh` for the native build and its tests,
# `bash tests/setup.sh --all` also for Clang, Arm, WebAssembly and the checkers; `--coverage` what tests/coverage.sh needs.
# Leaves apt alone when everything is there; works as root or through sudo.
set -euo pipefail

native=(g++ cmake ninja-build pkg-config libsqlite3-dev libsqlitecpp-dev nlohmann-json3-dev libsodium-dev libqrcodegencpp-dev libturbojpeg0-dev
    libeigen3-dev catch2 libcli11-dev zlib1g-dev fonts-crosextra-carlito sqlite3 openssl xxd
    poppler-utils qpdf python3-icalendar fontconfig)
all=(clang clang-format clang-tidy libfuzzer-14-dev g++-aarch64-linux-gnu qemu-user emscripten nodejs dpkg-dev make tcl
    default-jre-headless chromium npm fonts-dejavu-core)

wanted=("${native[@]}")
if [ "${1:-}" = --all ]; then wanted+=("${all[@]}"); fi
if [ "${1:-}" = --coverage ]; then wanted+=(clang-14 llvm-14); fi

# A Node.js that is not Debian's brings its own npm, and Debian's does not go with it.
is_installed() {
    if [ "$1" = npm ] && command -v npm >/dev/null; then return; fi
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null)" = installed ]
}

missing=()
for package in "${wanted[@]}"; do is_installed "$package" || missing+=("$package"); done
if [ ${#missing[@]} -eq 0 ]; then exit 0; fi

as_root=()
if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
        echo "setup: not root and no sudo; install these first: ${missing[*]}" >&2
        exit 1
    fi
    as_root=(sudo)
fi

echo "setup: installing ${missing[*]}"
log=$(mktemp)
trap 'rm -f "$log"' EXIT
# Containers without man pages lack this folder, and some packages (Java's) stop when they cannot write to it.
"${as_root[@]}" mkdir -p /usr/share/man/man1
if ! "${as_root[@]}" apt-get update -q >"$log" 2>&1 </dev/null ||
    ! "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends \
        "${missing[@]}" >>"$log" 2>&1 </dev/null; then
    tail -n 20 "$log" >&2
    echo "setup: apt could not install ${missing[*]}; see the lines above, then run this again" >&2
    exit 1
fi
