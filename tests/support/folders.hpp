#pragma once

#include <string>

namespace mastwise::test {

// The project's folder and its build folder. Only folders.cpp recompiles if the project moves.
std::string source_folder();
std::string build_folder();

}  // namespace mastwise::test
