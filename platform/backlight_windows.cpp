#include "platform/backlight.hpp"

namespace mastwise::platform {

// Windows sets the brightness by the user's own settings; none is found here.
Backlight Backlight::in(const std::string&) {
  return Backlight({});
}

void Backlight::at_most(double) {}

void Backlight::restore() {}

}  // namespace mastwise::platform
