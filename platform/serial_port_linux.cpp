#include "platform/descriptor_linux.hpp"
#include "platform/serial_port.hpp"

#include <algorithm>
#include <iterator>

#include <fcntl.h>
#include <fmt/format.h>
#include <termios.h>

namespace mastwise::platform {
namespace {

struct Speed {
  int baud;
  speed_t code;
};

constexpr Speed kSpeeds[] = {{4800, B4800},   {9600, B9600},     {19200, B19200},  {38400, B38400},
                             {57600, B57600}, {115200, B115200}, {230400, B230400}};

class TerminalPort final : public SerialPort {
 public:
  TerminalPort(std::string path, Descriptor descriptor)
      : path_(std::move(path)), descriptor_(std::move(descriptor)) {}

  Result<Done> set_speed(int baud) override {
    const auto* speed = std::find_if(std::begin(kSpeeds), std::end(kSpeeds),
                                     [&](const Speed& known) { return known.baud == baud; });
    if (speed == std::end(kSpeeds)) return unusual_speed(baud, path_);
    termios settings{};
    const bool is_known = ::tcgetattr(descriptor_.number(), &settings) == 0;
    if (is_known && ::cfgetospeed(&settings) == speed->code) return Done{};
    if (!is_known || ::cfsetspeed(&settings, speed->code) != 0 ||
        ::tcsetattr(descriptor_.number(), TCSAFLUSH, &settings) != 0) {
      return system_error(fmt::format("cannot set the speed to {} baud", baud), path_);
    }
    return Done{};
  }

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    return read_when_ready(descriptor_, into, timeout, path_);
  }

 private:
  std::string path_;
  Descriptor descriptor_;
};

}  // namespace

Result<std::unique_ptr<SerialPort>> open_serial_port(const std::string& path) {
  Descriptor descriptor(::open(path.c_str(), O_RDWR | O_NOCTTY | O_NONBLOCK | O_CLOEXEC));
  if (!descriptor.is_open()) return system_error("cannot open the device", path);
  termios settings{};
  if (::tcgetattr(descriptor.number(), &settings) != 0) {
    return system_error("this is not a serial port", path);
  }
  ::cfmakeraw(&settings);
  settings.c_cflag |= CLOCAL | CREAD;
  settings.c_cflag &= ~static_cast<tcflag_t>(CRTSCTS | CSTOPB);
  if (::tcsetattr(descriptor.number(), TCSANOW, &settings) != 0) {
    return system_error("cannot set up the serial port", path);
  }
  return std::unique_ptr<SerialPort>(std::make_unique<TerminalPort>(path, std::move(descriptor)));
}

}  // namespace mastwise::platform
