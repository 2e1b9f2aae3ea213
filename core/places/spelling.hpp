#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace mastwise::places {

// How well the beginning of a name agrees with what was typed.
struct Agreement {
  int wrong_letters = 0;
  bool whole_name = false;  // the name has nothing more
};

// What was typed, made ready for being compared with many names.
class Spelling {
 public:
  static constexpr std::size_t kMostBytes = 64;

  // Both folded; more than kMostBytes are cut off. The letters allowed to be wrong: none below 4
  // bytes, 1 below 8, else 2.
  explicit Spelling(std::string_view typed);

  // The fewest letters that must be put in, taken out, changed, or changed with their neighbor to
  // make what was typed the beginning of the name; nothing where that is more than is allowed.
  // Source: the bit-parallel edit distance of G. Myers, J. ACM 46 (1999), and its form with
  // neighbors changed by H. Hyyrö, Nordic J. of Computing 10 (2003).
  std::optional<Agreement> with_beginning(std::string_view name) const;

  // Whether a later word of the name begins with exactly what was typed.
  bool begins_later_word(std::string_view name) const;

 private:
  std::optional<Agreement> with_slack(std::string_view name) const;

  std::string typed_;
  int allowed_ = 0;
  std::array<std::uint64_t, 256> places_of_byte_{};
};

}  // namespace mastwise::places
