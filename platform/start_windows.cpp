#include "platform/files.hpp"
#include "platform/start.hpp"
#include "platform/system_paths.hpp"
#include "platform/system_windows.hpp"

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

#include <windows.h>
// windows.h comes first.
#include <fcntl.h>
#include <io.h>
#include <shellapi.h>

namespace mastwise::platform {
namespace {

// Without this a terminal shows bytes of its old code page, and each line's end becomes two bytes.
void use_utf8_console() {
  ::SetConsoleOutputCP(CP_UTF8);
  ::_setmode(::_fileno(stdin), _O_BINARY);
  ::_setmode(::_fileno(stdout), _O_BINARY);
  ::_setmode(::_fileno(stderr), _O_BINARY);
}

// The libraries that read these variables take them for UTF-8.
void use_data_of_package(const char* variable, const char* folder) {
  if (!environment(variable)) ::_putenv_s(variable, (assets_folder() + folder).c_str());
}

}  // namespace

char** start_program(int& count, char* given[]) {
  use_utf8_console();
  use_data_of_package("TZDIR", "/zoneinfo");
  use_data_of_package("PROJ_DATA", "/proj");
  static std::vector<std::string> texts;
  static std::vector<char*> starts;
  const std::unique_ptr<wchar_t*, decltype(&::LocalFree)> words(
      ::CommandLineToArgvW(::GetCommandLineW(), &count), &::LocalFree);
  if (!words) return given;
  for (int at = 0; at < count; ++at) texts.push_back(narrow(words.get()[at]));
  for (std::string& text : texts) starts.push_back(text.data());
  starts.push_back(nullptr);
  return starts.data();
}

}  // namespace mastwise::platform
