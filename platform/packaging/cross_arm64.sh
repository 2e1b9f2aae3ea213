# Sourced by deb.sh to build for arm64 on another machine, with Debian's cross compiler against
# Debian's arm64 packages. They are unpacked once into a cache outside of the tree: nothing of arm64 is
# installed here. qemu-user runs the program for its own help.
#   MASTWISE_CACHE=FOLDER   instead of ~/.cache/mastwise

install_missing g++-aarch64-linux-gnu qemu-user-static mmdebstrap
triplet=aarch64-linux-gnu
strip=$triplet-strip
sysroot=${MASTWISE_CACHE:-$HOME/.cache/mastwise}/arm64-bookworm

# All that run_packages needs to link and to run, but the tools of this machine.
cross_packages=()
for package in "${run_packages[@]}"; do
  case $package in
    g++ | cmake | ninja-build | pkg-config | ccache | python3) ;;
    *) cross_packages+=("$package") ;;
  esac
done
wanted=$(printf '%s\n' libc6-dev libstdc++-12-dev libgl1 "${cross_packages[@]}")
if [ "$(cat "$sysroot/wanted" 2>/dev/null)" != "$wanted" ]; then
  echo "Unpacking Debian's arm64 packages into $sysroot"
  rm -rf "$sysroot"
  mkdir -p "$(dirname "$sysroot")"
  # The packages stay: they tell which library needs which version.
  mmdebstrap --quiet --variant=extract --architectures=arm64 --skip=download/empty \
    --skip=cleanup/apt/cache --include="$(tr '\n' ',' <<<"$wanted" | sed 's/,$//')" \
    bookworm "$sysroot"
  find "$sysroot"/{etc,lib,usr} -type l -lname '/*' | while read -r link; do
    ln -sfr "$sysroot$(readlink "$link")" "$link"
  done
  # Alternatives, which the packages' own scripts would choose.
  for library in blas lapack; do
    ln -sf "$library/lib$library.so.3" "$sysroot/usr/lib/$triplet/lib$library.so.3"
  done
  echo "$wanted" >"$sysroot/wanted"
fi

export PKG_CONFIG_SYSROOT_DIR=$sysroot PKG_CONFIG_PATH=
export PKG_CONFIG_LIBDIR=$sysroot/usr/lib/$triplet/pkgconfig:$sysroot/usr/share/pkgconfig
configure "$build" -DCMAKE_BUILD_TYPE=Release "-DCMAKE_TOOLCHAIN_FILE=$here/cross_arm64.cmake" \
  "-DCMAKE_SYSROOT=$sysroot"

# libraries_of PROGRAM: unpacks each package with a library that the program names, for
# dpkg-shlibdeps to find its versions.
libraries_of() {
  local soname package unpacked folder=$build/libraries
  rm -rf "$folder"
  mkdir -p "$folder"
  while read -r soname; do
    for package in "$sysroot"/var/cache/apt/archives/*.deb; do
      [ -e "$package.files" ] || dpkg-deb --fsys-tarfile "$package" | tar -t >"$package.files"
      grep -q "/$soname$" "$package.files" || continue
      unpacked=$folder/$(basename "$package" .deb)
      [ -d "$unpacked" ] || dpkg-deb --raw-extract "$package" "$unpacked"
      break
    done
  done < <("$triplet-objdump" -p "$1" | sed -n 's/ *NEEDED *//p')
  find "$folder" -type d -name "$triplet" -path '*/lib/*' -printf '-l%p\n'
}
