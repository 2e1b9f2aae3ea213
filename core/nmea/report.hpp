#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/nmea/fields.hpp"

#include <optional>
#include <string_view>

namespace mastwise::nmea {

// How a position was found. The first row is no fix; the second row is no fix of satellites, and
// never moves the position; the third is in the order of how much a receiver says by it.
enum class FixQuality {
  none,
  estimated,
  manual,
  simulator,
  unspecified,
  autonomous,
  differential,
  precise,
  rtk_float,
  rtk_fixed,
};

constexpr bool is_satellite_fix(FixQuality quality) {
  return quality >= FixQuality::unspecified;
}

// What one sentence said, in the same terms whichever sentence it was; what it did not say, or said
// outside its range, is nothing.
struct Report {
  std::string_view talker;  // the two letters before the sentence's name, in the sentence itself

  std::optional<TimeOfDay> time;
  std::optional<Date> date;  // as the receiver said it: may be behind by 1024-week eras

  // Only of sentences whose subject is a position: whether there is one and how it was found.
  std::optional<FixQuality> quality;
  std::optional<Position> position;

  std::optional<double> altitude_m;  // above mean sea level
  std::optional<int> satellites;     // used in the fix; many receivers stop counting at 12
  std::optional<double> hdop;
  std::optional<int> dimensions;  // 2 or 3; "no fix" is nothing, as one constellation may have none
  std::optional<double> error_m;  // one-sigma horizontal distance: root of latitude^2 + longitude^2

  std::optional<double> speed_mps;
  std::optional<Bearing<True>> course;

  std::optional<Bearing<True>> true_heading;
  std::optional<Bearing<Magnetic>> magnetic_heading;  // the sensor's deviation is applied
  std::optional<Declination> declination;             // by the device's own model or setting
};

}  // namespace mastwise::nmea
