#include "platform/files.hpp"
#include "platform/start.hpp"

#include <cstdlib>

namespace mastwise::platform {

// The libraries look for their data in these folders.
char** start_program(int&, char* given[]) {
  ::setenv("TZDIR", (assets_folder() + "/zoneinfo").c_str(), 0);
  ::setenv("PROJ_DATA", (assets_folder() + "/proj").c_str(), 0);
  return given;
}

}  // namespace mastwise::platform
