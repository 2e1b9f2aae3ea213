#pragma once

#include "platform/device_link.hpp"

#include <string>

namespace mastwise::service {

// Whether --device names a log file to play.
bool is_recording(const std::string& device);

// The source named by --device: a log file, played at 4800 baud; "gpsd" or "gpsd://HOST:PORT"; a
// serial device by its path; else HOST:PORT.
platform::OpenSource device_source(const std::string& device);

}  // namespace mastwise::service
