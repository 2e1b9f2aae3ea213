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

}  // namespace mastwise::platform
