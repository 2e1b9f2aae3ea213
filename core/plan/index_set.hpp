#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace mastwise {

// A set of numbers below a limit. Combined sets must have the same limit.
class IndexSet {
 public:
  explicit IndexSet(std::size_t limit) : words_((limit + kBits - 1) / kBits, 0) {}

  void add(std::size_t index) { words_[index / kBits] |= bit(index); }
  bool has(std::size_t index) const { return (words_[index / kBits] & bit(index)) != 0; }
  void add_all(const IndexSet& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
  }
  void remove_all(const IndexSet& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= ~other.words_[i];
  }
  bool within(const IndexSet& other) const {
    for (std::size_t i = 0; i < words_.size(); ++i) {
      if ((words_[i] & ~other.words_[i]) != 0) return false;
    }
    return true;
  }
  std::size_t count() const {
    std::size_t count = 0;
    for (const std::uint64_t word : words_) count += static_cast<std::size_t>(std::popcount(word));
    return count;
  }
  bool empty() const {
    for (const std::uint64_t word : words_) {
      if (word != 0) return false;
    }
    return true;
  }
  bool operator==(const IndexSet&) const = default;

 private:
  static constexpr std::size_t kBits = 64;
  static std::uint64_t bit(std::size_t index) { return std::uint64_t{1} << (index % kBits); }
  std::vector<std::uint64_t> words_;
};

}  // namespace mastwise
