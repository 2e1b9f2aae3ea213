#pragma once

#include <string>

#include "core/result.hpp"

// What differs from system to system about files: one source file for each system.
namespace mastwise::platform {

// The folder that holds the running program.
std::string program_folder();

// Where this system wants a program's data of this user; it may not exist yet.
std::string user_data_folder();

// Writes the file and waits until the disk has it.
Result<Done> write_through(const std::string& path, const std::string& bytes);

}  // namespace mastwise::platform
