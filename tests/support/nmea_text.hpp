#pragma once

#include <string>

#include <fmt/format.h>

namespace mastwise::test {

// "$TEXT*hh\r\n" with the right checksum.
inline std::string sentence(const std::string& text) {
  unsigned checksum = 0;
  for (const char character : text) checksum ^= static_cast<unsigned char>(character);
  return fmt::format("${}*{:02X}\r\n", text, checksum);
}

}  // namespace mastwise::test
