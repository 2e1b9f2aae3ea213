#include "platform/device_link.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/nmea_text.hpp"

#include <string>

#include <arpa/inet.h>
#include <catch2/catch.hpp>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

using namespace mastwise;
using namespace mastwise::platform;
using Kind = LinkNews::Kind;
using test::NewsBox;
using namespace std::chrono_literals;

namespace {

// A server on the loopback, at a port that the system chooses.
class Server {
 public:
  Server() : listener_(::socket(AF_INET, SOCK_STREAM, 0)) {
    REQUIRE(listener_ >= 0);
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_addr.s_addr = ::htonl(INADDR_LOOPBACK);
    socklen_t size = sizeof(address);
    auto* const any = reinterpret_cast<sockaddr*>(&address);
    REQUIRE(::bind(listener_, any, size) == 0);
    REQUIRE(::listen(listener_, 4) == 0);
    REQUIRE(::getsockname(listener_, any, &size) == 0);
    port_ = ::ntohs(address.sin_port);
  }
  ~Server() { ::close(listener_); }
  std::string address() const { return "localhost:" + std::to_string(port_); }
  // Waits for a client, sends, and closes the connection.
  void serve(const std::string& text) {
    const int client = ::accept(listener_, nullptr, nullptr);
    REQUIRE(client >= 0);
    CHECK(::send(client, text.data(), text.size(), 0) == static_cast<ssize_t>(text.size()));
    ::close(client);
  }

 private:
  int listener_;
  int port_;
};

}  // namespace

TEST_CASE("the source reads a TCP server and reconnects after it hangs up") {
  Server server;
  NewsBox box;
  DeviceLink link(tcp_source(server.address()), box.deliver(), {5ms, 20ms, 5ms});
  const std::string first = test::sentence("HEHDT,4.0,T");
  const std::string second = test::sentence("HEHDT,5.0,T");
  server.serve(first);
  server.serve(second);
  REQUIRE(box.wait_for_bytes(first.size() + second.size()));
  REQUIRE(box.wait_for(Kind::lost, 2));
  link.stop();
  CHECK(box.bytes() == first + second);
  CHECK(box.count(Kind::found) == 2);
}

TEST_CASE("a missing server or an invalid address is an error") {
  std::string closed_port;
  {
    Server server;
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
