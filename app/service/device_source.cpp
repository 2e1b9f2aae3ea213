#include "app/service/device_source.hpp"

#include "platform/serial_name.hpp"

#include <filesystem>

namespace mastwise::service {
namespace {

// 4800 baud, the usual speed of a receiver, at ten bits a byte.
constexpr double kBytesPerSecond = 480.0;

}  // namespace

bool is_recording(const std::string& device) {
  std::error_code ignored;
  return std::filesystem::is_regular_file(device, ignored);
}

platform::OpenSource device_source(const std::string& device) {
  if (is_recording(device)) {
    return platform::file_source(device, kBytesPerSecond);
  }
  constexpr std::string_view kGpsd = "gpsd://";
  if (device == "gpsd") return platform::gpsd_source("localhost");
  if (device.starts_with(kGpsd)) return platform::gpsd_source(device.substr(kGpsd.size()));
  return platform::is_serial_name(device) ? platform::serial_source(device)
                                          : platform::tcp_source(device);
}

}  // namespace mastwise::service
