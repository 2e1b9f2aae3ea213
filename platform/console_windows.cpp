#include "platform/console.hpp"

#include <cstdio>

#include <windows.h>
// windows.h comes first.
#include <fcntl.h>
#include <io.h>

namespace mastwise::platform {

// Without this a terminal shows bytes of its old code page, and each line's end becomes two bytes.
void use_utf8_console() {
  ::SetConsoleOutputCP(CP_UTF8);
  ::_setmode(::_fileno(stdin), _O_BINARY);
  ::_setmode(::_fileno(stdout), _O_BINARY);
  ::_setmode(::_fileno(stderr), _O_BINARY);
}

}  // namespace mastwise::platform
