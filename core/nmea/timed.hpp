#pragma once

#include "core/time.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace mastwise {

// A reading with an expiry: a value, its time, and how long it may be trusted.
template <class T>
class Timed {
 public:
  // Never read yet. `lifetime` is over 0.
  explicit constexpr Timed(milliseconds lifetime) : lifetime_(lifetime) {}

  void set(T value, Monotonic now) {
    value_ = std::move(value);
    when_ = now;
  }
  void clear() { value_.reset(); }

  // The value if it is younger than its lifetime, else null.
  const T* fresh(Monotonic now) const {
    return value_ && now - when_ < lifetime_ ? &*value_ : nullptr;
  }
  std::optional<T> fresh_copy(Monotonic now) const {
    return fresh(now) != nullptr ? value_ : std::nullopt;
  }
  // The value at any age, or null if there never was one.
  const T* last() const { return value_ ? &*value_ : nullptr; }
  // The age of the value; std::nullopt if there never was one.
  std::optional<milliseconds> age(Monotonic now) const {
    if (!value_) return std::nullopt;
    return std::max(now - when_, milliseconds(0));
  }
  bool operator==(const Timed&) const = default;

 private:
  std::optional<T> value_;
  Monotonic when_{};
  milliseconds lifetime_;
};

}  // namespace mastwise
