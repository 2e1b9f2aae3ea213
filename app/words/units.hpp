#pragma once

#include "core/angles/bearing.hpp"

#include <cstdint>
#include <string>

// Lengths and angles as text: the only place that knows miles and feet.
namespace mastwise::words {

inline constexpr double kMile_m = 1609.344;  // international mile and foot, by definition
inline constexpr double kKilometer_m = 1000.0;
inline constexpr double kFoot_m = 0.3048;

// Meters in one distance unit.
constexpr double distance_unit_m(bool miles) {
  return miles ? kMile_m : kKilometer_m;
}
std::string distance_unit(bool miles);                      // "mi", "km"
std::string distance(double distance_m, bool miles);        // "6.4 mi", "0.31 mi", "10.4 km"
std::string whole_distance(double distance_m, bool miles);  // "12 mi"
// Of masts, trees and walks: "210 ft", "64 m"; below 10 m "3.0 m".
std::string height(double height_m, bool miles);

// Of files: "310 kB", "2.4 MB", "40 MB", "11 GB"; decimal.
std::string power(double erp_kw);  // "50 kW", "4.5 kW", "150 W"
std::string bytes(std::uint64_t bytes);

std::string whole_degrees(double degrees);  // "208°", 359.7 is "0°"
template <class North>
std::string whole_degrees(Bearing<North> bearing) {
  return whole_degrees(bearing.degrees());
}
std::string tenths_of_degree(double degrees);          // "14.1°", 359.97 is "0.0°"
std::string plain_degrees(double degrees);             // "208": as a dial has it
std::string amount_of_degrees(double degrees);         // "1 degree", "12 degrees"; ignores the sign
std::string declination(Declination declination);      // "14.1° west"
std::string set_declination(Declination declination);  // "14 W", "0": as a compass is set
std::string octant(Bearing<True> bearing);             // "NE": the nearest of eight
std::string from_nose(RigAngle angle);  // "118° right", "20° left", "straight ahead"
std::string turn(Turn turn);            // "Turn right", "Turn left", "On target"
std::string aside(Turn turn);           // "12 degrees right", "straight along it"

}  // namespace mastwise::words
