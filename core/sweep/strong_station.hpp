#pragma once

#include "core/result.hpp"
#include "core/sweep/dial.hpp"

#include <cstddef>
#include <optional>
#include <span>

namespace mastwise::aim {

// A station that cannot be missed, and where the dial said it is when peaked.
struct StrongStation {
  Bearing<True> bearing;           // by the map
  double bearing_sigma_deg = 0.0;  // see angle_of_error_deg()
  Bearing<Dial> peak;              // on the compass or handle
  double peak_sigma_deg = 0.0;     // of the fit
  double dial_sigma_deg = 0.0;     // of reading the dial once, at random
};

// Leads from the dial to true north, at this stop and by the same dial only.
struct DialCorrection {
  Turn turn;              // true bearing = dial + turn
  double sigma_deg;       // of the correction
  double dial_sigma_deg;  // of reading the dial once more
  bool implausible;       // over 20 degrees from what was expected
  // The station farthest from the others where they contradict each other by over 3 sigma.
  std::optional<std::size_t> contradicts;
  bool operator==(const DialCorrection&) const = default;
};

// The correction that the stations say together, each weighed by the inverse of its variance: peak
// (+) dial (+) bearing in quadrature. Stations that scatter by more than they should widen the
// error by the root of the reduced chi-square [Birge, Physical Review 40 (1932), 207].
// `expected`: the turn by the map, such as the declination of a compass or the rig's heading of a
// handle's ring. One that is off by over 20 degrees is implausible [common practice, no source]:
// the wrong station was peaked, or a reflection: look for a second lobe.
// Refuses: no station, a sigma that is negative or not finite, a station without any error.
Result<DialCorrection> dial_correction(std::span<const StrongStation> stations,
                                       Turn expected = Turn());

// What stations peaked on say of a dial.
struct DialCheck {
  std::size_t stations = 0;           // at least 1
  std::optional<Error> refused = {};  // why there is no correction
  std::optional<DialCorrection> correction = {};
  Turn off = {};  // of the correction from what was expected; clockwise: the dial reads too low
  bool usable() const { return correction && !correction->implausible; }
  bool operator==(const DialCheck&) const = default;
};

// dial_correction() as a finding; nothing without a station.
std::optional<DialCheck> check_dial(std::span<const StrongStation> stations,
                                    Turn expected = Turn());

// What a dial's heading is in truth, with the error that remains.
struct CorrectedBearing {
  Bearing<True> bearing;
  double sigma_deg;
};
CorrectedBearing to_true(Bearing<Dial> heading, const DialCorrection& correction);

// What the dial must show for a true bearing; its error is that of CorrectedBearing.
Bearing<Dial> to_dial(Bearing<True> bearing, const DialCorrection& correction);

}  // namespace mastwise::aim
