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

source "$root/tests/package/report.sh"

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
configure_tests
cmake --build "$root/build" --target mastwise mastwise_tests mastwise_assets
release_build

source "$root/tests/package/same_figures.sh"
same_figures
same_command_line
every_screen
