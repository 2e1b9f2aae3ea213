#include "core/geo/grid_notation.hpp"

#include <exception>
#include <string>

#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <fmt/format.h>

namespace mastwise::notation {
namespace {

constexpr std::string_view kExample = "write it like 19TBK 87027 23696";

// The text without spaces and in capitals, with the original place of each character.
struct Compact {
  std::string text;
  std::vector<std::size_t> at;

  std::size_t size() const { return text.size(); }
  std::size_t digits_from(std::size_t begin) const {
    std::size_t end = begin;
    while (end < size() && is_digit(text[end])) ++end;
    return end;
  }
  std::size_t letters_from(std::size_t begin) const {
    std::size_t end = begin;
    while (end < size() && is_letter(text[end])) ++end;
    return end;
  }
};

Compact compact(std::string_view text) {
  Compact result;
  for (std::size_t i = 0; i < text.size();) {
    if (const std::size_t space = space_size(text, i)) {
      i += space;
      continue;
    }
    result.text += text[i];
    result.at.push_back(i++);
  }
  result.text = upper(result.text);
  if (result.text.rfind("MGRS", 0) == 0) {
    const std::size_t label = result.text.rfind("MGRS:", 0) == 0 ? 5 : 4;
    result.text.erase(0, label);
    result.at.erase(result.at.begin(), result.at.begin() + static_cast<std::ptrdiff_t>(label));
  }
  return result;
}

// The reference's parts in the compact text: zone [0, band), band, square [band + 1, digits),
// digits.
struct Shape {
  std::size_t band;
  std::size_t digits;
};

std::optional<Shape> shape_of(const Compact& reference, std::string_view written) {
  const std::size_t band = reference.digits_from(0);
  const std::size_t digits = reference.letters_from(band);
  if (band > 2 || digits != band + 3) return std::nullopt;
  if (digits < reference.size() && !is_digit(reference.text[digits])) return std::nullopt;
  if (band == 0 && std::string_view("ABYZ").find(reference.text[0]) == std::string_view::npos) {
    return std::nullopt;
  }
  // "44 deg 26" is degrees, "44 lat" a label. They are squares only in capitals and attached to the
  // zone.
  const std::string letters = reference.text.substr(band, 3);
  if (letters == "DEG" || letters == "LAT" || letters == "LON") {
    const bool square_like = written.substr(reference.at[0], band + 3) ==
                                 std::string_view(reference.text).substr(0, band + 3) &&
                             reference.digits_from(digits) == reference.size();
    if (!square_like) return std::nullopt;
  }
  return Shape{.band = band, .digits = digits};
}

std::optional<Error> check_letters(const Compact& reference, const Shape& shape) {
  if (shape.band > 0) {
    const int zone = std::stoi(reference.text.substr(0, shape.band));
    if (zone < 1 || zone > 60) {
      return error_at(reference.at[0], fmt::format("no zone {}", zone), "give a zone from 1 to 60");
    }
    const char band = reference.text[shape.band];
    if (band < 'C' || band > 'X' || band == 'I' || band == 'O') {
      return error_at(reference.at[shape.band], fmt::format("no latitude band {}", band),
                      "give a band from C to X, without I and O");
    }
  }
  for (std::size_t i = shape.band + 1; i < shape.digits; ++i) {
    if (reference.text[i] == 'I' || reference.text[i] == 'O') {
      return error_at(reference.at[i],
                      fmt::format("no square has the letter {}", reference.text[i]),
                      "check if it is the digit 1 or 0, or another letter");
    }
  }
  return std::nullopt;
}

// The place of a space inside the digits, or std::nullopt; an error for more than one space.
Result<std::optional<std::size_t>> gap_in_digits(const Compact& reference, const Shape& shape) {
  std::optional<std::size_t> gap;
  for (std::size_t i = shape.digits + 1; i < reference.size(); ++i) {
    if (reference.at[i] == reference.at[i - 1] + 1) continue;
    if (gap) {
      return error_at(reference.at[i], "a third group of digits", std::string(kExample));
    }
    gap = i;
  }
  return gap;
}

std::optional<Error> check_digits(const Compact& reference, const Shape& shape, std::size_t size) {
  constexpr std::size_t kMostDigits = 22;
  constexpr std::size_t kFewestDigits = 4;
  const std::size_t end = reference.digits_from(shape.digits);
  if (end < reference.size()) {
    return error_at(reference.at[end], "an MGRS reference ends with its digits",
                    "remove the text after them");
  }
  const std::size_t count = end - shape.digits;
  const auto gap = gap_in_digits(reference, shape);
  if (!gap) return gap.error();
  if (*gap && (**gap - shape.digits) * 2 != count) {
    return error_at(
        reference.at[**gap],
        fmt::format("{} digits of northing after {} of easting", end - **gap, **gap - shape.digits),
        "give both the same number of digits");
  }
  if (count % 2 != 0) {
    return error_at(reference.at[end - 1], fmt::format("an odd number of digits ({})", count),
                    "give easting and northing the same number of digits");
  }
  if (count < kFewestDigits) {
    return error_at(size, "the square is larger than 1 km, too coarse to aim from",
                    "give two to five digits each of easting and northing");
  }
  if (count > kMostDigits) {
    return error_at(reference.at[shape.digits + kMostDigits], "too many digits",
                    "five digits each are enough for 1 m");
  }
  return std::nullopt;
}

}  // namespace

std::optional<Result<Position>> parse_mgrs(std::string_view text) {
  const Compact reference = compact(text);
  const std::optional<Shape> shape = shape_of(reference, text);
  if (!shape) return std::nullopt;
  if (const auto error = check_letters(reference, *shape)) return *error;
  if (const auto error = check_digits(reference, *shape, text.size())) return *error;
  try {
    int zone = 0;
    bool north = false;
    int precision = 0;
    double easting_m = 0.0;
    double northing_m = 0.0;
    double latitude_deg = 0.0;
    double longitude_deg = 0.0;
    GeographicLib::MGRS::Reverse(reference.text, zone, north, easting_m, northing_m, precision);
    GeographicLib::UTMUPS::Reverse(zone, north, easting_m, northing_m, latitude_deg, longitude_deg);
    return Position::at_deg(latitude_deg, longitude_deg);
  } catch (const std::exception&) {
    return error_at(reference.at[shape->band + 1],
                    fmt::format("{} has no square {}", reference.text.substr(0, shape->band + 1),
                                reference.text.substr(shape->band + 1, 2)),
                    "compare zone, band and square with the map");
  }
}

}  // namespace mastwise::notation
