#pragma once

#include <string>
#include <vector>

namespace mastwise::platform {

// A folder for the user's files, with its usual name.
struct PlaceToLook {
  std::string name = {};  // "Downloads", "USB STICK"
  std::string path = {};
  bool operator==(const PlaceToLook&) const = default;
};

// The user's existing folders, then sticks and cards. One source file for each system.
std::vector<PlaceToLook> places_to_look();

}  // namespace mastwise::platform
