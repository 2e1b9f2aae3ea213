#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/nmea/fields.hpp"

#include <optional>
#include <string_view>

namespace mastwise::nmea {

// How a position was found. The first row is no fix. The second row is a fix without satellites,
// which never moves the position. The third is sorted by how much a receiver claims with it.
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

// The contents of one sentence, in the same terms for every type of sentence; std::nullopt for
// values that are missing or out of range.
struct Report {
  std::string_view talker;  // the two letters before the sentence's name, in the sentence itself

  std::optional<TimeOfDay> time;
  std::optional<Date> date;  // as received: may be behind by 1024-week eras

  // Only for sentences about a position: whether there is one and how it was found.
  std::optional<FixQuality> quality;
  std::optional<Position> position;

  std::optional<double> altitude_m;  // above mean sea level
  std::optional<int> satellites;     // in use; many receivers stop counting at 12
  std::optional<double> hdop;
  // 2 or 3; "no fix" is std::nullopt, as one constellation may have none.
  std::optional<int> dimensions;
  std::optional<double> error_m;  // one-sigma horizontal distance: root of latitude^2 + longitude^2

  std::optional<double> speed_mps;
  std::optional<Bearing<True>> course;

  std::optional<Bearing<True>> true_heading;
  std::optional<Bearing<Magnetic>> magnetic_heading;  // the sensor's deviation is applied
  std::optional<Declination> declination;             // by the device's model or setting
};

}  // namespace mastwise::nmea
