# Sourced: builds the libraries for the browser unless they are in the cache, and configures $build.
source "$here/libraries_web.sh"
copy_headers
build_libraries "${web_libraries[@]}"
configure "$build" -DCMAKE_BUILD_TYPE=Release "-DCMAKE_CXX_FLAGS_RELEASE=-O2 -DNDEBUG" "-DCMAKE_TOOLCHAIN_FILE=$here/cross_web.cmake"
