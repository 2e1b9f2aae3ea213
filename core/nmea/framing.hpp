#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace mastwise::nmea {

// What a byte stream was made of so far.
struct SentenceCounts {
  std::uint64_t bytes = 0;
  std::uint64_t sentences_good = 0;  // the checksum was right; sentences for ships (`!`) included
  std::uint64_t sentences_bad_checksum = 0;
  std::uint64_t sentences_without_checksum = 0;  // counted and never used, see Framer
  std::uint64_t sentences_too_long = 0;
  bool operator==(const SentenceCounts&) const = default;
};

// Cuts a stream of bytes into NMEA 0183 sentences. The stream may be cut anywhere, may begin in the
// middle, and may carry binary noise: a `$` or `!` always begins anew, and only a carriage return,
// a line feed, `$` or `!` ends a sentence. The result does not depend on how the stream is cut.
//
// A sentence holds from its `$` to the last `*` whose two hexadecimal digits are the exclusive-or
// of the characters between (NMEA 0183, "checksum field"). Whatever follows is debris of another
// sentence. A sentence without a checksum is never handed on: one that lost its tail looks the same
// as a whole one, and a longitude that lost its last digits is a wrong position.
class Framer {
 public:
  // Calls take(std::string_view) for every sentence whose checksum is right, in order, with the
  // text from `$` or `!` up to, not including, the `*`. The view holds only during the call.
  template <class Take>
  void feed(std::string_view bytes, Take&& take) {
    counts_.bytes += bytes.size();
    for (const char byte : bytes) {
      const bool begins = byte == '$' || byte == '!';
      if (begins || byte == '\r' || byte == '\n') {
        const std::string_view sentence = finish();
        if (!sentence.empty()) take(sentence);
        text_.clear();
        if (begins) text_.push_back(byte);
      } else if (!text_.empty()) {
        append(byte);
      }
    }
  }

  const SentenceCounts& counts() const { return counts_; }
  bool operator==(const Framer&) const = default;

  // The standard allows 82 characters; receivers' own sentences have been seen with 210.
  static constexpr std::size_t kLongest = 512;

 private:
  std::string_view finish();
  void append(char byte);

  std::string text_;  // the sentence so far from its `$`; empty between sentences
  SentenceCounts counts_;
};

}  // namespace mastwise::nmea
