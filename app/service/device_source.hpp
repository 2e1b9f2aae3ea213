#pragma once

#include "platform/device_link.hpp"

#include <string>

namespace mastwise::service {

// The source named by --device.
platform::OpenSource device_source(const std::string& device);

}  // namespace mastwise::service
