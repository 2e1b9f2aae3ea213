#include "platform/console.hpp"

namespace mastwise::platform {

// As it is.
void use_utf8_console() {}

}  // namespace mastwise::platform
