#include "platform/system_web.hpp"
#include "platform/time_zones.hpp"

#include <array>

namespace mastwise::platform {

std::optional<TimeZone> tablet_zone() {
  std::array<char, 128> name{};
  web_zone_name(name.data(), static_cast<int>(name.size()));
  return time_zone(name.data());
}

}  // namespace mastwise::platform
