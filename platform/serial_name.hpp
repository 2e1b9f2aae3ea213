#pragma once

#include <string>

namespace mastwise::platform {

// Whether a source's name is that of a serial device, and not of a network address: "/dev/ttyUSB0",
// or "COM10" and "\\.\COM10" on Windows. One source file for each system.
bool is_serial_name(const std::string& name);

}  // namespace mastwise::platform
