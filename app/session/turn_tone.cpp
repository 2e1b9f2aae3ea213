#include "app/session/turn_tone.hpp"

#include "app/aim/aimed.hpp"
#include "app/safety/update.hpp"
#include "core/sound/sounds.hpp"

namespace mastwise {

std::optional<sound::Tone> tone_of(const Model& model) {
  if (model.safety.drive == safety::Drive::Alarm) {
    return sound::alarm(alarm_is_quiet(model.safety, model.now));
  }
  if (!model.safety.roof || !model.settings.tone) return std::nullopt;
  const auto pointing = aimed(model);
  if (!pointing) return std::nullopt;
  return pointing->state == Aimed::State::Off ? sound::turning(pointing->turn)
                                              : sound::on_heading();
}

}  // namespace mastwise
