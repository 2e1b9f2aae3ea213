#include "platform/tablet_sensors.hpp"

namespace mastwise::platform {

OpenSource tablet_sensor_source(TabletSystem) {
  return []() -> Result<std::unique_ptr<ByteSource>> {
    return Error{.what = "the tablet's own sensors are not read on Windows",
                 .remedy = "use a compass in the hand"};
  };
}

}  // namespace mastwise::platform
