#pragma once

#include "app/model/model.hpp"

#include <optional>

namespace mastwise {

// A sound that repeats: what the speaker plays until it is told otherwise.
struct Tone {
  double frequency_hz = 0.0;
  double pulses_per_s = 0.0;  // 0: without a pause
  double other_hz = 0.0;      // every second pulse, where it is not 0
  double loudness = 1.0;      // of the loudest
  bool operator==(const Tone&) const = default;
};

// What should sound now; nothing: silence. The drive-off alarm goes before all. On the roof, with a
// heading sensor on the antenna, the pitch rises to the target and the pulses come closer, and
// within the slack it sounds without a pause: so that it can be turned with the eyes on the hands.
// Pitches lie where old ears still hear (500 to 1000 Hz; common practice, no source).
std::optional<Tone> tone_of(const Model& model);

}  // namespace mastwise
