#include "core/nmea/log_replay.hpp"
#include "platform/byte_source.hpp"
#include "platform/device_link.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/pty.hpp"
#include "tests/support/reference.hpp"

#include <atomic>
#include <filesystem>
#include <fstream>
#include <string>
#include <thread>

#include <catch2/catch.hpp>
#include <unistd.h>

using namespace mastwise;
using namespace mastwise::platform;
using Kind = LinkNews::Kind;
using test::NewsBox;
using test::Pty;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

constexpr LinkTiming kSerialHurry{5ms, 20ms, 5ms};
const auto kFloor = nmea::sys_days(std::chrono::year(2000) / 1 / 1);

SerialSearch patient() {
  return {usual_serial_speeds(), 20s};
}

std::string fix_at(int second) {
  return test::sentence("GPGLL,4426.0,N,07140.0,W,1200" + std::to_string(10 + second) + ",A,A");
}

// A folder that the test deletes at its end.
struct Folder {
  fs::path path = fs::temp_directory_path() / ("mastwise_serial_" + std::to_string(::getpid()));
  Folder() { fs::create_directories(path); }
  ~Folder() { fs::remove_all(path); }
};

}  // namespace

// The reference is the same log read as a whole, which log_replay_test.cpp checks against values
// worked by hand.
TEST_CASE("every log comes through a real pseudo-terminal unchanged") {
  for (const char* log :
       {"bu353s4", "garmin48", "gp-320fw-2019-04-07-coldboot", "hemi", "humminbird-M37", "mtk-3301",
        "nmea-fuzzy-cases", "saab-r4", "tnt-revolution", "ublox-zed-f9p-nmea"}) {
    const auto path = test::reference("nmea/" + std::string(log) + ".log");
    if (!path) return;
    INFO(log);
    const std::string bytes = test::read_file(*path) + "\n";
    Pty pty;
    NewsBox box;
    DeviceLink link(serial_source(pty.path(), patient()), box.deliver(), kSerialHurry);
    REQUIRE(pty.send(bytes));
    REQUIRE(box.wait_for_bytes(bytes.size()));
    link.stop();
    CHECK(box.bytes() == bytes);
    const auto through_pty = nmea::replay_log(box.bytes(), kFloor);
    const auto whole = nmea::replay_log(bytes, kFloor);
    CHECK(through_pty.last_good == whole.last_good);
    CHECK(through_pty.receiver == whole.receiver);
    CHECK(box.count(Kind::found) == 1);
    CHECK(box.count(Kind::lost) == 0);
  }
}

TEST_CASE("a lost device is reported, its fix is stale within three seconds, and it reconnects") {
  Folder folder;
  const fs::path port = folder.path / "receiver";
  nmea::Receiver receiver(kFloor);
  NewsBox box;
  auto pty = std::make_unique<Pty>();
  fs::create_symlink(pty->path(), port);
  DeviceLink link(serial_source(port.string(), patient()), box.deliver(), kSerialHurry);
  REQUIRE(pty->send(fix_at(0)));
  REQUIRE(box.wait_for_bytes(fix_at(0).size()));
  Monotonic heard{};
  for (const LinkNews& news : box.news()) {
    if (news.kind != Kind::bytes) continue;
    receiver.feed(news.text, news.when);
    heard = news.when;
  }
  CHECK(receiver.fix(heard).good());

  pty.reset();  // pulled out
  REQUIRE(box.wait_for(Kind::lost));
  CHECK(receiver.fix(heard + 2999ms).good());
  CHECK_FALSE(receiver.fix(heard + 3000ms).good());
  CHECK(receiver.fix(heard + 3000ms).why_not_good == nmea::FixTrouble::silent);

  pty = std::make_unique<Pty>();  // plugged in again, under another number
  fs::remove(port);
  fs::create_symlink(pty->path(), port);
  REQUIRE(pty->send(fix_at(1)));
  REQUIRE(box.wait_for(Kind::found, 2));
  REQUIRE(box.wait_for_bytes(fix_at(0).size() + fix_at(1).size()));
  link.stop();
  CHECK(box.bytes() == fix_at(0) + fix_at(1));
  receiver.feed(fix_at(1), box.news().back().when);
  CHECK(receiver.fix(box.news().back().when).good());
}

TEST_CASE("the source finds the speed of a device, keeps it, and tries it first next time") {
  Pty pty;
  NewsBox box;
  const SerialSearch search{{4800, 9600, 38400, 115200}, 400ms};
  const OpenSource open = serial_source(pty.path(), search);
  std::atomic<bool> enough{false};
  std::atomic<int> heard_at_wrong_speed{0};
  // A device of 38400 baud: at every other speed there is noise on the line.
  std::thread device([&] {
    while (!enough) {
      const bool right = pty.baud() == 38400;
      if (!right) ++heard_at_wrong_speed;
      if (!pty.send(right ? fix_at(0) : std::string("\x80\xf0$\x98\x9e*\x86\r\n"))) return;
      std::this_thread::sleep_for(10ms);
    }
  });
  {
    DeviceLink link(open, box.deliver(), kSerialHurry);
    CHECK(box.wait_for(Kind::found));
    CHECK(pty.baud() == 38400);
    CHECK(heard_at_wrong_speed > 0);
    CHECK(box.wait_for(Kind::bytes, 5));
    CHECK(pty.baud() == 38400);
  }
  // Opened again, it does not go through the wrong ones first.
  const int wrong_before = heard_at_wrong_speed;
  {
    NewsBox again;
    DeviceLink link(open, again.deliver(), kSerialHurry);
    CHECK(again.wait_for(Kind::found));
  }
  CHECK(heard_at_wrong_speed == wrong_before);
  enough = true;
  device.join();
}

TEST_CASE("the source leaves a port without NMEA and tries the next one") {
  Pty mute;
  Pty receiver;
  const std::vector<SerialDevice> devices = {{mute.path(), "mute"}, {receiver.path(), "receiver"}};
  NewsBox box;
  DeviceLink link(any_serial_source({{4800, 9600}, 100ms}, [&] { return devices; }), box.deliver(),
                  kSerialHurry);
  REQUIRE(box.wait_for(Kind::lost));
  CHECK(box.news().front().text.find(mute.path()) != std::string::npos);
  CHECK(box.news().front().text.find("no NMEA 0183") != std::string::npos);
  // Bytes during a speed change are dropped: a receiver sends every second.
  while (box.count(Kind::found) == 0) {
    REQUIRE(receiver.send(fix_at(0)));
    std::this_thread::sleep_for(10ms);
  }
  REQUIRE(box.wait_for_bytes(fix_at(0).size()));
  CHECK(box.bytes().starts_with(fix_at(0)));
}

TEST_CASE("a path that is not a serial port is an error") {
  const auto missing = serial_source("/dev/no-such-port")();
  REQUIRE_FALSE(missing);
  CHECK(missing.error().where == "/dev/no-such-port");
  const auto no_port = serial_source("/dev/null")();
  REQUIRE_FALSE(no_port);
  CHECK(no_port.error().what.find("not a serial port") != std::string::npos);
  const auto nothing = any_serial_source({}, [] { return std::vector<SerialDevice>(); })();
  REQUIRE_FALSE(nothing);
  Pty pty;
  auto odd_speed = serial_source(pty.path(), {{4801}, 1s})();
  REQUIRE(odd_speed);
  char bytes[8];
  CHECK_FALSE((*odd_speed)->read(bytes, 1ms));
}

TEST_CASE("the list has serial devices by their stable name, without phantoms") {
  Folder folder;
  const auto touch = [&](const std::string& name, const std::string& text = "") {
    fs::create_directories((folder.path / name).parent_path());
    std::ofstream(folder.path / name) << text;
  };
  CHECK(list_serial_devices(folder.path).empty());
  touch("dev/ttyUSB0");
  touch("dev/ttyUSB1");
  touch("dev/ttyACM0");
  touch("dev/ttyS0");
  touch("dev/ttyS1");
  touch("dev/tty1");
  touch("dev/null");
  touch("sys/class/tty/ttyS0/type", "4\n");
  touch("sys/class/tty/ttyS1/type", "0\n");
  fs::create_directories(folder.path / "dev/serial/by-id");
  const fs::path named = folder.path / "dev/serial/by-id/usb-Receiver-if00";
  fs::create_symlink("../../ttyUSB1", named);
  fs::create_symlink("../../ttyUSB9", folder.path / "dev/serial/by-id/usb-Gone-if00");
  const std::vector<SerialDevice> expected = {
      {named.string(), "usb-Receiver-if00"},
      {(folder.path / "dev/ttyACM0").string(), "ttyACM0"},
      {(folder.path / "dev/ttyS0").string(), "ttyS0"},
      {(folder.path / "dev/ttyUSB0").string(), "ttyUSB0"},
  };
  CHECK(list_serial_devices(folder.path) == expected);
}
