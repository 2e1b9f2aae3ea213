#pragma once

#include "platform/device_link.hpp"

#include <string>
#include <vector>

namespace mastwise::service {

// The source that a meter's name stands for: "dvb:ADAPTER" or "dvb:ADAPTER.FRONTEND", a TV tuner of
// this machine; "tcp://HOST:PORT"; else the path of a serial device. A name of another form is an
// error when the source is opened.
platform::OpenSource meter_source(const std::string& name);

struct FoundMeter {
  std::string name;   // for meter_source
  std::string label;  // of the device, for display; empty for a tuner
  bool operator==(const FoundMeter&) const = default;
};
// Tuners and serial devices that are connected, tuners first. Any of the serial ones may be
// something else than a meter.
std::vector<FoundMeter> list_meters();

}  // namespace mastwise::service
