#include "platform/screen.hpp"
#include "platform/system_web.hpp"

namespace mastwise::platform {

void keep_screen_awake(bool awake) {
  web_keep_awake(awake ? 1 : 0);
}

void offer(SideButtons buttons) {
  web_offer(static_cast<int>(buttons));
}

void darken_surroundings(bool dark) {
  web_darken(dark ? 1 : 0);
}

}  // namespace mastwise::platform
