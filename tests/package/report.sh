# Sourced by the tests of packages. `started` is when the first of the steps began.
fail() { echo "FAILED: $*" >&2; exit 1; }
passed() { echo "passed after $((SECONDS - started)) s: $*"; }
