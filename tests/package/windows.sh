#!/usr/bin/env bash
# windows.sh: make the package for Windows and try it under wine: its figures beside this machine's,
# core's and platform's tests, the command line's tests, a receiver on COM10, every screen, and the
# installer.
# bash platform/test windows
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
source "$root/platform/packages.sh"
install_missing "${run_packages[@]}" "${test_packages[@]}" file xvfb xauth unzip
bash "$root/platform/package" windows
here=$root/platform/packaging build=$root/build/windows
started=$SECONDS

source "$root/tests/package/report.sh"

hold_build
# This comes first, because later pkg-config finds only the other system's libraries.
configure_tests
cmake --build "$root/build" --target mastwise mastwise_tests mastwise_assets
source "$here/windows_build.sh"
cmake --build "$build" --target mastwise_tests
release_build
work=$(mktemp -d)
trap 'wineserver -k || true; rm -rf "$work"' EXIT
(cd "$work" && unzip -q "$root"/build/packages/mastwise_*_windows.zip)
# The folder has letters of no old code page.
mv "$work/Mastwise" "$work/Mastwise Ω é"
# A running wine keeps the screen that it started with. If our program starts it, wine holds that
# program's output open until wine ends. At its end, wine's server lists all that is still open.
new_wine() {
  wineserver -k || true
  wineserver -p 2>/dev/null
  wine wineboot >/dev/null 2>&1 </dev/null
}
new_wine
foreign=$work/mastwise
printf '#!/bin/bash\nexec wine %q "$@"\n' "$work/Mastwise Ω é/mastwise.exe" >"$foreign"
chmod +x "$foreign"
# Wine takes the file system's names for what the locale says.
export LC_ALL=C.UTF-8 MASTWISE_DATA=$work/data
said=$("$foreign" --version)
passed "$said"
wine "$work/Mastwise Ω é/mastwise-window.exe" --version || fail "the starter for the start menu"
passed "started without a console"

source "$root/tests/package/same_figures.sh"
same_figures

# Not those of what only Linux has: a mapped file that is cut, names that differ by case, a shell.
wine "$build/mastwise_tests.exe" -\# "~[.]~[linux]" >"$work/tests" || fail "core's and platform's tests: $(tail -40 "$work/tests")"
passed "core's and platform's tests: $(all_passed)"

# A live receiver, the screens and the lack of a voice are tested below, in that system's own way.
same_command_line '~[linux]'

# Wine has no voices.
said=$("$foreign" sound walk "$work/walk.wav" --speech 2>&1) && fail "it spoke without a voice"
[[ $said == *"Windows has no voice for en-us"* ]] || fail "without a voice it gave another reason: $said"
passed "without a voice it says so"

python3 "$root/tests/package/windows_serial.py" "$work/Mastwise Ω é/mastwise.exe" || fail "a receiver on COM10"
passed "a receiver on COM10"

xvfb-run -a bash -c "set -euo pipefail; $(declare -f fail passed new_wine every_screen)
  foreign=$(printf %q "$foreign") work=$work started=$started; new_wine; every_screen" || fail "screens"
new_wine

# The installer, silently, and what was recorded stays.
setup=$(ls "$root"/build/packages/mastwise_*_windows_setup.exe)
wine "$setup" /S
installed=$(find "$WINEPREFIX/drive_c/users" -path '*/Programs/Mastwise/mastwise.exe')
[ -n "$installed" ] || fail "the installer installed nothing"
MASTWISE_DATA='' wine "$installed" --version >/dev/null || fail "the installed program does not start"
recorded=$(dirname "$(dirname "$(dirname "$installed")")")/Mastwise
mkdir -p "$recorded"
echo kept >"$recorded/kept"
wine "$(dirname "$installed")/uninstall.exe" /S
for ((tries = 0; tries < 100; ++tries)); do [ -e "$installed" ] || break; sleep 0.2; done
[ ! -e "$(dirname "$installed")" ] || fail "the program is still there after removal"
[ "$(cat "$recorded/kept")" = kept ] || fail "removal touched what a person recorded"
rm -r "$recorded"
passed "installed and removed"
