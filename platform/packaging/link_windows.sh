#!/bin/sh
# link_windows.sh COMPILER ARGUMENT...: links as the compiler would, but with LLVM's linker. GNU's takes
# minutes for the many small functions of templates, and Debian's compiler for Windows has it built in.
set -e
command=$("$@" -### 2>&1 | grep -m1 '/collect2 ') || exec "$@"
command=$(printf '%s' "$command" | sed -E 's#^ *[^ ]*/collect2#ld.lld#; s# -plugin [^ ]+##; s# "?-plugin-opt=[^ ]+##g; s# -fuse-ld=lld##')
eval "$command"
