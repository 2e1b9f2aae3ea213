#!/usr/bin/env bash
# deb.sh [ARCHITECTURE]: build/packages/mastwise_VERSION_ARCHITECTURE.deb and its SPDX list, for
# this machine's architecture or for one that has a cross_ARCHITECTURE.sh here. The same commit gives
# the same bytes, wherever and whenever it is built.
set -euo pipefail
umask 022
root=$(cd "$(dirname "$0")/../.." && pwd)
source "$root/platform/packages.sh"
here=$root/platform/packaging
own=$(dpkg --print-architecture)
architecture=${1:-$own}

hold_build
install_missing "${run_packages[@]}" "${deb_packages[@]}"
if [ "$architecture" = "$own" ]; then
  build=$root/build
  strip=strip
  [ -f "$build/build.ninja" ] || configure "$build" -DCMAKE_BUILD_TYPE=Release
else
  build=$root/build/$architecture
  source "$here/cross_$architecture.sh"
fi

source "$here/version.sh"

cmake "$build" >/dev/null
cmake --build "$build" --target mastwise mastwise_assets package_files

stage=$build/deb
rm -rf "$stage"
mkdir -p "$stage/DEBIAN" "$root/build/packages"
cmake --install "$build" --prefix "$stage/usr" >/dev/null
"$strip" --remove-section=.comment --remove-section=.note "$stage/usr/bin/mastwise"
gzip -9n "$stage/usr/share/man/man1/mastwise.1"

documents=$stage/usr/share/doc/mastwise
mkdir -p "$documents"
rm "$stage/usr/share/mastwise/fonts/OFL.txt"  # in the copyright file
{
  cat "$root/LICENSE"
  for part in assets/fonts/OFL.txt assets/{places,borders,zones}/README; do
    printf '\n---- %s ----\n\n' "$part"
    cat "$root/$part"
  done
  # Compiled into the program, not loaded from a library of the system.
  for package in libimgui-dev libstb-dev libcli11-dev nlohmann-json3-dev; do
    printf '\n---- %s, within the program ----\n\n' "$package"
    cat "/usr/share/doc/$package/copyright"
  done
} >"$documents/copyright"
maintainer=$(sed -n 's/^Maintainer: //p' "$here/control.in")
commit=$(in_git describe --always --abbrev=12 || echo unknown)
printf 'mastwise (%s) unstable; urgency=medium\n\n  * Commit %s.\n\n -- %s  %s\n' "$version" \
  "$commit" "$maintainer" "$(date -uRd "@$SOURCE_DATE_EPOCH")" | gzip -9n >"$documents/changelog.gz"

# The libraries by what the program is linked with.
mkdir -p "$build/shlibdeps/debian"
printf 'Source: mastwise\n\nPackage: mastwise\nArchitecture: any\n' >"$build/shlibdeps/debian/control"
folders=()
[ "$architecture" = "$own" ] || mapfile -t folders < <(libraries_of "$stage/usr/bin/mastwise")
libraries=$(cd "$build/shlibdeps" &&
  DEB_HOST_ARCH=$architecture dpkg-shlibdeps "${folders[@]}" -O "$stage/usr/bin/mastwise" 2>/dev/null |
  sed -n 's/^shlibs:Depends=//p' | sed 's/\blibgl1, //')  # control.in has it: some builds only load it
[ -n "$libraries" ] || { echo "dpkg-shlibdeps found no libraries" >&2; exit 1; }
# As Debian counts: files in KiB, rounded up, and one for each folder.
size=$(find "$stage/usr" -printf '%y %s\n' |
  awk '{ sum += $1 == "f" ? int(($2 + 1023) / 1024) : 1 } END { print sum }')
sed -e "s/@VERSION@/$version/" -e "s/@ARCHITECTURE@/$architecture/" -e "s/@SIZE@/$size/" \
  -e "s/@LIBRARIES@/$libraries/" "$here/control.in" >"$stage/DEBIAN/control"
(cd "$stage" && find usr -type f -print0 | sort -z | xargs -0 md5sum >DEBIAN/md5sums)

package=$root/build/packages/mastwise_${version}_$architecture.deb
rm -f "$root"/build/packages/mastwise_*_"$architecture".*
dpkg-deb --root-owner-group -Zxz --build "$stage" "$package" >/dev/null
python3 "$here/spdx.py" "$stage" "$build" "$root/LICENSE" >"${package%.deb}.spdx.json"
release_build
echo "$package"
