#pragma once

#include <string>

namespace mastwise::test {

// The project's own folder, and the one that it is built in. Only folders.cpp is compiled anew when
// the project lies elsewhere.
std::string source_folder();
std::string build_folder();

}  // namespace mastwise::test
