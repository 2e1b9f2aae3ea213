#include "platform/connection.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <system_error>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

// The interfaces with a default route of IPv4 (column 2 is zero) or IPv6 (the first two are).
std::set<std::string> interfaces_out(const fs::path& root) {
  std::set<std::string> names;
  std::ifstream v4(root / "proc/net/route");
  for (std::string line; std::getline(v4, line);) {
    std::istringstream cells(line);
    std::string name, destination;
    if (cells >> name >> destination && destination == "00000000") names.insert(name);
  }
  std::ifstream v6(root / "proc/net/ipv6_route");
  for (std::string line; std::getline(v6, line);) {
    std::istringstream cells(line);
    std::string cell, name, destination, length;
    if (!(cells >> destination >> length)) continue;
    while (cells >> cell) name = cell;
    const bool anywhere = destination.find_first_not_of('0') == std::string::npos;
    if (anywhere && length == "00" && name != "lo") names.insert(name);
  }
  return names;
}

bool is_mobile(const fs::path& device) {
  std::ifstream about(device / "uevent");
  for (std::string line; std::getline(about, line);) {
    if (line == "DEVTYPE=wwan") return true;
  }
  // Drivers of modems, and of phones that share their line over a cable.
  constexpr std::array kDrivers{"cdc_mbim",   "qmi_wwan", "huawei_cdc_ncm", "sierra_net",
                                "rndis_host", "ipheth",   "cdc_ether"};
  std::error_code unknown;
  const std::string driver = fs::read_symlink(device / "device/driver", unknown).filename();
  return std::find(kDrivers.begin(), kDrivers.end(), driver) != kDrivers.end();
}

}  // namespace

LineKind line_kind(const fs::path& root) {
  const auto names = interfaces_out(root);
  if (names.empty()) return LineKind::none;
  const bool mobile = std::any_of(names.begin(), names.end(), [&](const std::string& name) {
    return is_mobile(root / "sys/class/net" / name);
  });
  return mobile ? LineKind::mobile : LineKind::other;
}

}  // namespace mastwise::platform
