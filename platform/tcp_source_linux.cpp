#include "platform/clock.hpp"
#include "platform/descriptor_linux.hpp"
#include "platform/tcp_connection.hpp"

#include <cerrno>
#include <string>

#include <fmt/format.h>
#include <netdb.h>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <poll.h>
#include <sys/socket.h>

namespace mastwise::platform {
namespace {

// A device that loses power does not close the connection: probe after 5 s of silence, give up
// after 6 s more.
void notice_dead_peer(const Descriptor& socket) {
  const auto set = [&](int level, int option, int value) {
    ::setsockopt(socket.number(), level, option, &value, sizeof(value));
  };
  set(SOL_SOCKET, SO_KEEPALIVE, 1);
  set(IPPROTO_TCP, TCP_KEEPIDLE, 5);
  set(IPPROTO_TCP, TCP_KEEPINTVL, 2);
  set(IPPROTO_TCP, TCP_KEEPCNT, 3);
}

// Connects during its first reads, so that opening does not wait.
class TcpSource : public TcpConnection {
 public:
  TcpSource(Descriptor socket, std::string address)
      : socket_(std::move(socket)),
        address_(std::move(address)),
        connect_until_(monotonic_now() + kConnectWithin) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    if (connected_) return read_when_ready(socket_, into, timeout, address_);
    pollfd waiting{socket_.number(), POLLOUT, 0};
    if (::poll(&waiting, 1, static_cast<int>(timeout.count())) > 0) return finish_connecting();
    if (monotonic_now() < connect_until_) return Chunk{};
    return no_answer(address_);
  }

  bool is_connected() const override { return connected_; }

  Result<Done> send(std::string_view text) override {
    const ssize_t sent = ::send(socket_.number(), text.data(), text.size(), MSG_NOSIGNAL);
    if (sent < 0) return system_error("cannot send", address_);
    if (static_cast<std::size_t>(sent) == text.size()) return Done{};
    return not_read(address_);
  }

 private:
  Result<Chunk> finish_connecting() {
    int failure = 0;
    socklen_t size = sizeof(failure);
    ::getsockopt(socket_.number(), SOL_SOCKET, SO_ERROR, &failure, &size);
    errno = failure;
    if (failure != 0) return system_error("cannot connect", address_);
    connected_ = true;
    return Chunk{};
  }

  Descriptor socket_;
  std::string address_;
  Monotonic connect_until_;
  bool connected_ = false;
};

Result<std::unique_ptr<TcpConnection>> connect_to(const addrinfo& peer,
                                                  const std::string& address) {
  Descriptor socket(::socket(peer.ai_family, SOCK_STREAM | SOCK_NONBLOCK | SOCK_CLOEXEC, 0));
  if (!socket.is_open()) return system_error("cannot create a connection", address);
  notice_dead_peer(socket);
  if (::connect(socket.number(), peer.ai_addr, peer.ai_addrlen) != 0 && errno != EINPROGRESS) {
    return system_error("cannot connect", address);
  }
  return std::unique_ptr<TcpConnection>(std::make_unique<TcpSource>(std::move(socket), address));
}

}  // namespace

Result<std::unique_ptr<TcpConnection>> connect_to_peer(const TcpPeer& peer) {
  addrinfo wanted{};
  wanted.ai_socktype = SOCK_STREAM;
  wanted.ai_flags = AI_NUMERICHOST | AI_NUMERICSERV;
  addrinfo* found = nullptr;
  if (::getaddrinfo(peer.host.c_str(), peer.port.c_str(), &wanted, &found) != 0) {
    return not_an_address(peer);
  }
  const std::unique_ptr<addrinfo, void (*)(addrinfo*)> owner(found, ::freeaddrinfo);
  return connect_to(*found, peer.address);
}

}  // namespace mastwise::platform
