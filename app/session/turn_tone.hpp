#pragma once

#include "app/session/model.hpp"

#include <optional>

namespace mastwise {

// A repeating sound that the speaker plays until the next one.
struct Tone {
  double frequency_hz = 0.0;
  double pulses_per_s = 0.0;  // 0: without a pause
  double other_hz = 0.0;      // every second pulse, if not 0
  double loudness = 1.0;      // of the loudest
  bool operator==(const Tone&) const = default;
};

// The sound to play now; empty: silence. The drive-off alarm comes first. On the roof, with a
// heading sensor on the antenna, pitch and pulse rate rise toward the target. Within the aiming
// tolerance the tone is continuous, so that a person can turn the antenna without looking. Pitches
// suit old ears (500 to 1000 Hz; common practice, no source).
std::optional<Tone> tone_of(const Model& model);

}  // namespace mastwise
