#!/usr/bin/env bash
# links.sh VERBS: the verbs that draw nothing are linked with no library of the window, and work.
set -euo pipefail
command -v ldd >/dev/null || { echo "SKIPPED: there is no ldd"; exit 77; }
libraries=$(ldd "$1")
if grep -E 'libSDL|libGL|libOpenGL|libEGL|imgui' <<<"$libraries"; then
  echo "The command line links the libraries above, which only the window needs." >&2
  exit 1
fi
"$1" card | grep -q magnetic
