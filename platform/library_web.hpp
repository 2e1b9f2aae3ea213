#pragma once

#include <charconv>
#include <concepts>
#include <cstdlib>
#include <limits>
#include <string>
#include <type_traits>

// What the standard has and emscripten's C++ library lacks: std::from_chars of numbers that are not
// whole, and std::bit_cast. The build includes this before every source for a browser.
namespace std {

template <class To, class From>
constexpr To bit_cast(const From& from) {
  static_assert(sizeof(To) == sizeof(From));
  return __builtin_bit_cast(To, from);
}

template <class Number>
requires is_floating_point_v<Number> from_chars_result
from_chars(const char* first, const char* last, Number& value,
           chars_format format = chars_format::general) {
  const auto digits = [&](const char* at) {
    while (at != last && *at >= '0' && *at <= '9') ++at;
    return at;
  };
  const char* const begin = first != last && *first == '-' ? first + 1 : first;
  const char* end = digits(begin);
  auto count = end - begin;
  if (end != last && *end == '.') {
    const char* const after = digits(end + 1);
    count += after - end - 1;
    if (count > 0) end = after;
  }
  if (count == 0) return {first, errc::invalid_argument};
  if (format != chars_format::fixed && end != last && (*end == 'e' || *end == 'E')) {
    const char* power = end + 1;
    if (power != last && (*power == '-' || *power == '+')) ++power;
    if (digits(power) != power) end = digits(power);
  }
  const string text(first, end);
  Number read{};
  if constexpr (is_same_v<Number, float>) {
    read = strtof(text.c_str(), nullptr);
  } else {
    read = strtod(text.c_str(), nullptr);
  }
  const bool too_small =
      read == Number{0} && text.find_first_of("123456789") < text.find_first_of("eE");
  const bool too_large =
      read > numeric_limits<Number>::max() || read < numeric_limits<Number>::lowest();
  if (too_small || too_large) return {end, errc::result_out_of_range};
  value = read;
  return {end, errc()};
}

}  // namespace std
