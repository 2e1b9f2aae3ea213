#include "platform/device_link.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/loopback_server.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/pty.hpp"

#include <thread>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::platform;
using Kind = LinkNews::Kind;
using test::LoopbackServer;
using test::NewsBox;
using namespace std::chrono_literals;

namespace {

constexpr LinkTiming kGpsdHurry{5ms, 20ms, 5ms};
constexpr GpsdPatience kShort{300ms, 300ms};
const std::string kHello = "{\"class\":\"VERSION\",\"release\":\"3.22\"}\r\n";
const std::string kHeading = test::sentence("HEHDT,4.0,T");

std::string devices_line(const std::vector<std::string>& paths) {
  std::string list;
  for (const std::string& path : paths) {
    list +=
        std::string(list.empty() ? "" : ",") + "{\"class\":\"DEVICE\",\"path\":\"" + path + "\"}";
  }
  return "{\"class\":\"DEVICES\",\"devices\":[" + list + "]}\r\n";
}

// Answers a client up to its watch request, which it returns.
std::string greet(LoopbackServer::Client& client, const std::vector<std::string>& paths) {
  client.send(kHello);
  CHECK(client.read_line() == "?DEVICES;");
  client.send(devices_line(paths));
  return client.read_line();
}

bool has_text(const std::vector<LinkNews>& news, Kind kind, const std::string& part) {
  return std::any_of(news.begin(), news.end(), [&](const LinkNews& one) {
    return one.kind == kind && one.text.find(part) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("gpsd's sentences arrive as they are, without its own lines") {
  LoopbackServer server;
  NewsBox box;
  DeviceLink link(gpsd_source(server.address()), box.deliver(), kGpsdHurry);
  auto client = server.accept();
  const std::string watch = greet(client, {"/dev/ttyUSB0"});
  CHECK(watch.find("?WATCH=") == 0);
  CHECK(watch.find("\"device\":\"/dev/ttyUSB0\"") != std::string::npos);
  client.send("{\"class\":\"WATCH\",\"enable\":true}\r\n" + kHeading.substr(0, 5));
  client.send(kHeading.substr(5) + "{\"class\":\"TPV\",\"mode\":3}\r\n" + kHeading);
  REQUIRE(box.wait_for_bytes(2 * kHeading.size()));
  CHECK(box.bytes() == kHeading + kHeading);
  CHECK(has_text(box.news(), Kind::found, "gpsd, /dev/ttyUSB0"));
}

TEST_CASE("an unplugged receiver and a restarted gpsd are told, and then read again") {
  LoopbackServer server;
  NewsBox box;
  DeviceLink link(gpsd_source(server.address()), box.deliver(), kGpsdHurry);
  {
    auto client = server.accept();
    greet(client, {"/dev/ttyUSB0"});
    client.send(kHeading + "{\"class\":\"DEVICE\",\"path\":\"/dev/ttyUSB7\",\"activated\":0}\r\n" +
                kHeading + "{\"class\":\"DEVICE\",\"path\":\"/dev/ttyUSB0\",\"activated\":0}\r\n");
    REQUIRE(box.wait_for(Kind::lost));
    CHECK(box.bytes() == kHeading + kHeading);
    CHECK(has_text(box.news(), Kind::lost, "unplugged"));
  }
  {
    auto client = server.accept();
    client.send(kHello + devices_line({}));
    REQUIRE(box.wait_for(Kind::lost, 2));
    CHECK(has_text(box.news(), Kind::lost, "gpsd has no receiver"));
  }
  {
    auto client = server.accept();
    greet(client, {"/dev/ttyUSB0"});
    client.send(kHeading + "{\"class\":\"SK");  // gpsd is stopped in the middle of a line
    REQUIRE(box.wait_for(Kind::found, 2));
  }
  REQUIRE(box.wait_for(Kind::lost, 3));
  auto client = server.accept();
  greet(client, {"/dev/ttyUSB0"});
  client.send(kHeading);
  REQUIRE(box.wait_for(Kind::found, 3));
  REQUIRE(box.wait_for_bytes(4 * kHeading.size()));
}

TEST_CASE("of two receivers of gpsd the one that speaks is kept, a silent one is left") {
  LoopbackServer server;
  NewsBox box;
  DeviceLink link(gpsd_source(server.address(), nullptr, kShort), box.deliver(), kGpsdHurry);
  const std::vector<std::string> both = {"/dev/silent", "/dev/good"};
  {
    auto client = server.accept();
    CHECK(greet(client, both).find("/dev/silent") != std::string::npos);
    REQUIRE(box.wait_for(Kind::lost));
    CHECK(has_text(box.news(), Kind::lost, "sends nothing"));
  }
  for (int round = 0; round < 2; ++round) {
    auto client = server.accept();
    CHECK(greet(client, both).find("/dev/good") != std::string::npos);
    client.send(kHeading);
    REQUIRE(box.wait_for_bytes((round + 1u) * kHeading.size()));
  }
}

TEST_CASE("a server that is not gpsd, is silent or refuses is an error that says so") {
  struct Case {
    std::string sends, says;
  };
  const std::vector<Case> cases = {
      {"", "this is not gpsd"},
      {kHeading, "this is not gpsd"},
      {"HTTP/1.1 400 Bad Request\r\n", "this is not gpsd"},
      {devices_line({"/dev/ttyUSB0"}), "this is not gpsd"},
      {std::string(100000, 'x'), "this is not gpsd"},
      {kHello + "{\"class\":\"ERROR\",\"message\":\"no\"}\r\n", "gpsd refuses: no"},
      {kHello, "sends nothing"},
  };
  for (const Case& one : cases) {
    LoopbackServer server;
    NewsBox box;
    DeviceLink link(gpsd_source(server.address(), nullptr, kShort), box.deliver(), kGpsdHurry);
    auto client = server.accept();
    client.send(one.sends);
    INFO(one.says << " after " << one.sends.substr(0, 40));
    REQUIRE(box.wait_for(Kind::lost));
    CHECK(has_text(box.news(), Kind::lost, one.says));
    CHECK(box.bytes().empty());
    link.stop();
  }
}

TEST_CASE("the receiver of gpsd comes first, then a serial device that gpsd does not hold") {
  LoopbackServer server;
  test::Pty held, free;
  const std::vector<SerialDevice> ports = {{held.path(), "held"}, {free.path(), "free"}};
  NewsBox box;
  DeviceLink link(
      any_receiver_source(server.address(), kShort, [&] { return ports; }, {{4800}, 200ms}),
      box.deliver(), kGpsdHurry);
  {
    auto client = server.accept();
    greet(client, {held.path()});
    client.send(kHeading);
    REQUIRE(box.wait_for(Kind::found));
    CHECK(has_text(box.news(), Kind::found, "gpsd, " + held.path()));
  }
  // gpsd is back, but its receiver is silent: the free port is next, and the held one is left
  // alone.
  const std::string other = test::sentence("HEHDT,5.0,T");
  REQUIRE(held.send(test::sentence("HEHDT,6.0,T")));
  auto client = server.accept();
  greet(client, {held.path()});
  while (box.count(Kind::found) < 2) {
    REQUIRE(free.send(other));
    std::this_thread::sleep_for(10ms);
  }
  REQUIRE(box.wait_for_bytes(2 * kHeading.size()));
  CHECK(box.bytes().starts_with(kHeading + other));
  CHECK(box.bytes().find("6.0") == std::string::npos);
}

TEST_CASE("without gpsd and serial devices the missing device is the error") {
  std::string closed;
  {
    LoopbackServer server;
    closed = server.address();
  }
  NewsBox box;
  DeviceLink link(any_receiver_source(closed, kShort, [] { return std::vector<SerialDevice>(); }),
                  box.deliver(), kGpsdHurry);
  REQUIRE(box.wait_for(Kind::lost));
  CHECK(has_text(box.news(), Kind::lost, "no serial device is connected"));
}
