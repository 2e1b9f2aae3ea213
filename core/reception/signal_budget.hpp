#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::reception {

// Where a signal goes on its way from the transmitter to the picture.
enum class SignalLoss : std::uint8_t {
  distance,             // as in free space, between half-wave dipoles
  transmitter_pattern,  // of a directional station toward the stop, known or assumed
  ridge,
  earth_curve,
  ground,        // the rest of the ground's loss; negative where the ground reflects
  low_antenna,   // over open ground
  surroundings,  // an antenna among houses or trees
  leaves,
  beside,  // an obstacle that a person marked on its side
  polarization,
  heading,        // the mean loss from the heading error
  amplifier_off,  // it has no power, or is off because strong signals overload it
  noise,          // from outside, above the receiver's own
  same_channel,   // a station on the same channel, or several
  next_channel,   // a station on a neighboring channel, or several
  helpers,        // negative: other transmitters of the program on the channel
  logbook,        // earlier stops came in worse than computed; negative: better
};
inline constexpr std::size_t kSignalLosses = 17;
// The name for storage: "transmitter_pattern".
std::string_view to_text(SignalLoss what);

struct SignalStep {
  SignalLoss what = SignalLoss::distance;
  double decibel = 0.0;      // what it takes; negative: what it adds
  double distance_m = 0.0;   // of `distance`, ridge and interferers: from the stop
  double height_m = 0.0;     // of `low_antenna` and `surroundings`: the antenna above ground
  std::string station = {};  // call sign of the worst interferer; may be empty
  bool operator==(const SignalStep&) const = default;
};

// The link budget of one station at one stop: from the transmitter's power to the margin.
struct SignalBudget {
  double erp_kw = 0.0;
  // The power at the antenna's terminals if nothing were lost on the way, above what the TV needs
  // against the noise of its own receiver [planning factors of FCC Sixth Report and Order App. A].
  double tower_db = 0.0;
  std::vector<SignalStep> steps = {};  // in the order of SignalLoss; none of 0 dB
  double margin_db = 0.0;              // tower_db less all steps: the outlook's margin
  // The margins by each of the models alone; std::nullopt in area mode, which has one model.
  std::optional<double> margin_p1812_db = {}, margin_itm_db = {};
  bool operator==(const SignalBudget&) const = default;
};

}  // namespace mastwise::reception
