#pragma once

#include "platform/byte_source.hpp"

#include <string_view>

namespace mastwise::platform {

// A TCP connection that can also be written to. It connects during its first reads.
class TcpConnection : public ByteSource {
 public:
  virtual bool is_connected() const = 0;
  // A short request, after is_connected().
  virtual Result<Done> send(std::string_view text) = 0;
};

// Opens a connection to an address as in tcp_source, without waiting.
Result<std::unique_ptr<TcpConnection>> connect_tcp(const std::string& address,
                                                   const std::string& default_port);

// How long a connection may take.
inline constexpr milliseconds kConnectWithin{5000};

// An address in its parts, and as it was given. Host and port are numbers.
struct TcpPeer {
  std::string host;
  std::string port;
  std::string address;
  std::string default_port;
};
// The system's part of connect_tcp: one source file for each system.
Result<std::unique_ptr<TcpConnection>> connect_to_peer(const TcpPeer& peer);
Error not_an_address(const TcpPeer& peer);
Error no_answer(const std::string& address);
Error not_read(const std::string& address);

}  // namespace mastwise::platform
