#!/usr/bin/env bash
# arm64.sh: make the package for arm64 and try its program under qemu-user: its figures beside this
# machine's, the command line's tests, and every screen. bash platform/test arm64
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
source "$root/platform/packages.sh"
install_missing "${run_packages[@]}" "${test_packages[@]}" file
bash "$root/platform/package" deb arm64
package=$(ls "$root"/build/packages/mastwise_*_arm64.deb)
sysroot=${MASTWISE_CACHE:-$HOME/.cache/mastwise}/arm64-bookworm
started=$SECONDS

fail() { echo "FAILED: $*" >&2; exit 1; }
passed() { echo "passed after $((SECONDS - started)) s: $*"; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dpkg-deb --extract "$package" "$work/package"
file "$work/package/usr/bin/mastwise" | grep 'ARM aarch64' >/dev/null || fail "not a program for arm64"
foreign=$work/mastwise
printf '#!/bin/sh\nexec qemu-aarch64-static -L %q %q "$@"\n' "$sysroot" \
  "$work/package/usr/bin/mastwise" >"$foreign"
chmod +x "$foreign"
export MASTWISE_DATA=$work/data
said=$("$foreign" --version)
passed "$said"

hold_build
configure "$root/build" -DCMAKE_BUILD_TYPE=Release -DMASTWISE_TESTS=ON
cmake --build "$root/build" --target mastwise mastwise_tests mastwise_assets
release_build

# Every word, and every figure to seven digits: the machines' mathematical functions differ beyond.
rounded() { sed -E 's/-?[0-9]+\.[0-9]+(e-?[0-9]+)?/\n&\n/g' | awk '/^-?[0-9]+\./ { printf "%.7g\n", $0; next } 1'; }
for verb in card survey plan "survey --json" "plan --json"; do
  read -ra words <<<"$verb"
  "$root/build/mastwise" "${words[@]}" 2>&1 | rounded >"$work/here"
  "$foreign" "${words[@]}" 2>&1 | rounded >"$work/there"
  [ "$(wc -l <"$work/here")" -gt 5 ] || fail "mastwise $verb says nothing here"
  diff "$work/here" "$work/there" >"$work/difference" ||
    fail "mastwise $verb says something else: $(head -5 "$work/difference")"
done
passed "the same figures"

tags=$(cd "$root/tests/app/cli" && printf '[#%s],' *_test.cpp | sed 's/\.cpp//g; s/,$//')
MASTWISE_PROGRAM=$foreign "$root/build/mastwise_tests" -\# "$tags" || fail "tests of the command line"
passed "the command line's tests"

screens=$({ "$foreign" shot nowhere "$work/none.png" 2>&1 || true; } | sed -n 's/.*use one of //p' | tr -d ',')
count=0
for screen in $screens; do
  [ "$screen" = table ] && continue
  "$foreign" shot "$screen" --size 1280x800 "$work/$screen.png" || fail "no picture of $screen"
  file "$work/$screen.png" | grep '1280 x 800' >/dev/null || fail "no picture of $screen"
  count=$((count + 1))
done
passed "$count screens"
