#include "platform/serial_name.hpp"
#include "platform/serial_port.hpp"
#include "platform/system_web.hpp"

#include <algorithm>
#include <charconv>

namespace mastwise::platform {
namespace {

Error port_gone(const std::string& path) {
  return {.what = "the serial port is gone", .where = path, .remedy = "plug the device in again"};
}

// The browser opens and reads it while frames are drawn; nothing here waits.
class WebSerialPort final : public SerialPort {
 public:
  WebSerialPort(int number, std::string path) : number_(number), path_(std::move(path)) {}
  ~WebSerialPort() override { web_serial_speed(number_, 0); }
  WebSerialPort(const WebSerialPort&) = delete;
  WebSerialPort& operator=(const WebSerialPort&) = delete;

  Result<Done> set_speed(int baud) override {
    const auto speeds = usual_serial_speeds();
    if (std::find(speeds.begin(), speeds.end(), baud) == speeds.end()) {
      return unusual_speed(baud, path_);
    }
    web_serial_speed(number_, baud);
    return Done{};
  }
  Result<Chunk> read(std::span<char> into, milliseconds) override {
    const int size = web_serial_take(number_, into.data(), static_cast<int>(into.size()));
    if (size < 0) return port_gone(path_);
    return Chunk{static_cast<std::size_t>(size)};
  }

 private:
  int number_;
  std::string path_;
};

}  // namespace

Result<std::unique_ptr<SerialPort>> open_serial_port(const std::string& path) {
  int number = 0;
  if (is_serial_name(path)) {
    const char* const end = path.data() + path.size();
    std::from_chars(path.data() + kWebSerialName.size(), end, number);
  }
  if (number < 1 || number > web_serial_count()) return port_gone(path);
  return std::unique_ptr<SerialPort>(std::make_unique<WebSerialPort>(number, path));
}

}  // namespace mastwise::platform
