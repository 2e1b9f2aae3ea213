#include "platform/sha256.hpp"

#include <array>
#include <cstdint>

#include <nettle/sha2.h>

namespace mastwise::platform {

struct Sha256::State {
  sha256_ctx context = {};
};

Sha256::Sha256() : state_(std::make_unique<State>()) {
  sha256_init(&state_->context);
}
Sha256::~Sha256() = default;

void Sha256::add(std::span<const std::byte> bytes) {
  sha256_update(&state_->context, bytes.size(),
                reinterpret_cast<const std::uint8_t*>(bytes.data()));
}

std::string Sha256::take_hex() {
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  sha256_digest(&state_->context, digest.size(), digest.data());
  constexpr std::string_view kDigits = "0123456789abcdef";
  std::string text;
  for (const std::uint8_t byte : digest) {
    text += kDigits[byte >> 4U];
    text += kDigits[byte & 0xFU];
  }
  return text;
}

}  // namespace mastwise::platform
