#pragma once

#include "app/session/spoken_cues.hpp"
#include "app/shell/speaker.hpp"
#include "app/shell/voice.hpp"

#include <functional>
#include <optional>

namespace mastwise::shell {

// Lets the model be heard: its tone, its words, and a confirming sound when the antenna's mark has
// changed or a passenger has unlocked the screens.
class SoundDesk {
 public:
  // `wake` wakes the loop when words have become sound.
  explicit SoundDesk(std::function<void()> wake) : voice_(std::move(wake)) {}

  // Call after every change of the model, and as often as due() says.
  void follow(const Model& model);
  // How long the loop may sleep without a sound coming late; empty while all is silent.
  std::optional<milliseconds> due() const;
  // Whether the last words in this language had no voice.
  bool voiceless() const { return voiceless_; }

 private:
  // What the words are about: when it changes, the old ones are cut off.
  enum class Scene { Quiet, Turning, Alarm };
  static Scene scene_of(const Model& model);
  void speak(const Model& model);
  void confirm_changes(const Model& model);

  Speaker speaker_;
  Voice voice_;
  SpokenCues cues_;
  Scene scene_ = Scene::Quiet, asked_in_ = Scene::Quiet;
  std::optional<safety::Antenna> antenna_;  // last heard
  bool passenger_ = false;
  Language language_ = Language::English;  // of the last words
  bool voiceless_ = false;
};

}  // namespace mastwise::shell
