#pragma once

#include "app/session/model.hpp"
#include "core/sound/tone.hpp"

#include <optional>

namespace mastwise {

// The tone to sound now; empty: silence. The drive-off alarm comes first. On the roof, with a
// heading sensor on the antenna, the tone tells how far to turn it and which way; on the heading it
// is continuous, so that a person can turn the antenna without looking (core/sound/sounds.hpp).
std::optional<sound::Tone> tone_of(const Model& model);

}  // namespace mastwise
