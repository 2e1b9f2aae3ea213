#pragma once

#include <string>
#include <vector>

namespace mastwise::platform {

// A folder in which a person's own files may lie, as the person calls it.
struct PlaceToLook {
  std::string name = {};  // "Downloads", "USB STICK"
  std::string path = {};
  bool operator==(const PlaceToLook&) const = default;
};

// The user's folders that there are, then sticks and cards. One source file for each system.
std::vector<PlaceToLook> places_to_look();

// The sticks and cards of a list of what is mounted, in the system's own format.
std::vector<PlaceToLook> media_in(const std::string& list_of_mounts);

}  // namespace mastwise::platform
