#include "platform/system_windows.hpp"

#include <cerrno>
#include <cstdio>
#include <cwchar>

#include <windows.h>

// Narrow texts are UTF-8, also as names of files. The C library of this system knows old code pages
// only, and GCC's std::filesystem::path and std::ifstream ask it, as do the libraries. The linker
// sends their calls here (--wrap in platform/CMakeLists.txt). path::string() gives UTF-8 by itself.

// A byte that is not UTF-8 stands for the character of its number, so no name is refused. A
// character beyond 16 bits is two units: the second waits in `state` for the next question.
extern "C" std::size_t __wrap_mbrtowc(wchar_t* to, const char* from, std::size_t size,
                                      std::mbstate_t* state) {
  if (from == nullptr) return 0;
  if (size == 0) return static_cast<std::size_t>(-2);
  if (state != nullptr && *state != 0) {
    if (to != nullptr) *to = static_cast<wchar_t>(*state);
    *state = 0;
    return 1;
  }
  const auto first = static_cast<unsigned char>(*from);
  const std::size_t length = first < 0xC0 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  wchar_t units[2] = {static_cast<wchar_t>(first), 0};
  int count = 1;
  if (length > 1 && length <= size) {
    count = ::MultiByteToWideChar(CP_UTF8, MB_ERR_INVALID_CHARS, from, static_cast<int>(length),
                                  units, 2);
  }
  if (to != nullptr) *to = units[0];
  if (count == 2 && state != nullptr) {
    *state = units[1];
    return length - 1;
  }
  if (first == 0) return 0;
  return length <= size && count == 1 ? length : 1;
}

extern "C" std::FILE* __wrap_fopen(const char* name, const char* mode) {
  using namespace mastwise::platform;
  constexpr std::size_t kShort = 247;  // see long_path
  const std::wstring text = wide(name);
  return ::_wfopen((text.size() <= kShort ? text : long_path(text)).c_str(), wide(mode).c_str());
}

extern "C" std::FILE* __wrap_fopen64(const char* name, const char* mode) {
  return __wrap_fopen(name, mode);
}

// As POSIX has it: a file of the new name is replaced.
extern "C" int __wrap_rename(const char* from, const char* to) {
  using namespace mastwise::platform;
  const bool renamed = ::MoveFileExW(long_path(wide(from)).c_str(), long_path(wide(to)).c_str(),
                                     MOVEFILE_REPLACE_EXISTING | MOVEFILE_WRITE_THROUGH) != 0;
  if (!renamed) errno = ::GetLastError() == ERROR_FILE_NOT_FOUND ? ENOENT : EACCES;
  return renamed ? 0 : -1;
}

extern "C" int __wrap_remove(const char* name) {
  using namespace mastwise::platform;
  return ::_wremove(long_path(wide(name)).c_str());
}
