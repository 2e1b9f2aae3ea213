#pragma once

#include <string>

// What differs from system to system about files: one source file for each system.
namespace mastwise::platform {

// The folder that holds the running program.
std::string program_folder();

// Where this system wants a program's data of this user; it may not exist yet.
std::string user_data_folder();

}  // namespace mastwise::platform
