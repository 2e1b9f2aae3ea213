#include "platform/clock.hpp"
#include "platform/system_windows.hpp"
#include "platform/tcp_connection.hpp"

#include <memory>
#include <string>
#include <utility>

#include <winsock2.h>
// winsock2.h comes first.
#include <mstcpip.h>
#include <ws2tcpip.h>

namespace mastwise::platform {
namespace {

class Socket {
 public:
  explicit Socket(SOCKET number) : number_(number) {}
  Socket(Socket&& other) noexcept : number_(std::exchange(other.number_, INVALID_SOCKET)) {}
  Socket& operator=(Socket&&) = delete;
  ~Socket() {
    if (number_ != INVALID_SOCKET) ::closesocket(number_);
  }
  SOCKET number() const { return number_; }

 private:
  SOCKET number_;
};

Error socket_error(const std::string& what, const std::string& address, int number) {
  Error error{.what = system_message(what, static_cast<DWORD>(number)), .where = address};
  if (number == WSAECONNREFUSED)
    error.remedy = "check the port, and that the device's server is on";
  return error;
}

Error disconnected(const std::string& address) {
  return {.what = "the device is disconnected",
          .where = address,
          .remedy = "check its cable and power"};
}

// A device that loses power does not close the connection: probe after 5 s of silence, then every
// 2 s. Windows gives up after 10 probes.
void notice_dead_peer(const Socket& socket) {
  tcp_keepalive wanted{.onoff = 1, .keepalivetime = 5000, .keepaliveinterval = 2000};
  DWORD returned = 0;
  ::WSAIoctl(socket.number(), SIO_KEEPALIVE_VALS, &wanted, sizeof(wanted), nullptr, 0, &returned,
             nullptr, nullptr);
}

enum class Wanted { reading, connecting };

// select() sees a refused connection as an exception; WSAPoll did not before Windows 10 2004.
int wait_for(const Socket& socket, Wanted wanted, milliseconds timeout) {
  fd_set ready{}, failed{};
  FD_SET(socket.number(), &ready);
  FD_SET(socket.number(), &failed);
  timeval within{.tv_sec = static_cast<long>(timeout.count() / 1000),
                 .tv_usec = static_cast<long>(timeout.count() % 1000 * 1000)};
  return wanted == Wanted::reading ? ::select(0, &ready, nullptr, &failed, &within)
                                   : ::select(0, nullptr, &ready, &failed, &within);
}

// Connects during its first reads, so that opening does not wait.
class TcpSource : public TcpConnection {
 public:
  TcpSource(Socket socket, std::string address)
      : socket_(std::move(socket)),
        address_(std::move(address)),
        connect_until_(monotonic_now() + kConnectWithin) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    if (connected_) return read_when_ready(into, timeout);
    if (wait_for(socket_, Wanted::connecting, timeout) > 0) return finish_connecting();
    if (monotonic_now() < connect_until_) return Chunk{};
    return no_answer(address_);
  }

  bool is_connected() const override { return connected_; }

  Result<Done> send(std::string_view text) override {
    const int sent = ::send(socket_.number(), text.data(), static_cast<int>(text.size()), 0);
    if (sent < 0) return socket_error("cannot send", address_, ::WSAGetLastError());
    if (static_cast<std::size_t>(sent) == text.size()) return Done{};
    return not_read(address_);
  }

 private:
  Result<Chunk> read_when_ready(std::span<char> into, milliseconds timeout) {
    const int ready = wait_for(socket_, Wanted::reading, timeout);
    if (ready < 0) return socket_error("waiting failed", address_, ::WSAGetLastError());
    if (ready == 0) return Chunk{};
    const int size = ::recv(socket_.number(), into.data(), static_cast<int>(into.size()), 0);
    if (size > 0) return Chunk{static_cast<std::size_t>(size)};
    if (size == 0) return disconnected(address_);
    const int failure = ::WSAGetLastError();
    if (failure == WSAEWOULDBLOCK) return Chunk{};
    if (failure == WSAECONNRESET) return disconnected(address_);
    return socket_error("reading failed", address_, failure);
  }

  Result<Chunk> finish_connecting() {
    int failure = 0;
    int size = sizeof(failure);
    ::getsockopt(socket_.number(), SOL_SOCKET, SO_ERROR, reinterpret_cast<char*>(&failure), &size);
    if (failure != 0) return socket_error("cannot connect", address_, failure);
    connected_ = true;
    return Chunk{};
  }

  Socket socket_;
  std::string address_;
  Monotonic connect_until_;
  bool connected_ = false;
};

Result<std::unique_ptr<TcpConnection>> connect_to(const addrinfo& peer,
                                                  const std::string& address) {
  Socket socket(::socket(peer.ai_family, SOCK_STREAM, IPPROTO_TCP));
  u_long unblocked = 1;
  if (socket.number() == INVALID_SOCKET ||
      ::ioctlsocket(socket.number(), static_cast<long>(FIONBIO), &unblocked) != 0) {
    return socket_error("cannot create a connection", address, ::WSAGetLastError());
  }
  notice_dead_peer(socket);
  if (::connect(socket.number(), peer.ai_addr, static_cast<int>(peer.ai_addrlen)) != 0 &&
      ::WSAGetLastError() != WSAEWOULDBLOCK) {
    return socket_error("cannot connect", address, ::WSAGetLastError());
  }
  return std::unique_ptr<TcpConnection>(std::make_unique<TcpSource>(std::move(socket), address));
}

// Windows wants its sockets started once in a process.
bool are_sockets_started() {
  static const bool started = [] {
    WSADATA about{};
    return ::WSAStartup(MAKEWORD(2, 2), &about) == 0;
  }();
  return started;
}

}  // namespace

Result<std::unique_ptr<TcpConnection>> connect_to_peer(const TcpPeer& peer) {
  if (!are_sockets_started()) {
    return Error{.what = "this system has no network", .where = peer.address};
  }
  addrinfo wanted{};
  wanted.ai_socktype = SOCK_STREAM;
  wanted.ai_flags = AI_NUMERICHOST | AI_NUMERICSERV;
  addrinfo* found = nullptr;
  if (::getaddrinfo(peer.host.c_str(), peer.port.c_str(), &wanted, &found) != 0) {
    return not_an_address(peer);
  }
  const std::unique_ptr<addrinfo, decltype(&::freeaddrinfo)> owner(found, &::freeaddrinfo);
  return connect_to(*found, peer.address);
}

}  // namespace mastwise::platform
