# Sourced by the scripts that make packages with the libraries inside.

# gather_licenses FOLDER LIBRARY... -- PACKAGE...: a file for each library that was built, and for each
# package of this machine, named by its version.
gather_licenses() {
  local folder=$1 name
  shift
  mkdir "$folder"
  while [ "$1" != -- ]; do
    license_of "$1" >"$folder/$1_$(head -1 "$prefix/built/$1")"
    shift
  done
  shift
  for name; do
    cp "/usr/share/doc/$name/copyright" "$folder/${name}_$(dpkg-query -W -f='${Version}' "$name")"
  done
}

# all_licenses FOLDER: as one text, Mastwise's own first.
all_licenses() {
  local part one
  cat "$root/LICENSE"
  for part in assets/fonts/OFL.txt assets/{places,borders,zones}/README; do
    printf '\n---- %s ----\n\n' "$part"
    cat "$root/$part"
  done
  printf '\n---- Libraries within the program, built from their sources by Mastwise'\''s platform/package ----\n'
  for one in "$1"/*; do
    printf '\n---- %s ----\n\n' "$(basename "$one" | tr _ ' ')"
    cat "$one"
  done
}
