#include "platform/system_paths.hpp"

#include <cstdlib>
#include <filesystem>

namespace mastwise::platform {

std::string program_folder() {
  std::error_code ignored;
  return std::filesystem::read_symlink("/proc/self/exe", ignored).parent_path().string();
}

// XDG Base Directory Specification.
std::string user_data_folder() {
  if (const char* data = std::getenv("XDG_DATA_HOME"); data != nullptr && *data == '/') {
    return std::string(data) + "/mastwise";
  }
  const char* home = std::getenv("HOME");
  return std::string(home != nullptr ? home : ".") + "/.local/share/mastwise";
}

}  // namespace mastwise::platform
