#include "core/geo/degrees_notation.hpp"

#include <array>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace mastwise::notation {
namespace {

using Kind = Token::Kind;

constexpr std::array<std::string_view, 3> kUnits = {"degrees", "minutes", "seconds"};
constexpr std::array<Kind, 3> kMarks = {Kind::Degree, Kind::Minute, Kind::Second};

std::optional<Error> check_part(const Coordinate& coordinate, std::size_t i) {
  const Part& part = coordinate.parts[i];
  if (i >= kUnits.size()) {
    return error_at(
        part.number.at, "a fourth number in one coordinate",
        "give degrees, minutes and seconds, and a comma between latitude and longitude");
  }
  if (part.mark && !part.mark->is(kMarks[i])) {
    return error_at(part.mark->at,
                    fmt::format("\u201C{}\u201D does not mark {}", part.mark->text, kUnits[i]),
                    "write degrees first, then minutes, then seconds");
  }
  if (i > 0 && coordinate.parts[i - 1].number.fraction) {
    return error_at(part.number.at,
                    fmt::format("{} follow a fraction of {}", kUnits[i], kUnits[i - 1]),
                    "only the last number of a coordinate can have a fraction");
  }
  if (i > 0 && part.number.value >= 60.0) {
    return error_at(part.number.at,
                    fmt::format("{} {} are 60 or more", part.number.text, kUnits[i]),
                    fmt::format("give {} below 60", kUnits[i]));
  }
  return std::nullopt;
}

std::optional<Error> check_sides(const Coordinate& coordinate) {
  if (coordinate.letter && coordinate.sign) {
    return error_at(coordinate.sign->at, fmt::format("both a sign and {}", coordinate.letter->text),
                    "use the letter or the sign, not both");
  }
  if (coordinate.letter && coordinate.label && coordinate.letter->axis != coordinate.label->axis) {
    return error_at(
        coordinate.letter->at,
        fmt::format("{} does not belong to {}", coordinate.letter->text, coordinate.label->text),
        "N and S are latitudes, E and W longitudes");
  }
  return std::nullopt;
}

std::optional<Error> check(const Coordinate& coordinate) {
  for (std::size_t i = 0; i < coordinate.parts.size(); ++i) {
    if (auto error = check_part(coordinate, i)) return error;
  }
  return check_sides(coordinate);
}

double signed_degrees(const Coordinate& coordinate) {
  double degrees = 0.0;
  for (std::size_t i = coordinate.parts.size(); i > 0; --i) {
    degrees = degrees / 60.0 + coordinate.parts[i - 1].number.value;
  }
  const bool negative = (coordinate.letter && coordinate.letter->negative) ||
                        (coordinate.sign && coordinate.sign->is(Kind::Minus));
  return negative ? -degrees : degrees;
}

const std::optional<Side>& axis_word(const Coordinate& coordinate) {
  return coordinate.letter ? coordinate.letter : coordinate.label;
}

bool has_side(const Coordinate& coordinate) {
  return coordinate.letter || coordinate.sign;
}

std::optional<Error> check_pair(const Coordinate& first, const Coordinate& second) {
  const auto& one = axis_word(first);
  const auto& other = axis_word(second);
  if (one && other && one->axis == other->axis) {
    const bool latitude = other->axis == Axis::Latitude;
    return error_at(other->at,
                    fmt::format("{} and {} are both {}", one->text, other->text,
                                latitude ? "latitudes" : "longitudes"),
                    latitude ? "write E or W for the longitude" : "write N or S for the latitude");
  }
  if ((one && one->is_label() && !other) || (other && other->is_label() && !one)) {
    return error_at((one ? second : first).at(), "this number has no label",
                    "write lat and lon before their numbers, or neither");
  }
  const Coordinate& lettered = first.letter ? first : second;
  const Coordinate& bare = first.letter ? second : first;
  if (lettered.letter && !has_side(bare)) {
    const bool longitude = lettered.letter->axis == Axis::Latitude;
    return error_at(bare.at(),
                    longitude ? "east or west is missing here" : "north or south is missing here",
                    longitude ? "write E or W, or a sign" : "write N or S, or a sign");
  }
  return std::nullopt;
}

// The given coordinate is the only one.
Error other_missing(const Coordinate& only, std::size_t size) {
  const auto& word = axis_word(only);
  const bool latitude = word && word->axis == Axis::Longitude;
  return error_at(size, latitude ? "the latitude is missing" : "the longitude is missing",
                  "write both, like 44.435217, -71.675993");
}

std::optional<Error> check_range(const Coordinate& coordinate, double degrees, Axis axis,
                                 bool in_order) {
  constexpr double kMetersLikely = 1000.0;
  const double size = degrees < 0.0 ? -degrees : degrees;
  if (size >= kMetersLikely) {
    return error_at(
        coordinate.at(),
        fmt::format("{} is too large for degrees", coordinate.parts.front().number.text),
        "meters of a UTM grid need their zone, like 19N 287027 4923696");
  }
  if (axis == Axis::Latitude && size > 90.0) {
    return error_at(coordinate.at(), "a latitude is over 90 degrees",
                    in_order ? "give latitude first, then longitude, or write N, S, E and W"
                             : "give a latitude from 90 S to 90 N");
  }
  // East of 180 is in use (0 to 360 degrees); west of it is a mistake.
  if (axis == Axis::Longitude && (degrees > 360.0 || degrees < -180.0)) {
    return error_at(coordinate.at(),
                    fmt::format("a longitude is over {} degrees", degrees < 0.0 ? 180 : 360),
                    "give a longitude from 180 W to 180 E");
  }
  return std::nullopt;
}

}  // namespace

Result<Position> parse_degrees(std::vector<Token> tokens, std::size_t size) {
  const auto grouped = group_coordinates(std::move(tokens), size);
  if (!grouped) return grouped.error();
  const std::vector<Coordinate>& coordinates = *grouped;
  for (const Coordinate& coordinate : coordinates) {
    if (auto error = check(coordinate)) return *error;
  }
  if (coordinates.empty()) {
    return error_at(size, "no number found", "write it like 44.435217, -71.675993");
  }
  if (coordinates.size() == 1) return other_missing(coordinates.front(), size);
  if (coordinates.size() > 2) {
    return error_at(coordinates[2].at(), "a third coordinate",
                    "give one latitude and one longitude");
  }
  if (auto error = check_pair(coordinates[0], coordinates[1])) return *error;
  const auto& first_word = axis_word(coordinates[0]);
  const auto& second_word = axis_word(coordinates[1]);
  const bool reversed = (first_word && first_word->axis == Axis::Longitude) ||
                        (second_word && second_word->axis == Axis::Latitude);
  const Coordinate& latitude = coordinates[reversed ? 1 : 0];
  const Coordinate& longitude = coordinates[reversed ? 0 : 1];
  const double latitude_deg = signed_degrees(latitude);
  const double longitude_deg = signed_degrees(longitude);
  const bool in_order = !first_word && !second_word;
  if (auto error = check_range(latitude, latitude_deg, Axis::Latitude, in_order)) return *error;
  if (auto error = check_range(longitude, longitude_deg, Axis::Longitude, in_order)) return *error;
  return Position::at_deg(latitude_deg, longitude_deg);
}

}  // namespace mastwise::notation
