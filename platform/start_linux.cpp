#include "platform/start.hpp"

namespace mastwise::platform {

// The system has it all.
char** start_program(int&, char* given[]) {
  return given;
}

}  // namespace mastwise::platform
