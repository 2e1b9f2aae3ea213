#pragma once

#include "core/time.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace mastwise {

// A reading that carries its own expiry: a value, when it was read, and how long it may be trusted.
template <class T>
class Timed {
 public:
  // Never read yet. `lifetime` is greater than 0.
  explicit constexpr Timed(milliseconds lifetime) : lifetime_(lifetime) {}

  void set(T value, Monotonic now) {
    value_ = std::move(value);
    when_ = now;
  }
  void clear() { value_.reset(); }

  // The value while it is younger than its lifetime, else null.
  const T* fresh(Monotonic now) const {
    return value_ && now - when_ < lifetime_ ? &*value_ : nullptr;
  }
  std::optional<T> fresh_copy(Monotonic now) const {
    return fresh(now) != nullptr ? value_ : std::nullopt;
  }
  // The value however old it is, or null when there never was one.
  const T* last() const { return value_ ? &*value_ : nullptr; }
  // How long ago it was read; nothing when there never was one.
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
