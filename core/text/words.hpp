#pragma once

#include "core/result.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include <fmt/format.h>

// Helpers of the table readers and of the search; ASCII only, independent of the locale.
namespace mastwise::words {

constexpr bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}
constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
constexpr char upper(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

inline std::string upper(std::string_view text) {
  std::string result(text);
  std::transform(result.begin(), result.end(), result.begin(), [](char c) { return upper(c); });
  return result;
}

inline std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

inline bool same_word(std::string_view a, std::string_view b) {
  return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(),
                                            [](char x, char y) { return upper(x) == upper(y); });
}

// The choice whose to_text() is the given word, ignoring case; the error lists the choices.
template <class Choice, std::size_t kCount>
Result<Choice> parse_choice(std::string_view text, const std::array<Choice, kCount>& choices,
                            std::string_view kind) {
  text = trimmed(text);
  for (const Choice choice : choices) {
    if (same_word(text, to_text(choice))) return choice;
  }
  std::string known;
  for (const Choice choice : choices) {
    known += (known.empty() ? "" : ", ") + std::string(to_text(choice));
  }
  return Error{.what = fmt::format("\"{}\" is not {}", text, kind),
               .remedy = "choose one of: " + known};
}

}  // namespace mastwise::words
