#include "platform/byte_source.hpp"
#include "platform/serial_name.hpp"
#include "platform/system_web.hpp"

#include <fmt/format.h>

namespace mastwise::platform {

bool is_serial_name(const std::string& name) {
  return name.starts_with(kWebSerialName);
}

bool same_device(const std::string& a, const std::string& b) {
  return a == b;
}

// Those that the person has allowed this page.
std::vector<SerialDevice> list_serial_devices(const std::filesystem::path&) {
  std::vector<SerialDevice> devices;
  for (int number = 1; number <= web_serial_count(); ++number) {
    if (web_serial_is_there(number) == 0) continue;
    const std::string name = fmt::format("{}{}", kWebSerialName, number);
    devices.push_back({.path = name, .name = name});
  }
  return devices;
}

}  // namespace mastwise::platform
