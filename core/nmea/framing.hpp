#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace mastwise::nmea {

// Counts of the contents of a byte stream so far.
struct SentenceCounts {
  std::uint64_t bytes = 0;
  std::uint64_t sentences_good = 0;  // correct checksum; includes sentences for ships (`!`)
  std::uint64_t sentences_bad_checksum = 0;
  std::uint64_t sentences_without_checksum = 0;  // counted and never used, see Framer
  std::uint64_t sentences_too_long = 0;
  bool operator==(const SentenceCounts&) const = default;
};

// Cuts a stream of bytes into NMEA 0183 sentences. The stream may be cut anywhere, begin in the
// middle, and carry binary noise: a `$` or `!` always starts a new sentence, and only a carriage
// return, a line feed, `$` or `!` ends one. The result does not depend on where the stream is cut.
//
// A sentence extends from its `$` to the last `*` whose two hexadecimal digits are the exclusive-or
// of the characters between (NMEA 0183, "checksum field"). The rest is debris of another sentence.
// A sentence without a checksum is never passed on: one that lost its tail looks like a whole one,
// and a longitude that lost its last digits is a wrong position.
class Framer {
 public:
  // Calls take(std::string_view) for every sentence with a correct checksum, in order, with the
  // text from `$` or `!` up to but not including the `*`. The view is valid only during the call.
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

  // The standard allows 82 characters; proprietary sentences with 210 have been seen.
  static constexpr std::size_t kLongest = 512;

 private:
  std::string_view finish();
  void append(char byte);

  std::string text_;  // the sentence so far from its `$`; empty between sentences
  SentenceCounts counts_;
};

}  // namespace mastwise::nmea
