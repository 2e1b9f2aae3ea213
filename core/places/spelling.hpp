#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mastwise::places {

// How well the beginning of a name matches the typed text.
struct Agreement {
  int wrong_letters = 0;
  bool whole_name = false;  // the name has no further letters
};

// The typed text, prepared for comparison with many names.
class Spelling {
 public:
  static constexpr std::size_t kMostBytes = 64;

  // Both texts are folded; bytes after kMostBytes are cut off. Allowed wrong letters: none below 4
  // bytes, 1 below 8, else 2.
  explicit Spelling(std::string_view typed);

  // The fewest letters to insert, delete, change, or swap with their neighbor to turn the typed
  // text into the beginning of the name; std::nullopt if that exceeds the allowed number. Source:
  // the bit-parallel edit distance of G. Myers, J. ACM 46 (1999), and its form with swapped
  // neighbors by H. Hyyrö, Nordic J. of Computing 10 (2003).
  std::optional<Agreement> with_beginning(std::string_view name) const;

  // Whether a later word of the name begins with exactly the typed text.
  bool begins_later_word(std::string_view name) const;

 private:
  std::optional<Agreement> with_slack(std::string_view name) const;

  std::string typed_;
  int allowed_ = 0;
  std::array<std::uint64_t, 256> places_of_byte_{};
};

}  // namespace mastwise::places
