#include "platform/connection.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <vector>

#include <winsock2.h>
// winsock2.h comes first.
#include <iphlpapi.h>

namespace mastwise::platform {
namespace {

// Mobile broadband of the GSM and CDMA families: ifType 243 and 244 of IANA's registry.
constexpr ULONG kMobile[] = {243, 244};

}  // namespace

// By the gateways of the adapters that are up. `root` means nothing here.
LineKind line_kind(const std::filesystem::path&) {
  constexpr ULONG kFlags = GAA_FLAG_INCLUDE_GATEWAYS | GAA_FLAG_SKIP_ANYCAST |
                           GAA_FLAG_SKIP_MULTICAST | GAA_FLAG_SKIP_DNS_SERVER;
  std::vector<std::max_align_t> room(2048);
  auto size = static_cast<ULONG>(room.size() * sizeof(room[0]));
  const auto first = [&] { return reinterpret_cast<IP_ADAPTER_ADDRESSES*>(room.data()); };
  ULONG failure = ::GetAdaptersAddresses(AF_UNSPEC, kFlags, nullptr, first(), &size);
  if (failure == ERROR_BUFFER_OVERFLOW) {
    room.resize(size / sizeof(room[0]) + 1);
    failure = ::GetAdaptersAddresses(AF_UNSPEC, kFlags, nullptr, first(), &size);
  }
  if (failure != NO_ERROR) return LineKind::none;
  LineKind kind = LineKind::none;
  for (const auto* adapter = first(); adapter != nullptr; adapter = adapter->Next) {
    if (adapter->OperStatus != IfOperStatusUp || adapter->FirstGatewayAddress == nullptr) continue;
    if (std::find(std::begin(kMobile), std::end(kMobile), adapter->IfType) != std::end(kMobile)) {
      return LineKind::mobile;
    }
    kind = LineKind::other;
  }
  return kind;
}

}  // namespace mastwise::platform
