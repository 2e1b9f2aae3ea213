# Sourced by web_build.sh: libraries for the browser, by Debian's emscripten.

install_missing emscripten nodejs node-acorn
system=web
source "$here/libraries.sh"
export MASTWISE_WEB_LIBRARIES=$prefix
export PKG_CONFIG_PATH= PKG_CONFIG_LIBDIR=$prefix/lib/pkgconfig
# emscripten's own tools need Debian's modules also with a node from elsewhere, and are quickest without a
# Python that first looks for its version.
export NODE_PATH=/usr/share/nodejs EMSDK_PYTHON=/usr/bin/python3
# Exceptions and long jumps are WebAssembly's own: without them, each call that may throw goes through
# JavaScript.
web_flags="-pthread -fwasm-exceptions -sSUPPORT_LONGJMP=wasm"
llvm-as-14 -o "$prefix/lib/landing_pad.bc" "$here/landing_pad_web.ll"
quickly=("-DCMAKE_CXX_FLAGS_RELEASE=-O1 -DNDEBUG" "-DCMAKE_C_FLAGS_RELEASE=-O1 -DNDEBUG")
made_of="-O2 -g0 $web_flags -DIMGUI_IMPL_OPENGL_ES3 -I$prefix/include"

# with_cmake [ARGUMENT...]: in the library's source folder.
with_cmake() {
  cmake -S "${source_folder:-.}" -B build-web -G Ninja -DCMAKE_BUILD_TYPE=Release \
    "-DCMAKE_TOOLCHAIN_FILE=$here/cross_web.cmake" "-DCMAKE_INSTALL_PREFIX=$prefix" \
    -DCMAKE_INSTALL_LIBDIR=lib -DBUILD_SHARED_LIBS=OFF -DBUILD_TESTING=OFF "$@"
  nice cmake --build build-web
  cmake --install build-web
}
# as_library NAME SOURCE...: for those without a build of their own that crosses.
as_library() {
  local name=$1 one
  shift
  for one in "$@"; do echo "$one"; done |
    nice xargs -P2 -I{} sh -c 'case $1 in *.c) compiler=emcc ;; *) compiler=em++ ;; esac
      exec sh $3 $compiler $2 -c "$1" -o "$(basename "$1").o"' - {} "$made_of $flags" "$here/compile_web.sh"
  rm -f "$prefix/lib/lib$name.a"
  llvm-ar-14 rcs "$prefix/lib/lib$name.a" $(for one in "$@"; do echo "$(basename "$one").o"; done)
}

make_zlib() {
  cp zlib.h zconf.h "$prefix/include"
  flags=-DHAVE_UNISTD_H
  as_library z ./*.c
  described zlib "$(sed -n 's/#define ZLIB_VERSION "\(.*\)"/\1/p' zlib.h)" "" -lz
}
# Its settings are this machine's.
make_geographiclib() {
  cp -r include/GeographicLib "$prefix/include"
  cp /usr/include/GeographicLib/Config.h "$prefix/include/GeographicLib"
  flags=
  as_library GeographicLib src/*.cpp
}
make_proj() {
  # Its database is that of this machine.
  sed -i -E '/add_subdirectory\(data\)/d' CMakeLists.txt
  with_cmake "${quickly[@]}" -DENABLE_TIFF=OFF -DENABLE_CURL=OFF -DBUILD_APPS=OFF "-DEXE_SQLITE3=$(command -v sqlite3)"
}
# Only its SHA-256: its configure script takes minutes with emscripten.
make_nettle() {
  mkdir -p "$prefix/include/nettle"
  echo '#include <stdint.h>' >nettle-stdint.h
  : >config.h
  cp nettle-stdint.h nettle-types.h sha.h sha2.h "$prefix/include/nettle"
  flags=-I.
  as_library nettle sha256.c sha256-compress.c write-be32.c
  described nettle 3 "" -lnettle
}
# Only its time zones.
make_abseil() {
  cmake -B build-web -G Ninja -DCMAKE_BUILD_TYPE=Release "-DCMAKE_TOOLCHAIN_FILE=$here/cross_web.cmake" \
    "-DCMAKE_INSTALL_PREFIX=$prefix" -DCMAKE_CXX_STANDARD=17 -DABSL_PROPAGATE_CXX_STD=ON -DBUILD_TESTING=OFF \
    -DABSL_ENABLE_INSTALL=ON "${quickly[@]}"
  nice cmake --build build-web --target absl/time/all
  find build-web -name '*.a' -exec cp {} "$prefix/lib" \;
  cp build-web/lib/pkgconfig/absl_*.pc "$prefix/lib/pkgconfig"
  # Its description names a library that emscripten has within its C library.
  sed -i 's/-Wl,--push-state,--as-needed -latomic -Wl,--pop-state//' "$prefix"/lib/pkgconfig/absl_*.pc
  find absl \( -name "*.h" -o -name "*.inc" \) -exec cp --parents {} "$prefix/include" \;
}

make_libnova() {
  mkdir -p "$prefix/include/libnova"
  cp src/libnova/*.h "$prefix/include/libnova"
  : >src/config.h
  # It has these for Windows only.
  sed -i '0,/^#ifndef __APPLE__/s//typedef int BOOL;\n#define TRUE 1\n#define FALSE 0\n#define iswhite(c) ((c) == 32 || (c) == 9)\n&/' \
    src/misc.c
  flags="-Isrc -DHAVE_ROUND -Dgmtime_r=nova_gmtime_r -Dstrtok_r=nova_strtok_r -Dnan=nova_nan"
  as_library nova src/*.c
}
make_freetype() {
  with_cmake "${quickly[@]}" -DFT_REQUIRE_ZLIB=ON -DFT_DISABLE_BZIP2=ON -DFT_DISABLE_PNG=ON -DFT_DISABLE_HARFBUZZ=ON \
    -DFT_DISABLE_BROTLI=ON
}
# The configuration scripts of these two take minutes with emscripten. SDL has settings for it ready, and
# those of libzip are this machine's but for the sizes of 32 bits and the calls of one kernel.
make_libsdl2() {
  mkdir -p "$prefix/include/SDL2"
  cp include/*.h "$prefix/include/SDL2"
  flags="-Iinclude -Wno-implicit-function-declaration"
  as_library SDL2 src/*.c src/{atomic,audio,cpuinfo,dynapi,events,file,haptic,joystick,libm,locale,misc,power}/*.c \
    src/{render,sensor,stdlib,thread,timer,video}/*.c src/{audio,haptic,sensor,video}/dummy/*.c src/audio/disk/*.c \
    src/{audio,filesystem,joystick,locale,misc,power,video}/emscripten/*.c src/loadso/dlopen/*.c src/render/opengles2/*.c \
    src/render/software/*.c src/joystick/virtual/*.c src/thread/pthread/SDL_{syscond,sysmutex,syssem,systhread,systls}.c \
    src/timer/unix/*.c src/video/yuv2rgb/*.c
  described sdl2 2.26.5 "-I\${prefix}/include/SDL2" -lSDL2
}
make_libzip() {
  cmake -S . -B made -DENABLE_BZIP2=OFF -DENABLE_LZMA=OFF -DENABLE_ZSTD=OFF -DENABLE_GNUTLS=OFF -DENABLE_MBEDTLS=OFF \
    -DENABLE_OPENSSL=OFF -DENABLE_COMMONCRYPTO=OFF -DBUILD_TOOLS=OFF -DBUILD_REGRESS=OFF -DBUILD_EXAMPLES=OFF -DBUILD_DOC=OFF
  cp made/zip_err_str.c made/lib 2>/dev/null || true
  sed -i -E -e 's/(SIZEOF_(SIZE_T|LONG)) 8/\1 4/' -e '/HAVE_(FICLONERANGE|CLONEFILE|ARC4RANDOM)/d' made/config.h
  cp made/zipconf.h lib/zip.h "$prefix/include"
  flags="-Imade -Ilib -DHAVE_CONFIG_H"
  as_library zip $(find lib made -name 'zip*.c' | grep -Ev 'win32|uwp|crypto_|winzip_aes|bzip2|_xz' | sort)
  described libzip "$(sed -n 's/.*LIBZIP_VERSION "\(.*\)"/\1/p' made/zipconf.h)" "" "-lzip -lz"
}

# In this order: a library comes after those that it needs.
web_libraries=(zlib expat fmtlib libnova libzip nettle abseil geographiclib sqlite3 proj libstb freetype libsdl2 imgui)
