#!/usr/bin/env bash
# web.sh: build/packages/mastwise_VERSION_web, a folder for any static server, and a zip of it, with
# Debian's emscripten.
set -euo pipefail
umask 022
root=$(cd "$(dirname "$0")/../.." && pwd)
source "$root/platform/packages.sh"
here=$root/platform/packaging web=$root/platform/web

hold_build
install_missing "${run_packages[@]}" git zip librsvg2-bin
build=$root/build/web
source "$here/web_build.sh"
source "$here/version.sh"
source "$here/licenses.sh"
nice cmake --build "$build" --target mastwise -- -j2

package=$root/build/packages/mastwise_${version}_web
rm -rf "$root"/build/packages/mastwise_*_web*
mkdir -p "$package"
cp "$build"/{mastwise,mastwise.worker,mastwise_hills}.js "$web"/{index.html,keeper.js,serial.js,start.js,manifest.webmanifest} "$package"
# emscripten gives the data a new random number each time, for a cache that this page does not use.
sed -i -E 's/"package_uuid":"[^"]*"/"package_uuid":""/' "$package/mastwise.js"
for part in wasm data; do gzip -9 -n -c "$build/mastwise.$part" >"$package/mastwise.$part.gz"; done
for size in 256 512; do
  rsvg-convert -w $size -h $size -o "$package/icon-$size.png" "$here/mastwise.svg"
done

licenses=$build/licenses
rm -rf "$licenses"
# Of this machine's packages: headers, the C and C++ libraries, and data.
gather_licenses "$licenses" "${web_libraries[@]}" -- libcli11-dev nlohmann-json3-dev emscripten proj-data tzdata
all_licenses "$licenses" >"$package/LICENSE.txt"

# The service worker keeps these, under a name that changes with their bytes.
files=$(cd "$package" && printf '"%s",' ./ *.html *.js *.gz *.webmanifest *.png)
sum=$(cd "$package" && cat -- * | sha256sum | cut -c1-12)
sed -e "s/'VERSION'/'mastwise $version $sum'/" -e "s#FILES#[${files%,}]#" "$web/service_worker.js" \
  >"$package/service_worker.js"

find "$package" -exec touch -d "@$SOURCE_DATE_EPOCH" {} +
(cd "$root/build/packages" && find "$(basename "$package")" -type f | LC_ALL=C sort | TZ=UTC zip -q -X -9 "$package.zip" -@)
python3 "$here/spdx.py" "$package" "$licenses" "$root/LICENSE" "$version" web >"$package.spdx.json"
release_build
echo "$package"
echo "$package.zip"
