#!/usr/bin/env bash
# web.sh: make the package for browsers and try it: the verbs' figures under node beside this machine's,
# and the page in headless Chromium, by touch.
# bash platform/test web
set -euo pipefail
root=$(cd "$(dirname "$0")/../.." && pwd)
source "$root/platform/packages.sh"
install_missing "${run_packages[@]}" "${test_packages[@]}" chromium
bash "$root/platform/package" web
here=$root/platform/packaging build=$root/build/web
started=$SECONDS

source "$root/tests/package/report.sh"

hold_build
# This comes first, because later pkg-config finds only the other system's libraries.
configure_tests
cmake --build "$root/build" --target mastwise mastwise_assets
source "$here/web_build.sh"
cmake --build "$build" --target mastwise_node
release_build
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
foreign=$work/mastwise
printf '#!/bin/bash\nMASTWISE_ASSETS=${MASTWISE_ASSETS:-%q} exec node --no-experimental-fetch %q "$@"\n' \
  "$build/assets" "$build/mastwise_node.js" >"$foreign"
chmod +x "$foreign"
export MASTWISE_DATA=$work/data

for tile in "$build"/assets/practice/*.hgt; do
  cmp "$tile" "$root/build/assets/practice/$(basename "$tile")" || fail "the practice area's hills differ"
done
source "$root/tests/package/same_figures.sh"
same_figures

python3 "$root/tests/package/web_page.py" "$root"/build/packages/mastwise_*_web "$work" \
  "$root/assets/practice/stations.csv" "$root/build/mastwise" || fail "the page"
passed "the page in Chromium"
