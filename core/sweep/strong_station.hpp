#pragma once

#include "core/result.hpp"
#include "core/sweep/dial.hpp"

#include <cstddef>
#include <optional>
#include <span>

namespace mastwise::aim {

// A station that is easy to find, and the dial's reading at its peak.
struct StrongStation {
  Bearing<True> bearing;           // by the map
  double bearing_sigma_deg = 0.0;  // see angle_of_error_deg()
  Bearing<Dial> peak;              // on the compass or handle
  double peak_sigma_deg = 0.0;     // of the fit
  double dial_sigma_deg = 0.0;     // of reading the dial once, at random
};

// Converts the dial to true north, valid only at this stop and with the same dial.
struct DialCorrection {
  Turn turn;              // true bearing = dial + turn
  double sigma_deg;       // of the correction
  double dial_sigma_deg;  // of reading the dial once more
  bool implausible;       // over 20 degrees from the expected turn
  // The station farthest from the others if they contradict each other by over 3 sigma.
  std::optional<std::size_t> contradicts;
  bool operator==(const DialCorrection&) const = default;
};

// The common correction from all stations, each with the weight of its inverse variance: peak (+)
// dial (+) bearing in quadrature. Stations that scatter more than expected widen the error by the
// root of the reduced chi-square [Birge, Physical Review 40 (1932), 207]. `expected`: the turn by
// the map, such as the declination of a compass or the rig heading for a handle's ring. A turn that
// differs by over 20 degrees is implausible [common practice, no source]: the peak was of the wrong
// station or of a reflection; look for a second lobe. Errors: no station, a sigma that is negative
// or not finite, a station without any error.
Result<DialCorrection> dial_correction(std::span<const StrongStation> stations,
                                       Turn expected = Turn());

// The evidence of peaked stations about a dial.
struct DialCheck {
  std::size_t stations = 0;           // at least 1
  std::optional<Error> refused = {};  // why there is no correction
  std::optional<DialCorrection> correction = {};
  Turn off = {};  // of the correction from the expected one; clockwise: the dial reads too low
  bool usable() const { return correction && !correction->implausible; }
  bool operator==(const DialCheck&) const = default;
};

// dial_correction() as a finding; std::nullopt without a station.
std::optional<DialCheck> check_dial(std::span<const StrongStation> stations,
                                    Turn expected = Turn());

// The true bearing of a dial's heading, with the remaining error.
struct CorrectedBearing {
  Bearing<True> bearing;
  double sigma_deg;
};
CorrectedBearing to_true(Bearing<Dial> heading, const DialCorrection& correction);

// The dial reading for a true bearing; its error is that of CorrectedBearing.
Bearing<Dial> to_dial(Bearing<True> bearing, const DialCorrection& correction);

}  // namespace mastwise::aim
