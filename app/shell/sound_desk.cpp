#include "app/shell/sound_desk.hpp"

#include "app/session/turn_tone.hpp"
#include "core/sound/sounds.hpp"

#include <utility>

namespace mastwise::shell {

SoundDesk::Scene SoundDesk::scene_of(const Model& model) {
  if (model.safety.drive == safety::Drive::Alarm) return Scene::Alarm;
  return model.safety.roof ? Scene::Turning : Scene::Quiet;
}

void SoundDesk::speak(const Model& model) {
  const Language language = model.settings.language;
  if (std::exchange(language_, language) != language) voiceless_ = false;
  if (scene_ != scene_of(model)) speaker_.drop();
  scene_ = scene_of(model);
  if (auto words = voice_.take()) {
    voiceless_ = words->empty();
    if (asked_in_ == scene_) speaker_.insert(*std::move(words));
  }
  const bool speaking = voice_.busy() || speaker_.inserting();
  if (const auto words = cues_.next(model, speaking)) {
    asked_in_ = scene_;
    voice_.say(*words);
  }
}

void SoundDesk::confirm_changes(const Model& model) {
  const SafetyState& safety = model.safety;
  const bool changed =
      (antenna_ && *antenna_ != safety.antenna) || (safety.passenger_until && !passenger_);
  antenna_ = safety.antenna;
  passenger_ = safety.passenger_until.has_value();
  if (changed) speaker_.insert(sound::confirm());
}

void SoundDesk::follow(const Model& model) {
  speaker_.play(tone_of(model));
  confirm_changes(model);
  speak(model);
}

std::optional<milliseconds> SoundDesk::due() const {
  constexpr milliseconds kSoon{100};
  if (speaker_.is_open() || voice_.busy()) return kSoon;
  return std::nullopt;
}

}  // namespace mastwise::shell
