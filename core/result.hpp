#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>

namespace mastwise {

// An error for the user: what is wrong, where, and what to do about it.
struct Error {
  std::string what;
  std::string where = {};                     // file and line, field, or empty
  std::string remedy = {};                    // what the person can do, or empty
  std::optional<std::size_t> character = {};  // 0-based byte in the given text, if any
  bool damaged = false;                       // the file's content, not the access to it

  // One line: "where: what; remedy".
  std::string message() const {
    std::string text = where.empty() ? what : where + ": " + what;
    if (!remedy.empty()) text += "; " + remedy;
    return text;
  }
  bool operator==(const Error&) const = default;
};

// A value or the reason why there is none. Core returns these; nothing is thrown across its border.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}
  Result(Error error) : state_(std::in_place_index<1>, std::move(error)) {}

  explicit operator bool() const { return state_.index() == 0; }
  const T& value() const& { return std::get<0>(state_); }
  T& value() & { return std::get<0>(state_); }
  T&& value() && { return std::get<0>(std::move(state_)); }
  const T& operator*() const& { return value(); }
  T& operator*() & { return value(); }
  T&& operator*() && { return std::move(*this).value(); }
  const T* operator->() const { return &value(); }
  T* operator->() { return &value(); }
  const Error& error() const { return std::get<1>(state_); }

 private:
  std::variant<T, Error> state_;
};

// Success without a value.
struct Done {
  bool operator==(const Done&) const = default;
};

}  // namespace mastwise
