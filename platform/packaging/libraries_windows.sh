# Sourced by windows.sh: builds the libraries that the program needs on Windows, with Debian's cross
# compiler and from Debian's own sources, into a cache outside of the tree. A library is built again
# when its version or its recipe below changes.
#   MASTWISE_CACHE=FOLDER   instead of ~/.cache/mastwise

install_missing g++-mingw-w64-x86-64-posix libz-mingw-w64-dev mingw-w64-tools dpkg-dev autoconf \
  automake libtool sqlite3 lld llvm
triplet=x86_64-w64-mingw32
cache=${MASTWISE_CACHE:-$HOME/.cache/mastwise}/windows-bookworm
prefix=$cache/prefix
mkdir -p "$cache/apt/lists/partial" "$cache/sources" "$cache/work" "$prefix"/{lib/pkgconfig,include,built}
export MASTWISE_WINDOWS_LIBRARIES=$prefix
export PKG_CONFIG_PATH= PKG_CONFIG_LIBDIR=$prefix/lib/pkgconfig:/usr/$triplet/lib/pkgconfig
made_of="-O2 -g0 -D_WIN32_WINNT=0x0A00 -I$prefix/include"

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
  echo "Building $1 $3 for Windows"
  [ "$3" = "$4" ] || echo "  The mirror has no sources of $4, the newest: this one is older or lacks Debian's patches." >&2
  # Patches made some sources newer than what they are for; nothing is to be generated again.
  if [ -e "$2/configure" ]; then find "$2" -exec touch -r "$2/configure" {} +; fi
}

# with_cmake [ARGUMENT...]: in the library's source folder.
with_cmake() {
  cmake -S "${source_folder:-.}" -B build-windows -G Ninja -DCMAKE_BUILD_TYPE=Release \
    "-DCMAKE_TOOLCHAIN_FILE=$here/cross_windows.cmake" "-DCMAKE_INSTALL_PREFIX=$prefix" \
    -DCMAKE_INSTALL_LIBDIR=lib -DBUILD_SHARED_LIBS=OFF -DBUILD_TESTING=OFF "$@"
  nice cmake --build build-windows
  cmake --install build-windows
}
# with_configure [ARGUMENT...]
with_configure() {
  ./configure --host=$triplet "--prefix=$prefix" --disable-shared --enable-static \
    CC=$triplet-gcc-posix CXX=$triplet-g++-posix "CFLAGS=$made_of" "CXXFLAGS=$made_of" \
    "LDFLAGS=-L$prefix/lib" "$@"
  nice make -j2
  make install
}
# as_library NAME SOURCE...: for those without a build of their own that crosses.
as_library() {
  local name=$1 one
  shift
  for one in "$@"; do echo "$one"; done |
    nice xargs -P2 -I{} sh -c 'case $1 in *.c) compiler=$3-gcc-posix ;; *) compiler=$3-g++-posix ;; esac
      exec $compiler $2 -c "$1" -o "$(basename "$1").o"' - {} "$made_of $flags" $triplet
  rm -f "$prefix/lib/lib$name.a"
  $triplet-ar rcs "$prefix/lib/lib$name.a" $(for one in "$@"; do echo "$(basename "$one").o"; done)
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
make_libnova() {
  mkdir -p "$prefix/include/libnova"
  cp src/libnova/*.h "$prefix/include/libnova"
  : >src/config.h
  sed -i '/#define _USE_32BIT_TIME_T/d' src/julian_day.c
  # Its substitutes for what the compiler has now must not take the place of that elsewhere.
  flags="-Isrc -DHAVE_ROUND -Dgmtime_r=nova_gmtime_r -Dstrtok_r=nova_strtok_r -Dnan=nova_nan"
  as_library nova src/*.c
}
make_libzip() {
  with_cmake -DENABLE_BZIP2=OFF -DENABLE_LZMA=OFF -DENABLE_ZSTD=OFF -DENABLE_GNUTLS=OFF -DENABLE_MBEDTLS=OFF \
    -DENABLE_OPENSSL=OFF -DENABLE_COMMONCRYPTO=OFF -DENABLE_WINDOWS_CRYPTO=OFF -DBUILD_TOOLS=OFF \
    -DBUILD_REGRESS=OFF -DBUILD_EXAMPLES=OFF -DBUILD_DOC=OFF
}
make_nettle() { with_configure --disable-public-key --disable-assembler --disable-documentation --disable-openssl; }
make_abseil() { with_cmake -DCMAKE_CXX_STANDARD=17 -DABSL_PROPAGATE_CXX_STD=ON -DABSL_BUILD_TESTING=OFF; }
make_curl() {
  with_cmake -DCURL_USE_SCHANNEL=ON -DHTTP_ONLY=ON -DBUILD_CURL_EXE=OFF -DCURL_ZLIB=ON -DUSE_NGHTTP2=OFF \
    -DCURL_USE_LIBPSL=OFF -DCURL_USE_LIBSSH2=OFF -DCURL_BROTLI=OFF -DCURL_ZSTD=OFF -DUSE_LIBIDN2=OFF -DENABLE_UNICODE=ON
}
# The fewest formats: those of kLocalFormats (platform/gdal_raster.cpp) without netCDF, and dBase.
# Compiled with -O1, which is quicker.
make_gdal() {
  local none=() formats=() one
  for one in JPEG JPEG12 GIF PNG QHULL LIBCSF LERC OPENCAD; do none+=("-DGDAL_USE_${one}_INTERNAL=OFF"); done
  for one in AAIGRID DTED GSG RAW SAGA SRTMHGT USGSDEM XYZ; do
    formats+=("-DGDAL_ENABLE_DRIVER_$one=ON")
  done
  with_cmake "-DCMAKE_CXX_FLAGS_RELEASE=-O1 -DNDEBUG" "-DCMAKE_C_FLAGS_RELEASE=-O1 -DNDEBUG" \
    -DGDAL_BUILD_OPTIONAL_DRIVERS=OFF -DOGR_BUILD_OPTIONAL_DRIVERS=OFF -DGDAL_USE_EXTERNAL_LIBS=OFF \
    -DGDAL_USE_INTERNAL_LIBS=ON -DGDAL_USE_ZLIB_INTERNAL=OFF -DGDAL_USE_ZLIB=ON "${none[@]}" "${formats[@]}" \
    -DBUILD_APPS=OFF -DBUILD_PYTHON_BINDINGS=OFF -DBUILD_JAVA_BINDINGS=OFF -DBUILD_CSHARP_BINDINGS=OFF
}
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
make_imgui() {
  mkdir -p "$prefix/include/imgui/backends"
  cp ./*.h misc/freetype/*.h misc/cpp/*.h "$prefix/include/imgui"
  cp backends/imgui_impl_{sdl,opengl3}*.h "$prefix/include/imgui/backends"
  flags="-I. -Ibackends -I$prefix/include/SDL2 -I$prefix/include/freetype2 -I$prefix/include/stb -DIMGUI_ENABLE_FREETYPE"
  as_library imgui imgui.cpp imgui_draw.cpp imgui_tables.cpp imgui_widgets.cpp misc/freetype/imgui_freetype.cpp \
    misc/cpp/imgui_stdlib.cpp backends/imgui_impl_sdl.cpp backends/imgui_impl_opengl3.cpp
  described imgui 1.86 "-I\${prefix}/include/imgui -DIMGUI_ENABLE_FREETYPE" "-limgui"
}
make_libpng1.6() { with_cmake -DPNG_SHARED=OFF -DPNG_TESTS=OFF -DPNG_EXECUTABLES=OFF -DPNG_HARDWARE_OPTIMIZATIONS=OFF; }
make_pixman() { with_configure --disable-gtk --disable-libpng --disable-openmp; }
make_cairo() {
  # Its tests do not link. What checks for overruns in its code is in another library here.
  sed -i 's/^SUBDIRS = .*/SUBDIRS = src/' Makefile.in
  with_configure --enable-ft=yes --enable-fc=no --enable-win32=no --enable-win32-font=no --enable-xlib=no \
    --enable-xcb=no --enable-ps=no --enable-svg=no --enable-script=no --enable-interpreter=no --enable-gobject=no \
    --enable-trace=no --disable-gtk-doc
  sed -i 's/^Libs: .*-lcairo$/& -lssp/' "$prefix/lib/pkgconfig/cairo.pc"
}
make_libsdl2() {
  with_cmake -DSDL_SHARED=OFF -DSDL_STATIC=ON -DSDL_TEST=OFF -DSDL_VULKAN=OFF -DSDL_RENDER_D3D=OFF
}

# In this order: a library comes after those that it needs.
windows_libraries=(sqlite3 expat geographiclib proj fmtlib libnova libzip nettle abseil curl freetype libstb
  libsdl2 imgui libpng1.6 pixman cairo gdal)

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
  local helper
  declare -f "make_$1"
  for helper in with_cmake with_configure as_library; do
    if declare -f "make_$1" | grep -q "$helper"; then declare -f "$helper"; fi
  done
  echo "$made_of"
}

build_windows_libraries() {
  local name recipe started log
  for name in "${windows_libraries[@]}"; do
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
  tidy_descriptions
}

# All is linked in, and without what only GNU's linker or CMake understands.
tidy_descriptions() {
  sed -i -E -e 's/-Wl,--push-state,--as-needed -latomic -Wl,--pop-state//' \
    -e 's/"(advapi32|bcrypt|dbghelp)"/-l\1/g' -e 's#/usr/[^ ]*/lib(z|pthread)\.dll\.a#-l\1#g' \
    -e 's/-mwindows|-lSDL2main|-Dmain=SDL_main//g' "$prefix"/lib/pkgconfig/*.pc
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
