#include "platform/byte_source.hpp"
#include "platform/serial_name.hpp"
#include "platform/system_windows.hpp"

#include <algorithm>
#include <cstdint>
#include <memory>

#include <windows.h>

namespace mastwise::platform {
namespace {

struct CloseKey {
  void operator()(HKEY key) const { ::RegCloseKey(key); }
};
using Key = std::unique_ptr<std::remove_pointer_t<HKEY>, CloseKey>;

// "\\.\COM10", "com10:" and "COM10" are one port.
std::string port_name(std::string path) {
  constexpr std::string_view kDevices = "\\\\.\\";
  if (path.starts_with(kDevices)) path.erase(0, kDevices.size());
  if (path.ends_with(':')) path.pop_back();
  std::transform(path.begin(), path.end(), path.begin(),
                 [](char letter) { return letter >= 'a' && letter <= 'z' ? letter - 32 : letter; });
  return path;
}

}  // namespace

bool is_serial_name(const std::string& name) {
  const std::string port = port_name(name);
  return port.size() > 3 && port.starts_with("COM") &&
         port.find_first_not_of("0123456789", 3) == std::string::npos;
}

bool same_device(const std::string& a, const std::string& b) {
  return port_name(a) == port_name(b);
}

// The ports that are there now: the system keeps them under this key, and removes an unplugged one.
// `root` means nothing here.
std::vector<SerialDevice> list_serial_devices(const std::filesystem::path&) {
  std::vector<SerialDevice> devices;
  HKEY opened = nullptr;
  if (::RegOpenKeyExW(HKEY_LOCAL_MACHINE, L"HARDWARE\\DEVICEMAP\\SERIALCOMM", 0, KEY_READ,
                      &opened) != ERROR_SUCCESS) {
    return devices;
  }
  const Key key(opened);
  for (DWORD index = 0;; ++index) {
    wchar_t name[256] = {};
    wchar_t port[64] = {};
    auto name_size = static_cast<DWORD>(std::size(name));
    DWORD port_bytes = sizeof(port) - sizeof(wchar_t), type = 0;
    const LSTATUS found = ::RegEnumValueW(key.get(), index, name, &name_size, nullptr, &type,
                                          reinterpret_cast<BYTE*>(port), &port_bytes);
    if (found != ERROR_SUCCESS) break;
    if (type != REG_SZ) continue;
    const std::string text = narrow(port);
    devices.push_back({.path = text, .name = text});
  }
  std::sort(devices.begin(), devices.end(), [](const SerialDevice& a, const SerialDevice& b) {
    return a.path.size() != b.path.size() ? a.path.size() < b.path.size() : a.path < b.path;
  });
  return devices;
}

}  // namespace mastwise::platform
