#pragma once

#include <string>

#include <arpa/inet.h>
#include <catch2/catch.hpp>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

namespace mastwise::test {

// A server on the loopback, at a port that the system chooses.
class LoopbackServer {
 public:
  LoopbackServer() : listener_(::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)) {
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
  ~LoopbackServer() { ::close(listener_); }
  LoopbackServer(const LoopbackServer&) = delete;
  LoopbackServer& operator=(const LoopbackServer&) = delete;

  int port() const { return port_; }
  // For those who accept by themselves.
  int listener() const { return listener_; }
  std::string address() const { return "localhost:" + std::to_string(port_); }

  // A client that has connected. It is hung up on at the end.
  class Client {
   public:
    explicit Client(int number) : number_(number) {}
    ~Client() { ::close(number_); }
    Client(const Client&) = delete;
    Client& operator=(const Client&) = delete;
    void send(const std::string& text) {
      CHECK(::send(number_, text.data(), text.size(), MSG_NOSIGNAL) ==
            static_cast<ssize_t>(text.size()));
    }
    // The next line that the client sends, without its end; empty once it has hung up.
    std::string read_line() {
      std::string line;
      char byte = 0;
      while (::recv(number_, &byte, 1, 0) == 1 && byte != '\n') line.push_back(byte);
      return line;
    }

   private:
    int number_;
  };

  // Waits for a client.
  Client accept() {
    const int number = ::accept(listener_, nullptr, nullptr);
    REQUIRE(number >= 0);
    return Client(number);
  }

 private:
  int listener_;
  int port_;
};

}  // namespace mastwise::test
