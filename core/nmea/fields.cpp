#include "core/nmea/fields.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <system_error>

namespace mastwise::nmea {
namespace {

bool is_digit(char character) {
  return character >= '0' && character <= '9';
}

std::optional<int> digits(std::string_view text) {
  if (text.empty() || text.size() > 4 || !std::all_of(text.begin(), text.end(), is_digit)) {
    return std::nullopt;
  }
  int value = 0;
  for (const char digit : text) value = value * 10 + (digit - '0');
  return value;
}

// ".s", ".ss", ".sss...": the decimals after whole seconds, cut to milliseconds.
std::optional<int> decimals_ms(std::string_view text) {
  if (text.empty()) return 0;
  const std::string_view decimals = text.substr(1);
  if (text.front() != '.' || !std::all_of(decimals.begin(), decimals.end(), is_digit)) {
    return std::nullopt;
  }
  int value = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    value = value * 10 + (i < decimals.size() ? decimals[i] - '0' : 0);
  }
  return value;
}

// dddmm.m in degrees, at most `limit_deg`.
std::optional<double> angle_deg(std::optional<double> packed, double limit_deg) {
  if (!packed || *packed < 0.0) return std::nullopt;
  const double whole_deg = std::floor(*packed / 100.0);
  const double minutes = *packed - whole_deg * 100.0;
  const double degrees = whole_deg + minutes / 60.0;
  if (minutes >= 60.0 || degrees > limit_deg) return std::nullopt;
  return degrees;
}

// The sign of a hemisphere letter; std::nullopt for any other letter.
std::optional<double> hemisphere(char letter, char positive, char negative) {
  if (letter == positive) return 1.0;
  if (letter == negative) return -1.0;
  return std::nullopt;
}

}  // namespace

Fields::Fields(std::string_view sentence) {
  std::string_view rest = sentence.substr(std::min<std::size_t>(1, sentence.size()));
  while (count_ < fields_.size()) {
    const std::size_t comma = rest.find(',');
    fields_[count_++] = rest.substr(0, comma);
    if (comma == std::string_view::npos) break;
    rest.remove_prefix(comma + 1);
  }
}

std::string_view Fields::text(std::size_t field) const {
  return field < count_ ? fields_[field] : std::string_view();
}

char Fields::letter(std::size_t field) const {
  return text(field).size() == 1 ? text(field).front() : '\0';
}

std::optional<double> Fields::number(std::size_t field) const {
  const std::string_view characters = text(field);
  const auto belongs = [](char c) { return is_digit(c) || c == '.' || c == '-'; };
  if (characters.empty() || !std::all_of(characters.begin(), characters.end(), belongs)) {
    return std::nullopt;
  }
  double value = 0.0;
  const char* end = characters.data() + characters.size();
  const auto read = std::from_chars(characters.data(), end, value, std::chars_format::fixed);
  if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return value;
}

std::optional<int> Fields::whole(std::size_t field) const {
  return digits(text(field));
}

std::optional<TimeOfDay> Fields::time_of_day(std::size_t field) const {
  const std::string_view characters = text(field);
  if (characters.size() < 6) return std::nullopt;
  const auto hours = digits(characters.substr(0, 2));
  const auto minutes = digits(characters.substr(2, 2));
  const auto seconds = digits(characters.substr(4, 2));
  const auto fraction_ms = decimals_ms(characters.substr(6));
  if (!hours || !minutes || !seconds || !fraction_ms) return std::nullopt;
  if (*hours > 23 || *minutes > 59 || *seconds > 60) return std::nullopt;
  return std::chrono::hours(*hours) + std::chrono::minutes(*minutes) +
         std::chrono::seconds(*seconds) + milliseconds(*fraction_ms);
}

std::optional<Date> Fields::date(std::size_t field) const {
  const std::string_view characters = text(field);
  if (characters.size() != 6) return std::nullopt;
  const auto day = digits(characters.substr(0, 2));
  const auto month = digits(characters.substr(2, 2));
  const auto year = digits(characters.substr(4, 2));
  if (!day || !month || !year) return std::nullopt;
  const Date date{std::chrono::year(*year + (*year >= 80 ? 1900 : 2000)),
                  std::chrono::month(static_cast<unsigned>(*month)),
                  std::chrono::day(static_cast<unsigned>(*day))};
  return date.ok() ? std::optional(date) : std::nullopt;
}

std::optional<Position> Fields::position(std::size_t first_field) const {
  const auto latitude_deg = angle_deg(number(first_field), 90.0);
  const auto north = hemisphere(letter(first_field + 1), 'N', 'S');
  const auto longitude_deg = angle_deg(number(first_field + 2), 180.0);
  const auto east = hemisphere(letter(first_field + 3), 'E', 'W');
  if (!latitude_deg || !north || !longitude_deg || !east) return std::nullopt;
  const auto position = Position::at_deg(*latitude_deg * *north, *longitude_deg * *east);
  return position ? std::optional(*position) : std::nullopt;
}

std::optional<double> Fields::east_deg(std::size_t first_field) const {
  const auto size_deg = number(first_field);
  const auto east = hemisphere(letter(first_field + 1), 'E', 'W');
  if (!size_deg || !east || *size_deg < 0.0 || *size_deg > 180.0) return std::nullopt;
  return *size_deg * *east;
}

}  // namespace mastwise::nmea
