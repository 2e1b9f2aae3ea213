#pragma once

#include "platform/byte_source.hpp"

#include <memory>
#include <string>

namespace mastwise::platform {

// A serial port, raw: 8 bits, no parity, one stop bit, no flow control. One thread at a time.
class SerialPort : public ByteSource {
 public:
  // One of the usual speeds, in baud. Unread bytes received at another speed are dropped.
  virtual Result<Done> set_speed(int baud) = 0;
};

// One source file for each system.
Result<std::unique_ptr<SerialPort>> open_serial_port(const std::string& path);

// The error of a speed that is not in usual_serial_speeds().
Error unusual_speed(int baud, const std::string& path);

}  // namespace mastwise::platform
