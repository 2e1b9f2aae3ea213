#include "app/words/units.hpp"

#include "app/words/phrases.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::words {

std::string distance_unit(bool miles) {
  return miles ? phrases().units.mile : phrases().units.kilometer;
}

std::string distance(double distance_m, bool miles) {
  const double value = distance_m / distance_unit_m(miles);
  const int decimals = value < 1.0 ? 2 : value < 99.95 ? 1 : 0;
  return fmt::format("{:.{}f} {}", value, decimals, distance_unit(miles));
}

std::string whole_distance(double distance_m, bool miles) {
  return fmt::format("{:.0f} {}", distance_m / distance_unit_m(miles), distance_unit(miles));
}

std::string height(double height_m, bool miles) {
  if (miles) return fmt::format("{:.0f} {}", height_m / kFoot_m, phrases().units.foot);
  const int decimals = std::fabs(height_m) < 9.95 ? 1 : 0;
  return fmt::format("{:.{}f} {}", height_m, decimals, phrases().units.meter);
}

std::string plain_degrees(double degrees) {
  return std::to_string(std::lround(fold_circle_deg(degrees)) % 360);
}

std::string power(double erp_kw) {
  return erp_kw < 1.0 ? fmt::format("{:.0f} W", 1000.0 * erp_kw)
                      : fmt::format("{:.{}f} kW", erp_kw, erp_kw < 10.0 ? 1 : 0);
}

std::string bytes(std::uint64_t bytes) {
  constexpr double kKilo = 1e3, kMega = 1e6, kGiga = 1e9, kOneDigit = 10.0;
  const auto size = static_cast<double>(bytes);
  const auto words = [](double number, const char* unit) {
    return fmt::format("{:.{}f} {}", number, number < kOneDigit ? 1 : 0, unit);
  };
  if (size < kMega) return fmt::format("{:.0f} kB", std::ceil(size / kKilo));
  return size < kGiga ? words(size / kMega, "MB") : words(size / kGiga, "GB");
}

std::string whole_degrees(double degrees) {
  return fmt::format("{}°", static_cast<int>(std::lround(degrees)) % 360);
}

std::string tenths_of_degree(double degrees) {
  return fmt::format("{:.1f}°", static_cast<double>(std::lround(degrees * 10.0) % 3600) / 10.0);
}

std::string amount_of_degrees(double degrees) {
  const long whole = std::lround(std::fabs(degrees));
  if (whole == 1) return phrases().units.one_degree;
  return fill(phrases().units.degrees, {{"number", std::to_string(whole)}});
}

std::string declination(Declination declination) {
  const double degrees = declination.east_deg();
  return fmt::format("{:.1f}° {}", std::fabs(degrees),
                     degrees < 0.0 ? phrases().units.west : phrases().units.east);
}

std::string set_declination(Declination declination) {
  const double degrees = declination.east_deg();
  const long whole = std::lround(std::fabs(degrees));
  if (whole == 0) return "0";
  return fmt::format("{} {}", whole,
                     degrees < 0.0 ? phrases().units.west_letter : phrases().units.east_letter);
}

std::string octant(Bearing<True> bearing) {
  const auto& octants = phrases().units.octants;
  return octants[static_cast<std::size_t>(std::lround(bearing.degrees() / 45.0)) % octants.size()];
}

std::string from_nose(RigAngle angle) {
  const double right_deg = fold_half_circle_deg(angle.clockwise_deg());
  const long whole = std::lround(std::fabs(right_deg));
  if (whole == 0) return phrases().units.straight_ahead;
  if (whole == 180) return phrases().units.straight_behind;
  return fill(right_deg > 0.0 ? phrases().units.right : phrases().units.left,
              {{"degrees", fmt::format("{}°", whole)}});
}

std::string turn(Turn turn) {
  if (std::lround(turn.size_deg()) == 0) return phrases().units.on_target;
  return turn.clockwise_deg() > 0.0 ? phrases().units.turn_right : phrases().units.turn_left;
}

std::string aside(Turn turn) {
  if (std::lround(turn.size_deg()) == 0) return phrases().units.straight_along;
  return fill(turn.clockwise_deg() > 0.0 ? phrases().units.right : phrases().units.left,
              {{"degrees", amount_of_degrees(turn.clockwise_deg())}});
}

}  // namespace mastwise::words
