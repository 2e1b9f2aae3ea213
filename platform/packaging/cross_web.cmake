# Debian's emscripten, with the libraries that libraries_web.sh builds.
include(/usr/share/emscripten/cmake/Modules/Platform/Emscripten.cmake)
set(web_libraries $ENV{MASTWISE_WEB_LIBRARIES} CACHE PATH "Where the libraries are")
list(PREPEND CMAKE_FIND_ROOT_PATH ${web_libraries})
set(CMAKE_PREFIX_PATH ${web_libraries})
set(CMAKE_TRY_COMPILE_PLATFORM_VARIABLES web_libraries)
set(PKG_CONFIG_ARGN --static)
set(ENV{PKG_CONFIG_PATH} "")
set(ENV{PKG_CONFIG_LIBDIR} ${web_libraries}/lib/pkgconfig)
# Those of emscripten look for a fetch that newer versions of node have and do not need.
set(CMAKE_CROSSCOMPILING_EMULATOR node --no-experimental-fetch)
# Exceptions and long jumps are WebAssembly's own, as in the libraries.
set(web_flags "-pthread -fwasm-exceptions -sSUPPORT_LONGJMP=wasm")
set(CMAKE_C_FLAGS_INIT "${web_flags} -isystem ${web_libraries}/include")
set(CMAKE_CXX_FLAGS_INIT "${web_flags} -isystem ${web_libraries}/include")
set(CMAKE_EXE_LINKER_FLAGS_INIT "${web_flags} -L${web_libraries}/lib")
set(CMAKE_C_COMPILER_LAUNCHER sh ${CMAKE_CURRENT_LIST_DIR}/compile_web.sh)
set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_C_COMPILER_LAUNCHER})
