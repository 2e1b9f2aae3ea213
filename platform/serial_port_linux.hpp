#pragma once

#include "platform/byte_source.hpp"
#include "platform/descriptor_linux.hpp"

#include <memory>
#include <string>

namespace mastwise::platform {

// A serial port, raw: 8 bits, no parity, one stop bit, no flow control. One thread at a time.
class SerialPort : public ByteSource {
 public:
  static Result<std::unique_ptr<SerialPort>> open(const std::string& path);
  // One of the usual speeds, in baud. Unread bytes received at another speed are dropped.
  Result<Done> set_speed(int baud);
  Result<Chunk> read(std::span<char> into, milliseconds timeout) override;

 private:
  SerialPort(std::string path, Descriptor descriptor)
      : path_(std::move(path)), descriptor_(std::move(descriptor)) {}
  std::string path_;
  Descriptor descriptor_;
};

}  // namespace mastwise::platform
