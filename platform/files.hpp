#pragma once

#include "core/result.hpp"

#include <string>

namespace mastwise::platform {

bool exists(const std::string& path);

// The whole file as bytes. Fails with the path and the system's reason.
Result<std::string> read_file(const std::string& path);

// The folder with the program's fonts, magnetic model and practice area: MASTWISE_ASSETS where set,
// else `assets` beside the program.
std::string assets_folder();

// The user's data folder for the catalog and the logbook, created when missing: MASTWISE_DATA where
// set, else the place where this system keeps such data.
Result<std::string> data_folder();

}  // namespace mastwise::platform
