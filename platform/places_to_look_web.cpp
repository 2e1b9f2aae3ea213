#include "platform/places_to_look.hpp"

#include <filesystem>
#include <string>

namespace mastwise::platform {

// The files that a person has picked, and those to be saved (web/start.js).
std::vector<PlaceToLook> places_to_look() {
  const std::string folder = "/files";
  std::error_code ignored;
  if (!std::filesystem::is_directory(folder, ignored)) return {};
  return {{"Documents", folder}};
}

}  // namespace mastwise::platform
