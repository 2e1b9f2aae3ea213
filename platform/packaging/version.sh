# Sourced: sets `version`, and SOURCE_DATE_EPOCH unless it is set, for the packages of this commit.
in_git() { git -C "$root" "$@" 2>/dev/null; }
[ "$(in_git rev-parse --show-cdup)" = "" ] || in_git() { false; }
: "${SOURCE_DATE_EPOCH:=$(in_git log -1 --format=%ct || date -r "$root/CMakeLists.txt" +%s)}"
export SOURCE_DATE_EPOCH
# Versions rise with the commits and stay below that of the release.
version=$(sed -n 's/^project(mastwise VERSION \([0-9.]*\).*/\1/p' "$root/CMakeLists.txt")
if ! in_git describe --exact-match --match "v$version" HEAD >/dev/null && in_git rev-parse >/dev/null; then
  version+="~$(in_git rev-list --count HEAD).$(in_git describe --always --abbrev=12 --exclude '*')"
  [ -z "$(in_git status --porcelain --untracked-files=no)" ] || version+=.changed
fi
