#pragma once

#include "platform/places_to_look.hpp"

#include <string>
#include <vector>

namespace mastwise::platform {

// The sticks and cards in a list of mounts, in the format of fstab(5).
std::vector<PlaceToLook> media_in(const std::string& list_of_mounts);

}  // namespace mastwise::platform
