#pragma once

#include "core/result.hpp"
#include "platform/byte_source.hpp"

#include <span>
#include <string>
#include <utility>

namespace mastwise::platform {

// Owns an open file descriptor.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  ~Descriptor();
  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }

 private:
  int number_;
};

// The last system error as "what", with a remedy if the cause is known.
Error system_error(std::string what, std::string where);

// Waits for bytes and reads them; an error if the other end is gone. `where` is for the message.
Result<Chunk> read_when_ready(const Descriptor& descriptor, std::span<char> into,
                              milliseconds timeout, const std::string& where);

}  // namespace mastwise::platform
