#!/usr/bin/env bash
# windows.sh: build/packages/mastwise_VERSION_windows.zip and the installer beside it, for Windows 10
# and later on x86-64, with Debian's cross compiler.
set -euo pipefail
umask 022
root=$(cd "$(dirname "$0")/../.." && pwd)
source "$root/platform/packages.sh"
here=$root/platform/packaging

hold_build
install_missing "${run_packages[@]}" catch2 git zip nsis librsvg2-bin
build=$root/build/windows
source "$here/windows_build.sh"
source "$here/version.sh"
source "$here/licenses.sh"
cmake --build "$build" --target mastwise mastwise_starter mastwise_assets

stage=$build/package/Mastwise
rm -rf "$build/package"
mkdir -p "$stage/assets" "$root/build/packages"
for program in mastwise mastwise-window; do
  $triplet-strip -o "$stage/$program.exe" "$build/$program.exe"
done
for folder in borders fonts landcover magnetic mappings places practice proj publishers zones; do
  cp -r "$build/assets/$folder" "$stage/assets"
done
cp -rL "$build/assets/zoneinfo" "$stage/assets"
find "$stage/assets" \( -name CMakeFiles -o -name '*.cmake' \) -prune -exec rm -r {} +
licenses=$build/package/licenses
# Of this machine's packages: headers, and libraries of the cross compiler's distribution.
gather_licenses "$licenses" "${windows_libraries[@]}" -- libcli11-dev nlohmann-json3-dev libz-mingw-w64-dev mingw-w64-x86-64-dev
all_licenses "$licenses" | sed 's/$/\r/' >"$stage/LICENSE.txt"

package=$root/build/packages/mastwise_${version}_windows
rm -f "$root"/build/packages/mastwise_*_windows*
find "$stage" -exec touch -d "@$SOURCE_DATE_EPOCH" {} +
(cd "$build/package" && find Mastwise -type f | LC_ALL=C sort | TZ=UTC zip -q -X -9 "$package.zip" -@)
size_kb=$(du -sk --apparent-size "$stage" | cut -f1)
makensis -V2 "-DVERSION=$version" "-DSIZE_KB=$size_kb" "-DSTAGE=$stage" \
  "-DICON=$build/platform/packaging/mastwise.ico" "-DOUTPUT=${package}_setup.exe" "$here/mastwise.nsi"
python3 "$here/spdx.py" "$stage" "$licenses" "$root/LICENSE" "$version" windows >"$package.spdx.json"
release_build
echo "$package.zip"
echo "${package}_setup.exe"
