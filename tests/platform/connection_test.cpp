#include "platform/connection.hpp"

#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

using namespace mastwise;
using platform::LineKind;
namespace fs = std::filesystem;

namespace {

class System {
 public:
  void file(const std::string& name, const std::string& text) const {
    fs::create_directories((root_ / name).parent_path());
    std::ofstream(root_ / name) << text;
  }
  void driver(const std::string& device, const std::string& name) const {
    const fs::path link = root_ / ("sys/class/net/" + device) / "device/driver";
    fs::create_directories(link.parent_path());
    fs::create_directory_symlink("../../../../bus/usb/drivers/" + name, link);
  }
  LineKind kind() const { return platform::line_kind(root_.path()); }

 private:
  test::TemporaryFolder root_;
};

// The columns of /proc/net/route, proc(5).
const std::string kRouteHead = "Iface\tDestination\tGateway\tFlags\tRefCnt\tUse\tMetric\tMask\n";

}  // namespace

TEST_CASE("a line is none, mobile or another by its default route") {
  const System system;
  CHECK(system.kind() == LineKind::none);
  system.file("proc/net/route", kRouteHead + "wlan0\t0000A8C0\t00000000\t0001\t0\t0\t600\t0\n");
  CHECK(system.kind() == LineKind::none);
  system.file("proc/net/route", kRouteHead + "wlan0\t00000000\t0100A8C0\t0003\t0\t0\t600\t0\n");
  CHECK(system.kind() == LineKind::other);
  system.file("sys/class/net/wwan0/uevent", "DEVTYPE=wwan\nINTERFACE=wwan0\n");
  CHECK(system.kind() == LineKind::other);
  system.file("proc/net/route", kRouteHead + "wwan0\t00000000\t0100A8C0\t0003\t0\t0\t700\t0\n");
  CHECK(system.kind() == LineKind::mobile);
}

TEST_CASE("a phone on a cable is a mobile line, also by IPv6 alone") {
  const System system;
  system.driver("usb0", "rndis_host");
  // The columns of /proc/net/ipv6_route; the loopback's unreachable route does not count.
  const std::string zeros(32, '0');
  system.file("proc/net/ipv6_route",
              zeros + " 00 " + zeros + " 00 " + zeros + " ffffffff 1 0 00200200 lo\n");
  CHECK(system.kind() == LineKind::none);
  system.file("proc/net/ipv6_route",
              zeros + " 00 " + zeros +
                  " 00 fe800000000000000000000000000001 00000400 1 0 00450003 "
                  "usb0\n");
  CHECK(system.kind() == LineKind::mobile);
}
