# Debian's cross compiler for Windows, with the libraries that libraries_windows.sh builds. Everything
# is linked into the program, the compiler's own libraries too.
set(CMAKE_SYSTEM_NAME Windows)
set(CMAKE_SYSTEM_PROCESSOR x86_64)
set(CMAKE_C_COMPILER x86_64-w64-mingw32-gcc-posix)
set(CMAKE_CXX_COMPILER x86_64-w64-mingw32-g++-posix)
set(CMAKE_RC_COMPILER x86_64-w64-mingw32-windres)
# GNU's own archiver and linker take minutes for the many small functions of templates.
set(CMAKE_AR llvm-ar)
set(CMAKE_RANLIB llvm-ranlib)
set(CMAKE_C_LINKER_LAUNCHER sh ${CMAKE_CURRENT_LIST_DIR}/link_windows.sh)
set(CMAKE_CXX_LINKER_LAUNCHER ${CMAKE_C_LINKER_LAUNCHER})
set(windows_libraries $ENV{MASTWISE_WINDOWS_LIBRARIES} CACHE PATH "Where the libraries are")
set(CMAKE_FIND_ROOT_PATH ${windows_libraries} /usr/x86_64-w64-mingw32)
set(CMAKE_PREFIX_PATH ${windows_libraries})
set(CMAKE_FIND_ROOT_PATH_MODE_PROGRAM NEVER)
set(CMAKE_FIND_ROOT_PATH_MODE_LIBRARY ONLY)
set(CMAKE_FIND_ROOT_PATH_MODE_INCLUDE ONLY)
set(CMAKE_FIND_ROOT_PATH_MODE_PACKAGE ONLY)
set(CMAKE_TRY_COMPILE_PLATFORM_VARIABLES windows_libraries)
set(PKG_CONFIG_ARGN --static)
set(ENV{PKG_CONFIG_PATH} "")
set(ENV{PKG_CONFIG_LIBDIR} ${windows_libraries}/lib/pkgconfig:/usr/x86_64-w64-mingw32/lib/pkgconfig)
set(CMAKE_CROSSCOMPILING_EMULATOR env WINEDEBUG=-all wine)
# Windows 10. The rest tells headers that their library is linked, not loaded.
set(windows_defines "-D_WIN32_WINNT=0x0A00 -DXML_STATIC -DCURL_STATICLIB -DZIP_STATIC -DCAIRO_WIN32_STATIC_BUILD")
set(CMAKE_C_FLAGS_INIT "${windows_defines} -isystem ${windows_libraries}/include")
set(CMAKE_CXX_FLAGS_INIT "${windows_defines} -isystem ${windows_libraries}/include")
# No times in the program: the same commit gives the same bytes.
set(CMAKE_EXE_LINKER_FLAGS_INIT
  "-static -L${windows_libraries}/lib -Wl,--no-insert-timestamp")
