#pragma once

#include "app/shared/shared.hpp"

#include <optional>

namespace mastwise {

// How the antenna points, by a heading sensor that turns with it.
struct Aimed {
  enum class State {
    Off,   // turn it
    Good,  // the heading with its whole uncertainty is inside the aiming tolerance
    Best,  // on the heading, as exactly as the sensor knows; the tolerance is narrower, or unknown
  };
  State state = State::Off;
  Turn turn;               // to the target's heading
  double doubt_deg = 0.0;  // of the sensor's heading, in 95 of 100 cases
  bool operator==(const Aimed&) const = default;
};

// What the roof shows, the tone sounds and the voice says. Empty without a sensor or a target. The
// doubt is 1.96 times the sensor's error budget (core/headings/heading_error.hpp), the usual factor
// for 95 % of a normal error.
std::optional<Aimed> aimed(const Shared& shared);

// The state of a turn with this doubt and tolerance, where they are known.
Aimed::State aimed_state(Turn turn, double doubt_deg, const std::optional<Slack>& slack);

}  // namespace mastwise
