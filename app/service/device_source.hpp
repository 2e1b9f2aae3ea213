#pragma once

#include "platform/device_link.hpp"

#include <string>

namespace mastwise::service {

// Whether --device names a log file to play.
bool is_recording(const std::string& device);

// The source named by --device.
platform::OpenSource device_source(const std::string& device);

}  // namespace mastwise::service
