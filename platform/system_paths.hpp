#pragma once

#include <optional>
#include <string>

// File locations that differ between systems: one source file for each system.
namespace mastwise::platform {

// The folder of the running executable.
std::string program_folder();

// The assets of a program in `program_folder`: `assets` beside it, else `../share/mastwise`, where
// a package puts them. The first also where neither exists, for the error to name.
std::string assets_beside(const std::string& program_folder);

// The system's usual place for this user's application data; it may not exist yet.
std::string user_data_folder();

// A variable of the environment, in UTF-8.
std::optional<std::string> environment(const char* name);

}  // namespace mastwise::platform
