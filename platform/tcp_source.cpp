#include "platform/tcp_connection.hpp"

namespace mastwise::platform {
namespace {

TcpPeer split_address(const std::string& address, const std::string& default_port) {
  if (address.starts_with('[')) {
    const std::size_t close = address.find(']');
    if (close == std::string::npos) return {"", "", address, default_port};
    const std::string host = address.substr(1, close - 1);
    const bool has_port = address.substr(close).starts_with("]:");
    return {host, has_port ? address.substr(close + 2) : default_port, address, default_port};
  }
  const std::size_t colon = address.find(':');
  if (colon == std::string::npos) return {address, default_port, address, default_port};
  return {address.substr(0, colon), address.substr(colon + 1), address, default_port};
}

}  // namespace

Error not_an_address(const TcpPeer& peer) {
  return {.what = "not a network address",
          .where = peer.address,
          .remedy = "enter numbers and a port, as in 192.168.4.1:" + peer.default_port};
}

Error no_answer(const std::string& address) {
  return {.what = "no answer",
          .where = address,
          .remedy = "check the address, and that this tablet is in the device's network"};
}

Error not_read(const std::string& address) {
  return {.what = "cannot send: the other side does not read", .where = address};
}

Result<std::unique_ptr<TcpConnection>> connect_tcp(const std::string& address,
                                                   const std::string& default_port) {
  TcpPeer peer = split_address(address, default_port);
  if (peer.host == "localhost") peer.host = "127.0.0.1";
  return connect_to_peer(peer);
}

OpenSource tcp_source(std::string address) {
  return [=]() -> Result<std::unique_ptr<ByteSource>> {
    auto connection = connect_tcp(address, "10110");
    if (!connection) return connection.error();
    return std::unique_ptr<ByteSource>(std::move(connection).value());
  };
}

}  // namespace mastwise::platform
