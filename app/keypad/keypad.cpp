#include "app/keypad/keypad.hpp"

#include <algorithm>
#include <charconv>

namespace mastwise {

void type(Keypad& keypad, std::string_view text) {
  constexpr std::size_t kLongest = 60;
  if (keypad.text.size() + text.size() <= kLongest) keypad.text += text;
}

void erase_last(Keypad& keypad) {
  const auto continues = [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0) == 0x80;
  };
  while (!keypad.text.empty() && continues(keypad.text.back())) keypad.text.pop_back();
  if (!keypad.text.empty()) keypad.text.pop_back();
}

Result<ReadHeading> read_heading(const Keypad& keypad) {
  double degrees = 0.0;
  const char* begin = keypad.text.data();
  const char* end = begin + keypad.text.size();
  const auto [stopped, trouble] = std::from_chars(begin, end, degrees, std::chars_format::fixed);
  const auto character = static_cast<std::size_t>(stopped - begin);
  if (trouble != std::errc{} || stopped != end) {
    return Error{.what = "not a number of degrees",
                 .remedy = "type the rig heading, such as 118",
                 .character = character};
  }
  if (!(degrees >= 0.0 && degrees <= 360.0)) {
    return Error{.what = "a heading must be 0 to 360 degrees",
                 .remedy = "read the compass again",
                 .character = 0};
  }
  if (keypad.magnetic) return ReadHeading(Bearing<Magnetic>::degrees(degrees));
  return ReadHeading(Bearing<True>::degrees(degrees));
}

bool types_position(const Keypad& keypad) {
  return keypad.purpose == KeypadPurpose::Position ||
         (keypad.purpose == KeypadPurpose::Field && is_place(keypad.field));
}

bool types_name(const Keypad& keypad) {
  const auto is_figure = [](char c) { return c >= '0' && c <= '9'; };
  const auto is_letter = [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); };
  const std::string& text = keypad.text;
  return types_position(keypad) && std::any_of(text.begin(), text.end(), is_letter) &&
         std::none_of(text.begin(), text.end(), is_figure);
}

Result<Done> fill(Form& form, const Keypad& keypad) {
  const auto number = read_number(keypad.text);
  if (!number) return number.error();
  form.numbers[keypad.field] = *number;
  return Done{};
}

}  // namespace mastwise
