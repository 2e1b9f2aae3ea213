#include "platform/time_zones.hpp"

#include <cstdlib>

namespace mastwise::platform {

std::optional<TimeZone> tablet_zone() {
  const char* variable = std::getenv("TZ");
  if (variable == nullptr) return time_zone("/etc/localtime");
  const std::string name = *variable == ':' ? variable + 1 : variable;
  return time_zone(name.empty() ? "UTC" : name);
}

}  // namespace mastwise::platform
