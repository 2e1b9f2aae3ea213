#include "platform/byte_source.hpp"
#include "platform/serial_name.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <string_view>
#include <system_error>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

// Entries of a folder, sorted by name; empty if the folder is missing.
std::vector<fs::path> entries(const fs::path& folder) {
  std::vector<fs::path> paths;
  std::error_code failed;
  for (fs::directory_iterator entry(folder, failed), end; !failed && entry != end;
       entry.increment(failed)) {
    paths.push_back(entry->path());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

// The system creates ttyS0 to ttyS31 even without ports: a type of 0 means no port.
bool is_real_port(const fs::path& root, const std::string& name) {
  int type = 0;
  std::ifstream(root / "sys/class/tty" / name / "type") >> type;
  return type != 0;
}

bool is_serial_device(const fs::path& root, const std::string& name) {
  constexpr std::array<std::string_view, 4> kPrefixes = {"ttyUSB", "ttyACM", "ttyAMA", "rfcomm"};
  if (name.starts_with("ttyS")) return is_real_port(root, name);
  return std::any_of(kPrefixes.begin(), kPrefixes.end(),
                     [&](std::string_view prefix) { return name.starts_with(prefix); });
}

}  // namespace

bool is_serial_name(const std::string& name) {
  return name.find('/') != std::string::npos;
}

bool same_device(const std::string& a, const std::string& b) {
  const auto real = [](const std::string& path) {
    std::error_code failed;
    const fs::path found = fs::canonical(path, failed);
    return failed ? fs::path(path) : found;
  };
  return real(a) == real(b);
}

std::vector<SerialDevice> list_serial_devices(const fs::path& root) {
  std::vector<SerialDevice> devices;
  std::vector<fs::path> named;
  for (const fs::path& link : entries(root / "dev/serial/by-id")) {
    std::error_code failed;
    const fs::path device = fs::canonical(link, failed);
    if (failed) continue;
    named.push_back(device);
    devices.push_back({link.string(), link.filename().string()});
  }
  for (const fs::path& device : entries(root / "dev")) {
    const std::string name = device.filename().string();
    std::error_code failed;
    const bool is_named =
        std::find(named.begin(), named.end(), fs::canonical(device, failed)) != named.end();
    if (!is_named && is_serial_device(root, name)) devices.push_back({device.string(), name});
  }
  return devices;
}

}  // namespace mastwise::platform
