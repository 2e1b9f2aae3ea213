#include "core/nmea/framing.hpp"

#include <optional>

namespace mastwise::nmea {
namespace {

std::optional<unsigned> hex_digit(char digit) {
  if (digit >= '0' && digit <= '9') return static_cast<unsigned>(digit - '0');
  if (digit >= 'A' && digit <= 'F') return static_cast<unsigned>(digit - 'A' + 10);
  if (digit >= 'a' && digit <= 'f') return static_cast<unsigned>(digit - 'a' + 10);
  return std::nullopt;
}

std::optional<unsigned> checksum_at(std::string_view text, std::size_t star) {
  if (star + 2 >= text.size()) return std::nullopt;
  const auto high = hex_digit(text[star + 1]);
  const auto low = hex_digit(text[star + 2]);
  if (!high || !low) return std::nullopt;
  return *high * 16 + *low;
}

unsigned checksum_of(std::string_view characters) {
  unsigned sum = 0;
  for (const char character : characters) sum ^= static_cast<unsigned char>(character);
  return sum;
}

}  // namespace

// Ends the sentence in the buffer and counts it. Empty if its checksum is missing or wrong.
std::string_view Framer::finish() {
  const std::string_view text = text_;
  if (text.size() < 2) return {};
  const std::size_t last_star = text.rfind('*');
  if (last_star == std::string_view::npos) {
    ++counts_.sentences_without_checksum;
    return {};
  }
  for (std::size_t star = last_star; star != std::string_view::npos && star > 0;
       star = text.rfind('*', star - 1)) {
    if (checksum_at(text, star) == checksum_of(text.substr(1, star - 1))) {
      ++counts_.sentences_good;
      return text.substr(0, star);
    }
  }
  ++counts_.sentences_bad_checksum;
  return {};
}

void Framer::append(char byte) {
  if (text_.size() < kLongest) {
    text_.push_back(byte);
    return;
  }
  ++counts_.sentences_too_long;
  text_.clear();
}

}  // namespace mastwise::nmea
