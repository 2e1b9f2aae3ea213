#include "core/places/spelling.hpp"

#include <algorithm>

namespace mastwise::places {

Spelling::Spelling(std::string_view typed) : typed_(typed.substr(0, kMostBytes)) {
  constexpr std::size_t kOneWrongFrom = 4, kTwoWrongFrom = 8;
  allowed_ = (typed_.size() >= kOneWrongFrom ? 1 : 0) + (typed_.size() >= kTwoWrongFrom ? 1 : 0);
  for (std::size_t i = 0; i < typed_.size(); ++i) {
    places_of_byte_[static_cast<unsigned char>(typed_[i])] |= std::uint64_t{1} << i;
  }
}

std::optional<Agreement> Spelling::with_beginning(std::string_view name) const {
  if (typed_.empty()) return std::nullopt;
  if (name.substr(0, typed_.size()) == typed_) {
    return Agreement{.wrong_letters = 0, .whole_name = name.size() == typed_.size()};
  }
  return allowed_ == 0 ? std::nullopt : with_slack(name);
}

std::optional<Agreement> Spelling::with_slack(std::string_view name) const {
  const std::uint64_t last = std::uint64_t{1} << (typed_.size() - 1);
  const auto allowed = static_cast<std::size_t>(allowed_);
  if (name.size() + allowed < typed_.size()) return std::nullopt;
  const std::size_t end = std::min(name.size(), typed_.size() + allowed);
  std::uint64_t rises = ~std::uint64_t{0}, falls = 0, steps = ~std::uint64_t{0}, equal_before = 0;
  int wrong = static_cast<int>(typed_.size());
  int fewest = wrong;
  for (std::size_t i = 0; i < end; ++i) {
    const std::uint64_t equal = places_of_byte_[static_cast<unsigned char>(name[i])];
    const std::uint64_t swapped = ((~steps & equal) << 1) & equal_before;
    steps = (((equal & rises) + rises) ^ rises) | equal | falls | swapped;
    std::uint64_t right_rises = falls | ~(steps | rises);
    std::uint64_t right_falls = rises & steps;
    wrong += (right_rises & last) != 0 ? 1 : 0;
    wrong -= (right_falls & last) != 0 ? 1 : 0;
    // One letter can lower the count by at most one.
    if (wrong > allowed_ + static_cast<int>(end - i - 1) && fewest > allowed_) return std::nullopt;
    right_rises = right_rises << 1 | 1;
    right_falls <<= 1;
    rises = right_falls | ~(steps | right_rises);
    falls = right_rises & steps;
    equal_before = equal;
    fewest = std::min(fewest, wrong);
  }
  if (fewest > allowed_) return std::nullopt;
  return Agreement{.wrong_letters = fewest, .whole_name = end == name.size() && wrong == fewest};
}

bool Spelling::begins_later_word(std::string_view name) const {
  if (typed_.empty()) return false;
  for (std::size_t at = name.find(' '); at != std::string_view::npos; at = name.find(' ', at + 1)) {
    if (name.substr(at + 1, typed_.size()) == typed_) return true;
  }
  return false;
}

}  // namespace mastwise::places
