#include "core/text/decoded_stream.hpp"

#include "core/text/utf8.hpp"

#include <algorithm>
#include <string_view>

namespace mastwise {
namespace {

using Encoding = DecodedStream::Encoding;
constexpr std::size_t kDecodedPiece = std::size_t{64} << 10;

// Of the first bytes: plain letters in UTF-16 have a zero byte each.
Encoding encoding_of(std::string_view start) {
  if (start.starts_with("\xFF\xFE")) return Encoding::utf16_little;
  if (start.starts_with("\xFE\xFF")) return Encoding::utf16_big;
  constexpr std::size_t kLooked = 4096, kFewest = 16;
  start = start.substr(0, kLooked);
  std::size_t zeros[2] = {0, 0};
  for (std::size_t i = 0; i < start.size(); ++i) zeros[i % 2] += start[i] == '\0' ? 1 : 0;
  const std::size_t pairs = start.size() / 2;
  if (start.size() < kFewest) return Encoding::bytes;
  if (zeros[1] * 10 > pairs * 7 && zeros[0] == 0) return Encoding::utf16_little;
  if (zeros[0] * 10 > pairs * 7 && zeros[1] == 0) return Encoding::utf16_big;
  return Encoding::bytes;
}

bool is_high(char32_t unit) {
  return unit >= 0xD800 && unit < 0xDC00;
}

bool is_low(char32_t unit) {
  return unit >= 0xDC00 && unit < 0xE000;
}

}  // namespace

Result<Done> DecodedStream::more() {
  const std::size_t before = raw_.size();
  raw_.resize(before + kDecodedPiece);
  const auto got = stream_->read({raw_.data() + before, kDecodedPiece});
  raw_.resize(before + (got ? std::min(*got, kDecodedPiece) : 0));
  if (!got) return got.error();
  ended_ = *got == 0;
  return Done{};
}

Result<Done> DecodedStream::begin() {
  begun_ = true;
  constexpr std::size_t kEnough = 4096;
  while (!ended_ && raw_.size() < kEnough) {
    if (auto done = more(); !done) return done;
  }
  encoding_ = encoding_of(raw_);
  // UTF-8's own mark is left to the readers.
  if (encoding_ != Encoding::bytes &&
      (raw_.starts_with("\xFF\xFE") || raw_.starts_with("\xFE\xFF")))
    raw_.erase(0, 2);
  decode(ended_);
  return Done{};
}

// Moves raw_ to decoded_, but for a pair or surrogate that is still incomplete.
void DecodedStream::decode(bool last) {
  if (encoding_ == Encoding::bytes) {
    decoded_ += raw_;
    raw_.clear();
    return;
  }
  constexpr char32_t kUnknown = 0xFFFD;
  const auto unit = [&](std::size_t at) -> char32_t {
    const auto first = static_cast<unsigned char>(raw_[at]);
    const auto second = static_cast<unsigned char>(raw_[at + 1]);
    return encoding_ == Encoding::utf16_little ? first | (second << 8) : (first << 8) | second;
  };
  std::size_t at = 0;
  for (; at + 2 <= raw_.size(); at += 2) {
    const char32_t one = unit(at);
    if (is_high(one)) {
      if (at + 4 > raw_.size() && !last) break;
      const char32_t next = at + 4 <= raw_.size() ? unit(at + 2) : 0;
      if (is_low(next)) {
        append_utf8(0x10000 + ((one - 0xD800) << 10) + (next - 0xDC00), decoded_);
        at += 2;
        continue;
      }
    }
    append_utf8(is_high(one) || is_low(one) ? kUnknown : one, decoded_);
  }
  raw_.erase(0, last ? raw_.size() : at);
}

Result<std::size_t> DecodedStream::read(std::span<char> into) {
  if (!begun_) {
    if (const auto done = begin(); !done) return done.error();
  }
  while (given_ == decoded_.size() && !ended_) {
    decoded_.clear();
    given_ = 0;
    if (const auto done = more(); !done) return done.error();
    decode(ended_);
  }
  const std::size_t given = std::min(into.size(), decoded_.size() - given_);
  std::copy_n(decoded_.begin() + static_cast<std::ptrdiff_t>(given_), given, into.begin());
  given_ += given;
  return given;
}

}  // namespace mastwise
