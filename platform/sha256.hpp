#pragma once

#include <cstddef>
#include <memory>
#include <span>
#include <string>

namespace mastwise::platform {

// A SHA-256 sum (FIPS 180-4), by Nettle.
class Sha256 {
 public:
  Sha256();
  ~Sha256();
  Sha256(const Sha256&) = delete;
  Sha256& operator=(const Sha256&) = delete;

  void add(std::span<const std::byte> bytes);
  // The sum in 64 hexadecimal digits, lower case; begins anew.
  std::string take_hex();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace mastwise::platform
