# Sourced: builds the libraries for Windows unless they are in the cache, and configures $build.
# wine runs what the build makes and needs at once; its settings stay within the cache too.
source "$here/libraries_windows.sh"
install_missing wine wine64
export WINEPREFIX=$cache/wine WINEDEBUG=-all
copy_headers
build_libraries "${windows_libraries[@]}"
tidy_descriptions
configure "$build" -DCMAKE_BUILD_TYPE=Release -DMASTWISE_TESTS=ON \
  "-DCMAKE_TOOLCHAIN_FILE=$here/cross_windows.cmake"
