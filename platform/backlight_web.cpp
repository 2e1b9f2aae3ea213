#include "platform/backlight.hpp"

namespace mastwise::platform {

// A page cannot set the brightness; none is found here.
Backlight Backlight::in(const std::string&) {
  return Backlight({});
}

void Backlight::at_most(double) {}

void Backlight::restore() {}

}  // namespace mastwise::platform
