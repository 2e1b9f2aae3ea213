#include "platform/system_paths.hpp"

#include <cstdlib>

// The page's files: what was loaded with the program, and what the browser keeps (web/start.js).
namespace mastwise::platform {

std::string program_folder() {
  return "/";
}

std::string assets_beside(const std::string&) {
  return "/assets";
}

std::optional<std::string> environment(const char* name) {
  const char* text = std::getenv(name);
  return text != nullptr ? std::optional<std::string>(text) : std::nullopt;
}

std::string user_data_folder() {
  return "/mastwise";
}

}  // namespace mastwise::platform
