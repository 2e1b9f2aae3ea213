# Sourced by run, test and package: Debian packages, and the build folder.

run_packages=(
  g++ cmake ninja-build pkg-config ccache python3
  libsdl2-dev libimgui-dev libstb-dev libfreetype-dev libgl-dev libgl1-mesa-dri libegl1
  libgeographiclib-dev libproj-dev proj-data libsqlite3-dev libexpat1-dev
  libfmt-dev libcli11-dev nlohmann-json3-dev
  libgdal-dev libcurl4-gnutls-dev ca-certificates libzip-dev nettle-dev libnova-dev libcairo2-dev libabsl-dev tzdata
  libespeak-ng-dev espeak-ng-data
)
test_packages=(catch2 clang lld libclang-rt-14-dev clang-format poppler-utils strace gpsd gpsd-clients)
# For platform/package deb, and for its test.
deb_packages=(git librsvg2-bin dpkg-dev)
deb_test_packages=(lintian mmdebstrap appstream desktop-file-utils file man-db)

install_missing() {
  local missing=()
  for package in "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' ||
      missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return
  local sudo=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || {
      echo "These packages are missing: ${missing[*]}. Install them as root, then run this again." >&2
      exit 1
    }
    sudo=(sudo)
  fi
  echo "Installing ${missing[*]}"
  # Another clone, or the system's own updates, may be at it too.
  local apt=("${sudo[@]}" apt-get -qq -o DPkg::Lock::Timeout=600)
  "${apt[@]}" update
  DEBIAN_FRONTEND=noninteractive "${apt[@]}" install -y --no-install-recommends "${missing[@]}" >/dev/null
}

# Lets another clone of the same sources reuse this clone's compiled files.
export CCACHE_BASEDIR=$root CCACHE_NOHASHDIR=1

# configure FOLDER [CMAKE ARGUMENT...]: skipped if already done with these arguments.
configure() {
  local folder=$1 arguments="$*"
  shift
  [ "$(cat "$folder/configured-with" 2>/dev/null)" = "$arguments" ] && return
  cmake -S "$root" -B "$folder" -G Ninja "$@"
  echo "$arguments" >"$folder/configured-with"
}

# The watched build in build/sanitize, and the released one in build, which takes the tests' code from
# it: clang needs about half of GCC 12's time there, and has the fuzzer.
configure_tests() {
  configure "$root/build/sanitize" -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=RelWithDebInfo \
    -DMASTWISE_TESTS=ON -DMASTWISE_SANITIZE=ON -DMASTWISE_FUZZ=ON -DMASTWISE_TEST_CODE=
  configure "$root/build" -DCMAKE_BUILD_TYPE=Release -DMASTWISE_TESTS=ON \
    -DMASTWISE_TEST_CODE="$root/build/sanitize/tests/libmastwise_test_code.a"
}

# Locks the build folder until `release_build`: a second caller waits, and then finds the work done.
hold_build() {
  mkdir -p "$root/build"
  exec 9>"$root/build/lock"
  flock --nonblock 9 && return
  echo "Waiting for another build in $root/build"
  flock 9
}
release_build() { exec 9>&-; }
