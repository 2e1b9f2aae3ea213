#include "platform/device_link.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/loopback_server.hpp"
#include "tests/support/nmea_text.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::platform;
using Kind = LinkNews::Kind;
using test::NewsBox;
using namespace std::chrono_literals;

TEST_CASE("the source reads a TCP server and reconnects after it hangs up") {
  test::LoopbackServer server;
  NewsBox box;
  DeviceLink link(tcp_source(server.address()), box.deliver(), {5ms, 20ms, 5ms});
  const std::string first = test::sentence("HEHDT,4.0,T");
  const std::string second = test::sentence("HEHDT,5.0,T");
  server.accept().send(first);
  server.accept().send(second);
  REQUIRE(box.wait_for_bytes(first.size() + second.size()));
  REQUIRE(box.wait_for(Kind::lost, 2));
  link.stop();
  CHECK(box.bytes() == first + second);
  CHECK(box.count(Kind::found) == 2);
}

TEST_CASE("a missing server or an invalid address is an error") {
  std::string closed_port;
  {
    test::LoopbackServer server;
    closed_port = server.address();
  }
  NewsBox box;
  DeviceLink link(tcp_source(closed_port), box.deliver(), {5ms, 20ms, 5ms});
  REQUIRE(box.wait_for(Kind::lost));
  link.stop();
  CHECK(box.news().front().text.find(closed_port) == 0);
  CHECK(box.news().front().text.find("cannot connect") != std::string::npos);
  for (const char* wrong :
       {"", ":", "some.host:10110", "1.2.3.4:port", "[::1", "[]:1", "1.2.3:x"}) {
    INFO(wrong);
    CHECK_FALSE(tcp_source(wrong)());
  }
  CHECK(tcp_source("127.0.0.1")());
  CHECK(tcp_source("[::1]:10110")());
}
