#include "platform/tcp_connection.hpp"

namespace mastwise::platform {

Result<std::unique_ptr<TcpConnection>> connect_to_peer(const TcpPeer& peer) {
  return Error{.what = "a browser opens no such connection",
               .where = peer.address,
               .remedy = "use the browser's position, or Mastwise on Debian or Windows"};
}

}  // namespace mastwise::platform
