#!/usr/bin/env bash
# deb.sh: make the Debian package, check it, and install, use, upgrade and remove it in a chroot that
# has Debian's smallest system and nothing else. Run it as root: bash platform/test deb
#   MASTWISE_CHROOT=FOLDER   a chroot to copy instead of making one, for a second run
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
source "$root/platform/packages.sh"
[ "$(id -u)" -eq 0 ] || { echo "SKIPPED: a chroot needs root"; exit 77; }
unshare --mount mount -t proc proc /mnt 2>/dev/null || { echo "SKIPPED: a chroot needs a mounted /proc"; exit 77; }
install_missing "${deb_test_packages[@]}"
bash "$root/platform/package" deb
package=$(ls "$root"/build/packages/mastwise_*_"$(dpkg --print-architecture)".deb)
version=$(dpkg-deb --field "$package" Version)
started=$SECONDS

source "$root/tests/package/report.sh"

lintian --fail-on error --tag-display-limit 0 "$package" || fail "lintian has errors"
passed "lintian without errors"

work=$(mktemp -d)
system=$work/system
finish() {
  mountpoint -q "$system/proc" && umount "$system/proc"
  rm -rf "$work"
}
trap finish EXIT

# What is in the package, before it is installed.
dpkg-deb --extract "$package" "$work/content"
share=$work/content/usr/share
appstreamcli validate --no-net "$share"/metainfo/*.xml >"$work/appstream" || fail "$(cat "$work/appstream")"
desktop-file-validate "$share"/applications/*.desktop
for size in 32x32 48x48 64x64 128x128 256x256; do
  file "$share/icons/hicolor/$size/apps/org.mastwise.Mastwise.png" | grep -q "${size/x/ x }" ||
    fail "no icon of $size"
done
gzip -cd "$share/man/man1/mastwise.1.gz" >"$work/mastwise.1"
warnings=$(man --warnings -l "$work/mastwise.1" 2>&1 >"$work/page")
[ -z "$warnings" ] || fail "the man page: $warnings"
for verb in card survey "import stations"; do
  grep -q "mastwise $verb" "$work/page" || fail "the man page lacks $verb"
done
grep -q "SIL OPEN FONT LICENSE" "$share/doc/mastwise/copyright" || fail "no license of the fonts"
passed "metadata, icons, man page, licenses"

# Completion: what a person would get by pressing the tab key.
completed() {
  bash -c 'source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); compopt() { :; }
    _mastwise; echo "${COMPREPLY[*]}"' - "$share/bash-completion/completions/mastwise" "$@"
}
[ "$(completed mastwise sur)" = survey ] || fail "completion of a verb"
[ "$(completed mastwise import sta)" = stations ] || fail "completion of a verb below a verb"
[ "$(completed mastwise card --page "")" = "letter a4" ] || fail "completion of a value"
[ "$(completed mastwise plan --heading-e)" = --heading-error ] || fail "completion of an option"
[ "$(completed mastwise shot roof-g)" = roof-good ] || fail "completion of a screen"
passed "completion"

if [ -n "${MASTWISE_CHROOT:-}" ]; then
  cp -a "$MASTWISE_CHROOT" "$system"
else
  mmdebstrap --quiet --variant=minbase --skip=cleanup/apt bookworm "$system"
fi
passed "a system with $(chroot "$system" dpkg-query -W | wc -l) packages"
# The program finds its own folder by /proc.
mkdir -p "$system/proc"
mount -t proc proc "$system/proc"
printf '#!/bin/sh\nexit 101\n' >"$system/usr/sbin/policy-rc.d"
chmod +x "$system/usr/sbin/policy-rc.d"
cp /etc/resolv.conf "$system/etc/resolv.conf"
here() { chroot "$system" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin DEBIAN_FRONTEND=noninteractive "$@"; }
visitor() { here setpriv --reuid 1234 --regid 1234 --clear-groups env HOME=/home/visitor "$@"; }
mkdir -p "$system/home/visitor"
chown 1234:1234 "$system/home/visitor"
installed() { here apt-get install -y -qq --no-install-recommends "$@" >"$work/apt" 2>&1 || fail "$(tail -20 "$work/apt")"; }

cp "$package" "$system/mastwise.deb"
installed ./mastwise.deb
passed "installed with $(chroot "$system" dpkg-query -W | wc -l) packages in all"
said=$(visitor mastwise --version)
origin='commit [0-9a-f]'
[ -e "$root/.git" ] || origin='unknown commit'  # sources without their repository
grep -q "^mastwise [0-9.]*, $origin" <<<"$said" || fail "--version says: $said"
# Not in a pipe: a grep that has found its word leaves the program writing to nobody.
grep -q 'magnetic' <<<"$(visitor mastwise card)" || fail "no practice card"
grep -q QBPA <<<"$(visitor mastwise survey --json)" || fail "no survey of the practice area"
for screen in start aim map; do
  visitor mastwise shot "$screen" --size 1280x800 "/home/visitor/$screen.png"
  file "$system/home/visitor/$screen.png" | grep -q '1280 x 800' || fail "no picture of $screen"
done
passed "$said: card, survey and three screens"

# A person's data.
visitor mastwise import stations /usr/share/mastwise/practice/stations.csv >/dev/null
sums() { (cd "$system/home" && find . -type f -print0 | sort -z | xargs -0 sha256sum); }
before=$(sums)
grep -q catalog <<<"$before" || fail "there is no catalog to keep"

# The same content as a later version.
dpkg-deb --raw-extract "$package" "$work/later"
sed -i "s/^Version: .*/Version: $version+later/" "$work/later/DEBIAN/control"
dpkg-deb --root-owner-group -Znone --build "$work/later" "$system/later.deb" >/dev/null
installed ./later.deb
[ "$(here dpkg-query -W -f='${Version}' mastwise)" = "$version+later" ] || fail "not upgraded"
visitor mastwise card >/dev/null
[ "$(sums)" = "$before" ] || fail "the upgrade touched the person's data"
passed "upgraded"

here dpkg -L mastwise | grep -v '^/\.$' >"$work/files"
here dpkg --remove mastwise >/dev/null
[ ! -e "$system/usr/bin/mastwise" ] || fail "the program is left after removal"
here dpkg --purge mastwise >/dev/null 2>&1
while read -r path; do
  [ ! -f "$system$path" ] || fail "left after the purge: $path"
done <"$work/files"
left=$(cd "$system" && find etc usr var opt srv -iname '*mastwise*' ! -path 'var/lib/apt/*' ! -path 'var/log/*' ! -path 'var/cache/*')
[ -z "$left" ] || fail "left after the purge: $left"
[ "$(sums)" = "$before" ] || fail "the purge touched the person's data"
passed "removed and purged; the person's data is as it was"
