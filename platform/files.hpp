#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <string>

namespace mastwise::platform {

bool exists(const std::string& path);

// The whole file as bytes, at most kLargestFile. The error has the path and the system's reason.
inline constexpr std::size_t kLargestFile = std::size_t{1} << 30;
Result<std::string> read_file(const std::string& path);

// The folder with Mastwise's fonts, magnetic model and practice area: MASTWISE_ASSETS if set, else
// `assets` beside the executable.
std::string assets_folder();

// The user's data folder for the catalog and the logbook, created if missing: MASTWISE_DATA if set,
// else the system's usual place.
Result<std::string> data_folder();

}  // namespace mastwise::platform
