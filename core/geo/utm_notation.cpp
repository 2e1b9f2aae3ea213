#include "core/geo/grid_notation.hpp"
#include "core/geo/utm_ups.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <string>

#include <GeographicLib/UTMUPS.hpp>
#include <fmt/format.h>

namespace mastwise::notation {
namespace {

using Kind = Token::Kind;

constexpr std::string_view kUtmExample = "write it like 19N 287027 4923696";
constexpr double kSmallestGridNumber = 1000.0;

struct Zone {
  int number = 0;  // 0 is UPS
  bool north = true;
  char band = ' ';        // C to X where the text has a band
  bool letter_s = false;  // false for the word "south"
  std::size_t at = 0;
  std::size_t letter_at = 0;
};

struct Limits {
  double low_m;
  double high_m;
};

// Source: the ranges of GeographicLib::MGRS::Forward, which include every standard position.
Limits easting_limits(const Zone& zone) {
  if (zone.number > 0) return {100e3, 900e3};
  return zone.north ? Limits{1300e3, 2700e3} : Limits{800e3, 3200e3};
}
Limits northing_limits(const Zone& zone) {
  if (zone.number == 0) return easting_limits(zone);
  return zone.north ? Limits{0.0, 9500e3} : Limits{1000e3, 10000e3};
}

bool is_zone_number(const Token& token) {
  return token.is(Kind::Number) && token.text.size() <= 2 && !token.fraction;
}

bool is_zone_letter(const Token& token) {
  const std::string word = lower(token.text);
  return token.is(Kind::Word) && (word.size() == 1 || word == "north" || word == "south");
}

bool is_label(const Token& token) {
  if (!token.is(Kind::Word)) return false;
  const std::string word = lower(token.text);
  return word == "utm" || word == "ups" || word == "zone";
}

// Removes the labels and the breaks; returns whether there was a label.
bool strip(std::vector<Token>& tokens) {
  const bool labeled = std::any_of(tokens.begin(), tokens.end(), is_label);
  tokens.erase(std::remove_if(tokens.begin(), tokens.end(),
                              [labeled](const Token& token) {
                                return is_label(token) || token.is(Kind::Break) ||
                                       (labeled && token.is(Kind::Colon));
                              }),
               tokens.end());
  return labeled;
}

// Removes the zone's tokens from the front or the back.
std::optional<std::vector<Token>> take_zone(std::vector<Token>& tokens) {
  const auto take = [&tokens](std::ptrdiff_t from, std::ptrdiff_t count) {
    const auto begin = tokens.begin() + from;
    std::vector<Token> taken(begin, begin + count);
    tokens.erase(begin, begin + count);
    return taken;
  };
  const auto size = static_cast<std::ptrdiff_t>(tokens.size());
  if (size < 2) return std::nullopt;
  if (is_zone_number(tokens[0]) && is_zone_letter(tokens[1])) return take(0, 2);
  // A lone letter is a pole's grid only before two numbers: "N442606 W714033" is not.
  const bool meters_follow = size > 2 && tokens[1].is(Kind::Number) &&
                             (tokens[2].is(Kind::Number) || lower(tokens[2].text)[0] == 'm');
  if (is_zone_letter(tokens[0]) && meters_follow) return take(0, 1);
  const Token& last = tokens.back();
  const Token& before = tokens[tokens.size() - 2];
  if (is_zone_number(before) && is_zone_letter(last)) return take(size - 2, 2);
  return std::nullopt;
}

Result<Zone> understand_zone(const std::vector<Token>& tokens) {
  Zone zone;
  const Token& letter = tokens.back();
  zone.at = tokens.front().at;
  zone.letter_at = letter.at;
  if (tokens.size() == 2) {
    zone.number = static_cast<int>(tokens.front().value);
    if (zone.number < 1 || zone.number > 60) {
      return error_at(zone.at, fmt::format("no UTM zone {}", zone.number),
                      "give a zone from 1 to 60");
    }
  }
  const char side = upper(letter.text)[0];
  if (side == 'N' || side == 'S') {
    zone.north = side == 'N';
    zone.letter_s = side == 'S' && letter.text.size() == 1;
    return zone;
  }
  const std::string_view bands = zone.number > 0 ? "CDEFGHJKLMPQRTUVWX" : "ABYZ";
  if (bands.find(side) == std::string_view::npos) {
    return error_at(letter.at,
                    fmt::format("\u201C{}\u201D is neither a hemisphere nor a band", side),
                    "write N or S after the zone's number");
  }
  zone.north = side > 'M';
  if (zone.number > 0) zone.band = side;
  return zone;
}

// Reads a number in meters with an optional unit from `units`; advances `next`.
Result<Token> take_meters(const std::vector<Token>& tokens, std::size_t& next, std::size_t size,
                          std::string_view name, std::array<std::string_view, 3> units) {
  if (next >= tokens.size() || !tokens[next].is(Kind::Number)) {
    return error_at(next < tokens.size() ? tokens[next].at : size,
                    fmt::format("the {} is missing", name), std::string(kUtmExample));
  }
  const Token& number = tokens[next++];
  if (next < tokens.size() && tokens[next].is(Kind::Word)) {
    const std::string unit = lower(tokens[next].text);
    if (std::find(units.begin(), units.end(), unit) == units.end()) {
      return error_at(
          tokens[next].at,
          fmt::format("\u201C{}\u201D does not belong after the {}", tokens[next].text, name),
          std::string(kUtmExample));
    }
    ++next;
  }
  return number;
}

std::optional<Error> check_range(const Token& number, std::string_view name, Limits limits) {
  if (number.value >= limits.low_m && number.value <= limits.high_m) return std::nullopt;
  return error_at(
      number.at,
      fmt::format("the {} {} is not within {:.0f} to {:.0f} m", name, number.text, limits.low_m,
                  limits.high_m),
      "give easting first, then northing, in whole meters, and look at the zone's letter");
}

// The band's southern edge is 8 degrees times its number from C at 80 S; X reaches to 84 N.
std::optional<Error> check_band(const Zone& zone, double latitude_deg) {
  if (zone.band == ' ') return std::nullopt;
  constexpr double kToleranceDeg = 1e-4;  // positions are given to the meter
  const auto number = std::string_view("CDEFGHJKLMNPQRSTUVWX").find(zone.band);
  const double south_deg = -80.0 + 8.0 * static_cast<double>(number);
  const double north_deg = zone.band == 'X' ? 84.0 : south_deg + 8.0;
  if (latitude_deg >= south_deg - kToleranceDeg && latitude_deg <= north_deg + kToleranceDeg) {
    return std::nullopt;
  }
  return error_at(
      zone.letter_at,
      fmt::format("band {} has latitudes from {:.0f} to {:.0f}, but this northing is at "
                  "{:.2f}",
                  zone.band, south_deg, north_deg, latitude_deg),
      "compare the band and the northing with the map");
}

Result<Position> locate(const Zone& zone, const Token& easting, const Token& northing) {
  if (const auto error = check_range(easting, "easting", easting_limits(zone))) return *error;
  if (const auto error = check_range(northing, "northing", northing_limits(zone))) return *error;
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  try {
    if (zone.number > 0 && zone.letter_s &&
        south_looks_like_band(zone.number, easting.value, northing.value)) {
      return error_at(zone.letter_at,
                      "S can mean south or, at this northing, band S (32 to 40 north)",
                      fmt::format("write {} north or {} south", zone.number, zone.number));
    }
    GeographicLib::UTMUPS::Reverse(zone.number, zone.north, easting.value, northing.value,
                                   latitude_deg, longitude_deg, true);
  } catch (const std::exception&) {
    return error_at(easting.at, "this easting and northing are outside the grid",
                    std::string(kUtmExample));
  }
  if (const auto error = check_band(zone, latitude_deg)) return *error;
  return Position::at_deg(latitude_deg, longitude_deg);
}

Result<Position> parse_stripped(std::vector<Token> tokens, const std::vector<Token>& zone_tokens,
                                std::size_t size) {
  const Result<Zone> zone = understand_zone(zone_tokens);
  if (!zone) return zone.error();
  std::size_t next = 0;
  const Result<Token> easting = take_meters(tokens, next, size, "easting", {"m", "me", "e"});
  if (!easting) return easting.error();
  const Result<Token> northing = take_meters(tokens, next, size, "northing", {"m", "mn", "n"});
  if (!northing) return northing.error();
  if (next < tokens.size()) {
    return error_at(tokens[next].at, "a grid reference ends with its northing",
                    "remove the text after it");
  }
  return locate(*zone, *easting, *northing);
}

}  // namespace

std::optional<Result<Position>> parse_utm_ups(std::vector<Token> tokens, std::size_t size) {
  const bool labeled = strip(tokens);
  const bool large = std::any_of(tokens.begin(), tokens.end(), [](const Token& token) {
    return token.is(Kind::Number) && token.value >= kSmallestGridNumber;
  });
  if (!labeled && !large) return std::nullopt;
  const std::size_t begins = tokens.empty() ? size : tokens.front().at;
  const auto zone_tokens = take_zone(tokens);
  if (zone_tokens) return parse_stripped(std::move(tokens), *zone_tokens, size);
  if (!labeled) return std::nullopt;
  return error_at(begins, "the zone is missing", std::string(kUtmExample));
}

}  // namespace mastwise::notation
