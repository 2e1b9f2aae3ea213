# Sourced by windows_build.sh: libraries for Windows, by Debian's cross compiler.

install_missing g++-mingw-w64-x86-64-posix libz-mingw-w64-dev mingw-w64-tools lld llvm
system=windows
triplet=x86_64-w64-mingw32
source "$here/libraries.sh"
export MASTWISE_WINDOWS_LIBRARIES=$prefix
# With ccache a library whose build was stopped resumes there. GDAL takes a quarter of an hour.
export CMAKE_C_COMPILER_LAUNCHER=ccache CMAKE_CXX_COMPILER_LAUNCHER=ccache
export PKG_CONFIG_PATH= PKG_CONFIG_LIBDIR=$prefix/lib/pkgconfig:/usr/$triplet/lib/pkgconfig
made_of="-O2 -g0 -D_WIN32_WINNT=0x0A00 -I$prefix/include"

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

make_curl() {
  with_cmake -DCURL_USE_SCHANNEL=ON -DHTTP_ONLY=ON -DBUILD_CURL_EXE=OFF -DCURL_ZLIB=ON -DUSE_NGHTTP2=OFF \
    -DCURL_USE_LIBPSL=OFF -DCURL_USE_LIBSSH2=OFF -DCURL_BROTLI=OFF -DCURL_ZSTD=OFF -DUSE_LIBIDN2=OFF -DENABLE_UNICODE=ON
}
# The fewest formats: those of kLocalFormats (platform/gdal_raster_native.cpp) without netCDF, and dBase.
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
make_cairo() {
  # In a static library nobody creates its locks when the program starts, and it would wait for one
  # forever.
  echo '__attribute__ ((constructor)) static void make_locks (void) { CAIRO_MUTEX_INITIALIZE (); }' >>src/cairo-mutex.c
  # Its tests do not link. What checks for overruns in its code is in another library here.
  sed -i 's/^SUBDIRS = .*/SUBDIRS = src/' Makefile.in
  with_configure --enable-ft=yes --enable-fc=no --enable-win32=no --enable-win32-font=no --enable-xlib=no \
    --enable-xcb=no --enable-ps=no --enable-svg=no --enable-script=no --enable-interpreter=no --enable-gobject=no \
    --enable-trace=no --disable-gtk-doc
  sed -i 's/^Libs: .*-lcairo$/& -lssp/' "$prefix/lib/pkgconfig/cairo.pc"
}

# In this order: a library comes after those that it needs.
windows_libraries=(sqlite3 expat geographiclib proj fmtlib libnova libzip nettle abseil curl freetype libstb
  libsdl2 imgui libpng1.6 pixman cairo gdal)

# All is linked in, and without what only GNU's linker or CMake understands.
tidy_descriptions() {
  sed -i -E -e 's/-Wl,--push-state,--as-needed -latomic -Wl,--pop-state//' \
    -e 's/"(advapi32|bcrypt|dbghelp)"/-l\1/g' -e 's#/usr/[^ ]*/lib(z|pthread)\.dll\.a#-l\1#g' \
    -e 's/-mwindows|-lSDL2main|-Dmain=SDL_main//g' "$prefix"/lib/pkgconfig/*.pc
}
