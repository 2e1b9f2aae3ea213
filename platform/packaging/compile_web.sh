#!/bin/sh
# compile_web.sh COMPILER ARGUMENT...: compiles as emscripten's COMPILER would, but without starting its
# Python for each source, which takes longer than most sources; and through ccache, which does not know
# emscripten.
set -e
case $1 in *em++*) compiler=clang++-14 ;; *) compiler=clang-14 ;; esac
shift
for argument in "$@"; do
  shift
  case $argument in -s[A-Z]*) ;; *) set -- "$@" "$argument" ;; esac
done
system=/usr/share/emscripten/cache/sysroot
exec $(command -v ccache || true) $compiler -target wasm32-unknown-emscripten -DEMSCRIPTEN -D__EMSCRIPTEN_major__=3 \
  -D__EMSCRIPTEN_minor__=1 -D__EMSCRIPTEN_tiny__=6 -fvisibility=default -mllvm -combiner-global-alias-analysis=false \
  -mllvm -wasm-enable-sjlj -mllvm -disable-lsr -D_LIBCPP_ABI_VERSION=2 -Dunix -D__unix -D__unix__ \
  -Xclang -mlink-bitcode-file -Xclang "$MASTWISE_WEB_LIBRARIES/lib/landing_pad.bc" \
  -Werror=implicit-function-declaration -Xclang -iwithsysroot/include/SDL --sysroot=$system \
  -Xclang -iwithsysroot/include/compat "$@"
