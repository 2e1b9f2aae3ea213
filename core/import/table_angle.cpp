#include "core/import/table_angle.hpp"

#include "core/import/station_fields.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include <fmt/format.h>

namespace mastwise {
namespace {

// An angle as written, without its sign, which may be present for 0 degrees too.
struct Parts {
  double degrees = 0.0;
  double minutes = 0.0;
  double seconds = 0.0;
};

std::string_view axis_name(Axis axis) {
  return axis == Axis::latitude ? "latitude" : "longitude";
}

Error unreadable(std::string_view cell, std::string_view form) {
  return Error{.what = fmt::format("\"{}\" is not {}", cell, form)};
}

// True if the angle counts to the south or to the west.
Result<bool> letter_is_negative(Axis axis, std::string_view letter) {
  if (letter.size() == 1) {
    const char c = words::upper(letter.front());
    const bool north_south = axis == Axis::latitude;
    if (c == (north_south ? 'N' : 'E')) return false;
    if (c == (north_south ? 'S' : 'W')) return true;
  }
  return Error{.what = fmt::format("\"{}\" is not a hemisphere for a {}", letter, axis_name(axis)),
               .remedy = axis == Axis::latitude ? "write N or S" : "write E or W"};
}

Result<Parts> read_packed(std::string_view cell, bool decimal_comma) {
  const std::size_t digits = std::min(cell.find_first_of(decimal_comma ? ".," : "."), cell.size());
  const auto number = fields::parse_number(cell, decimal_comma);
  const bool only_digits = std::all_of(
      cell.begin(), cell.begin() + static_cast<std::ptrdiff_t>(digits), words::is_digit);
  if (!number || !only_digits || digits < 5 || digits > 7) {
    return unreadable(cell, "degrees, minutes and seconds as DDMMSS or DDDMMSS");
  }
  const auto part = [&](std::string_view text) {
    return *fields::parse_number(text, decimal_comma);
  };
  const auto seconds = fields::parse_number(cell.substr(digits - 2), decimal_comma);
  if (!seconds) return unreadable(cell, "degrees, minutes and seconds as DDMMSS or DDDMMSS");
  return Parts{part(cell.substr(0, digits - 4)), part(cell.substr(digits - 4, 2)), *seconds};
}

// Marks follow a number: optional at the end, required between two numbers, never two dashes.
bool is_mark(char c) {
  constexpr std::string_view kMarks = " -:'\"";
  return kMarks.find(c) != std::string_view::npos || static_cast<unsigned char>(c) >= 0x80;
}

// Degrees, minutes and seconds with any marks between them: 44-21-10, 44°21'10.5".
Result<Parts> read_marked(std::string_view cell, bool decimal_comma) {
  constexpr std::string_view kForm = "degrees, minutes and seconds with marks between them";
  const std::string_view whole = cell;
  std::array<double, 3> numbers{};
  std::size_t count = 0;
  while (!cell.empty()) {
    const auto end = std::find_if(cell.begin(), cell.end(), is_mark);
    const auto length = static_cast<std::size_t>(end - cell.begin());
    const auto number = fields::parse_number(cell.substr(0, length), decimal_comma);
    if (!number || *number < 0.0 || count == numbers.size()) return unreadable(whole, kForm);
    numbers[count++] = *number;
    cell.remove_prefix(length);
    const auto next = std::find_if_not(cell.begin(), cell.end(), is_mark);
    const std::string_view marks = cell.substr(0, static_cast<std::size_t>(next - cell.begin()));
    if (std::count(marks.begin(), marks.end(), '-') > 1) return unreadable(whole, kForm);
    cell.remove_prefix(marks.size());
  }
  if (count < 2) return unreadable(whole, kForm);
  return Parts{numbers[0], numbers[1], numbers[2]};
}

Result<Parts> read_separate(const AngleCells& cells, bool decimal_comma) {
  const auto number = [&](std::string_view cell) -> std::optional<double> {
    if (cell.empty()) return 0.0;
    const auto value = fields::parse_number(cell, decimal_comma);
    return value && *value >= 0.0 ? value : std::nullopt;
  };
  const auto degrees = fields::parse_number(cells.whole, decimal_comma);
  if (!degrees) return unreadable(cells.whole, "a number of degrees");
  const auto minutes = number(cells.minutes);
  if (!minutes) return unreadable(cells.minutes, "a number of minutes");
  const auto seconds = number(cells.seconds);
  if (!seconds) return unreadable(cells.seconds, "a number of seconds");
  return Parts{*degrees, *minutes, *seconds};
}

Result<Parts> read_parts(const AngleRule& rule, const AngleCells& cells, bool decimal_comma) {
  if (rule.notation == AngleNotation::packed_dms) {
    const bool marked = std::any_of(cells.whole.begin(), cells.whole.end(), is_mark);
    return marked ? read_marked(cells.whole, decimal_comma)
                  : read_packed(cells.whole, decimal_comma);
  }
  if (rule.notation == AngleNotation::separate) return read_separate(cells, decimal_comma);
  const auto degrees = fields::parse_number(cells.whole, decimal_comma);
  if (!degrees) return unreadable(cells.whole, "a number of degrees");
  return Parts{.degrees = *degrees};
}

Result<ReadAngle> joined_parts(const Parts& parts, bool sixty_seconds_carry) {
  const bool carried = sixty_seconds_carry && parts.seconds == 60.0;
  if (parts.minutes >= 60.0) {
    return Error{.what = fmt::format("{} minutes: an angle has less than 60", parts.minutes)};
  }
  if (parts.seconds >= 60.0 && !carried) {
    return Error{.what = fmt::format("{} seconds: an angle has less than 60", parts.seconds)};
  }
  return ReadAngle{parts.degrees + parts.minutes / 60.0 + parts.seconds / 3600.0, carried};
}

}  // namespace

Result<ReadAngle> read_angle(Axis axis, const AngleRule& rule, AngleCells cells,
                             bool decimal_comma) {
  cells.whole = words::trimmed(cells.whole);
  if (rule.letter_in_cell && !cells.whole.empty()) {
    cells.letter = cells.whole.substr(cells.whole.size() - 1);
    cells.whole = words::trimmed(cells.whole.substr(0, cells.whole.size() - 1));
  }
  if (cells.whole.empty()) return Error{.what = "the cell is empty"};

  const bool has_letter = rule.letter_in_cell || !rule.letter_column.empty();
  bool negative = rule.positive_is_south_or_west;
  if (has_letter) {
    const auto from_letter = letter_is_negative(axis, words::trimmed(cells.letter));
    if (!from_letter) return from_letter.error();
    negative = *from_letter;
  }
  if (cells.whole.front() == '-') {
    if (has_letter) return Error{.what = "the cell has both a minus sign and a letter"};
    cells.whole.remove_prefix(1);
    negative = !negative;
  }
  if (cells.whole.empty() || cells.whole.front() == '-') {
    return unreadable(cells.whole, "a number of degrees");
  }

  const auto parts = read_parts(rule, cells, decimal_comma);
  if (!parts) return parts.error();
  auto angle = joined_parts(*parts, rule.sixty_seconds_carry);
  if (angle && negative) angle->degrees = -angle->degrees;
  return angle;
}

}  // namespace mastwise
