# Sourced by libraries_windows.sh and libraries_web.sh: builds libraries that the program needs on
# another system, from Debian's own sources, into a cache outside of the tree. A library is built
# again when its version or its recipe changes. $system, and the functions with_cmake,
# with_configure and as_library that call its compilers, are the caller's.
#   MASTWISE_CACHE=FOLDER   instead of ~/.cache/mastwise

install_missing dpkg-dev autoconf automake libtool sqlite3
cache=${MASTWISE_CACHE:-$HOME/.cache/mastwise}/$system-bookworm
prefix=$cache/prefix
mkdir -p "$cache/apt/lists/partial" "$cache/sources" "$cache/work" "$prefix"/{lib/pkgconfig,include,built}

# apt's own tables stay as they are: the lines for sources are added to a copy.
sources_apt=(-o "Dir::Etc::SourceList=$cache/apt/sources.list" -o Dir::Etc::SourceParts=/dev/null
  -o "Dir::State::Lists=$cache/apt/lists" -o "APT::Sandbox::User=$(id -un)" -qq)
list_sources() {
  [ -s "$cache/apt/sources.list" ] && return
  apt-get indextargets --format 'deb-src $(SITE) $(RELEASE) $(COMPONENT)' 'Created-By: Packages' \
    'Origin: Debian' | sort -u >"$cache/apt/sources.list"
  apt-get "${sources_apt[@]}" update
}

# unpack_source NAME FOLDER: the newest version that the mirror still has, with Debian's patches.
# Where it has only the upstream archive, that one. Says which.
unpack_source() {
  local name=$1 folder=$2 version versions
  list_sources
  versions=$(apt-cache "${sources_apt[@]}" showsrc --only-source "$name" | sed -n 's/^Version: //p' | sort -rVu)
  for version in $versions; do
    (cd "$cache/sources" && apt-get "${sources_apt[@]}" source --download-only --only-source "$name=$version") \
      >"$cache/sources/$name.log" 2>&1 || true
    local described="$cache/sources/${name}_${version#*:}.dsc"
    rm -rf "$folder"
    if dpkg-source --no-check -x "$described" "$folder" >>"$cache/sources/$name.log" 2>&1; then
      settled "$name" "$folder" "$version" "$(head -1 <<<"$versions")"
      return
    fi
  done
  for version in $versions; do
    local archive
    archive=$(ls "$cache/sources/${name}_${version%-*}.orig.tar".?z 2>/dev/null) || continue
    mkdir -p "$folder"
    tar -xf "$archive" -C "$folder" --strip-components=1
    settled "$name" "$folder" "${version%-*}" "$(head -1 <<<"$versions")"
    return
  done
  cat "$cache/sources/$name.log" >&2
  return 1
}

settled() {
  echo "$3" >"$2/debian_version"
  echo "Building $1 $3 for $system"
  [ "$3" = "$4" ] || echo "  The mirror has no sources of $4, the newest: this one is older or lacks Debian's patches." >&2
  # Patches made some sources newer than what they are for; nothing is to be generated again.
  if [ -e "$2/configure" ]; then find "$2" -exec touch -r "$2/configure" {} +; fi
}

# described NAME VERSION CFLAGS LIBS: its file for pkg-config.
described() {
  printf 'prefix=%s\nName: %s\nDescription: %s\nVersion: %s\nCflags: -I${prefix}/include %s\nLibs: -L${prefix}/lib %s\n' \
    "$prefix" "$1" "$1" "$2" "$3" "$4" >"$prefix/lib/pkgconfig/$1.pc"
}

make_sqlite3() {
  # The amalgamation is made with this machine's tools.
  ./configure >/dev/null
  make sqlite3.c sqlite3.h
  cp sqlite3.h src/sqlite3ext.h "$prefix/include"
  flags="-DSQLITE_ENABLE_FTS5 -DSQLITE_ENABLE_RTREE -DSQLITE_ENABLE_COLUMN_METADATA -DSQLITE_THREADSAFE=1"
  as_library sqlite3 sqlite3.c
  described sqlite3 "$(cat VERSION)" "" -lsqlite3
}
make_expat() {
  # Debian's patches compare these with 1.
  find . -name expat_config.h.cmake -exec sed -i -E 's/^#cmakedefine (XML_DTD|XML_GE)$/#cmakedefine \1 1/' {} +
  source_folder=$([ -d expat ] && echo expat || echo .) with_cmake -DEXPAT_SHARED_LIBS=OFF \
    -DEXPAT_BUILD_TOOLS=OFF -DEXPAT_BUILD_EXAMPLES=OFF -DEXPAT_BUILD_TESTS=OFF -DEXPAT_BUILD_DOCS=OFF
}
make_geographiclib() { with_cmake -DBUILD_DOCUMENTATION=OFF -DBINDIR= -DSBINDIR= -DEXAMPLEDIR= -DDOCDIR= -DPYTHONDIR= -DMATLABDIR= -DMANDIR=; }
make_proj() {
  with_cmake -DENABLE_TIFF=OFF -DENABLE_CURL=OFF -DBUILD_APPS=OFF "-DEXE_SQLITE3=$(command -v sqlite3)"
}
make_fmtlib() { with_cmake -DFMT_TEST=OFF -DFMT_DOC=OFF; }
make_libzip() {
  with_cmake -DENABLE_BZIP2=OFF -DENABLE_LZMA=OFF -DENABLE_ZSTD=OFF -DENABLE_GNUTLS=OFF -DENABLE_MBEDTLS=OFF \
    -DENABLE_OPENSSL=OFF -DENABLE_COMMONCRYPTO=OFF -DENABLE_WINDOWS_CRYPTO=OFF -DBUILD_TOOLS=OFF \
    -DBUILD_REGRESS=OFF -DBUILD_EXAMPLES=OFF -DBUILD_DOC=OFF
}
make_nettle() { with_configure --disable-public-key --disable-assembler --disable-documentation --disable-openssl; }
make_abseil() { with_cmake -DCMAKE_CXX_STANDARD=17 -DABSL_PROPAGATE_CXX_STD=ON -DABSL_BUILD_TESTING=OFF; }
make_freetype() {
  with_cmake -DFT_REQUIRE_ZLIB=ON -DFT_DISABLE_BZIP2=ON -DFT_DISABLE_PNG=ON -DFT_DISABLE_HARFBUZZ=ON -DFT_DISABLE_BROTLI=ON
}
make_libstb() {
  mkdir -p "$prefix/include/stb"
  cp ./*.h "$prefix/include/stb"
  flags=
  local one
  for one in rect_pack:STB_RECT_PACK truetype:STB_TRUETYPE sprintf:STB_SPRINTF image_write:STB_IMAGE_WRITE; do
    printf '#define %s_IMPLEMENTATION\n#include "stb_%s.h"\n' "${one#*:}" "${one%:*}" >"made_${one%:*}.c"
  done
  as_library stb made_*.c
}
make_libnova() {
  mkdir -p "$prefix/include/libnova"
  cp src/libnova/*.h "$prefix/include/libnova"
  : >src/config.h
  sed -i '/#define _USE_32BIT_TIME_T/d' src/julian_day.c
  # Its substitutes for what the compiler has now must not take the place of that elsewhere.
  flags="-Isrc -DHAVE_ROUND -Dgmtime_r=nova_gmtime_r -Dstrtok_r=nova_strtok_r -Dnan=nova_nan"
  as_library nova src/*.c
}
make_imgui() {
  mkdir -p "$prefix/include/imgui/backends"
  cp ./*.h misc/freetype/*.h misc/cpp/*.h "$prefix/include/imgui"
  cp backends/imgui_impl_{sdl,opengl3}*.h "$prefix/include/imgui/backends"
  flags="-I. -Ibackends -I$prefix/include/SDL2 -I$prefix/include/freetype2 -I$prefix/include/stb -DIMGUI_ENABLE_FREETYPE"
  as_library imgui imgui.cpp imgui_draw.cpp imgui_tables.cpp imgui_widgets.cpp misc/freetype/imgui_freetype.cpp \
    misc/cpp/imgui_stdlib.cpp backends/imgui_impl_sdl.cpp backends/imgui_impl_opengl3.cpp
  described imgui 1.86 "-I\${prefix}/include/imgui -DIMGUI_ENABLE_FREETYPE" "-limgui"
}
make_libsdl2() {
  with_cmake -DSDL_SHARED=OFF -DSDL_STATIC=ON -DSDL_TEST=OFF -DSDL_VULKAN=OFF -DSDL_RENDER_D3D=OFF
}
make_libpng1.6() { with_cmake -DPNG_SHARED=OFF -DPNG_TESTS=OFF -DPNG_EXECUTABLES=OFF -DPNG_HARDWARE_OPTIMIZATIONS=OFF; }
make_pixman() { with_configure --disable-gtk --disable-libpng --disable-openmp; }

# Headers without code to compile are those of this machine.
copy_headers() {
  local one
  mkdir -p "$prefix/share/cmake" "$prefix/lib/cmake"
  for one in nlohmann CLI catch2; do cp -rLu --preserve=timestamps "/usr/include/$one" "$prefix/include"; done
  for one in nlohmann_json CLI11; do cp -rLu --preserve=timestamps "/usr/share/cmake/$one" "$prefix/share/cmake"; done
  # Its own description names a library for this machine.
  rm -rf "$prefix/lib/cmake/Catch2"
  mkdir "$prefix/lib/cmake/Catch2"
  cp /usr/lib/cmake/Catch2/Catch2ConfigVersion.cmake "$prefix/lib/cmake/Catch2"
  printf 'add_library(Catch2::Catch2 INTERFACE IMPORTED)\ntarget_include_directories(Catch2::Catch2 INTERFACE %s)\n' \
    "$prefix/include" >"$prefix/lib/cmake/Catch2/Catch2Config.cmake"
}

# recipe_of NAME: the text of all that makes it.
recipe_of() {
  local helper recipe
  recipe=$(declare -f "make_$1")
  echo "$recipe"
  # No pipe: under pipefail one that ends early would leave the helper out, now and then.
  for helper in with_cmake with_configure as_library; do
    if [[ $recipe == *"$helper"* ]]; then declare -f "$helper"; fi
  done
  echo "$made_of"
}

# build_libraries NAME...: a library comes after those that it needs.
# Another clone waits, and then finds them in the cache.
build_libraries() {
  local name recipe started log
  exec 8>"$cache/lock"
  flock 8
  for name in "$@"; do
    recipe=$(recipe_of "$name")
    [ "$(sed 1d "$prefix/built/$name" 2>/dev/null)" = "$recipe" ] && continue
    started=$SECONDS log=$cache/work/$name.log
    unpack_source "$name" "$cache/work/$name"
    # Not in a condition: there, a failed command would not end the recipe.
    set +e
    (set -e; cd "$cache/work/$name"; "make_$name") >"$log" 2>&1
    local failed=$?
    set -e
    [ $failed -eq 0 ] || { tail -30 "$log" >&2; echo "$name failed; see $log" >&2; return 1; }
    { cat "$cache/work/$name/debian_version"; echo "$recipe"; } >"$prefix/built/$name"
    rm -rf "$cache/work/$name"
    echo "$name took $((SECONDS - started)) s"
  done
  exec 8>&-
}

# license_of NAME: the licenses of a library that was built.
license_of() {
  local version archive
  version=$(head -1 "$prefix/built/$1")
  version=${version#*:}
  archive=$cache/sources/$1_$version.debian.tar.xz
  if [ -e "$archive" ]; then tar -xOf "$archive" debian/copyright; return; fi
  archive=$(ls "$cache/sources/$1_${version%-*}.orig.tar".?z)
  tar -xOf "$archive" --wildcards --no-wildcards-match-slash '*/COPYING'
}
