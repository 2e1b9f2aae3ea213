#include "platform/system_paths.hpp"

#include <cstdlib>
#include <filesystem>

namespace mastwise::platform {

std::string program_folder() {
  std::error_code ignored;
  return std::filesystem::read_symlink("/proc/self/exe", ignored).parent_path().string();
}

std::string assets_beside(const std::string& program_folder) {
  const std::filesystem::path folder = program_folder;
  const std::filesystem::path beside = folder / "assets";
  const std::filesystem::path installed = folder.parent_path() / "share" / "mastwise";
  std::error_code ignored;
  const bool is_installed =
      !std::filesystem::exists(beside, ignored) && std::filesystem::exists(installed, ignored);
  return (is_installed ? installed : beside).string();
}

std::optional<std::string> environment(const char* name) {
  const char* text = std::getenv(name);
  return text != nullptr ? std::optional<std::string>(text) : std::nullopt;
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
