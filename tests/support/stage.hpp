#pragma once

#include "app/shell/interface.hpp"
#include "app/shell/runtime.hpp"
#include "tests/support/picture_text.hpp"
#include "tests/support/temporary_folder.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <SDL.h>

namespace mastwise::test {

// A screen with its usual dots per inch.
struct Screen {
  const char* name;
  float width_px, height_px, dots_per_inch;
};
inline constexpr Screen kHeadUnit{"800x480", 800.0f, 480.0f, 133.0f};
inline constexpr Screen kTablet{"1280x800", 1280.0f, 800.0f, 189.0f};
inline constexpr Screen kLargeTablet{"1920x1200", 1920.0f, 1200.0f, 224.0f};
inline constexpr Screen kUpright{"800x1280", 800.0f, 1280.0f, 189.0f};

// The whole program but for its window: stores in a folder of its own, session, worker, interface.
// Fingers go in as SDL's events the way that the program's loop takes them; the clock is the
// test's. A target that is missing or disabled fails the test.
class Stage {
 public:
  // `data_folder`: where logbook and catalog lie; a temporary one where empty.
  explicit Stage(const Screen& screen = kTablet, std::string data_folder = {});
  ~Stage();
  Stage(const Stage&) = delete;
  Stage& operator=(const Stage&) = delete;

  const Model& model() const { return runtime_->session().model(); }
  shell::Session& session() { return runtime_->session(); }
  const touch::Targets& targets() const { return interface_->targets(); }
  const ui::Metrics& metrics() const { return interface_->metrics(); }
  bool moving() const { return interface_->moving(); }
  Monotonic now() const { return now_; }
  const Stop& practice_stop() const { return runtime_->practice_stop(); }

  // What does the act without a finger, for the state that a test begins from.
  void set(const Action& action);

  void tap(const std::string& target);
  // Taps "key X" for every character X, and "Space" for a space.
  void tap_keys(std::string_view text);
  void hold(const std::string& target, milliseconds time);
  // Holds what confirms the open prompt, as long as it asks for. Counts as a tap.
  void confirm();
  // A finger over the screen from one place to another, in pixels.
  void drag(touch::Point from_px, touch::Point to_px, milliseconds time);
  // A finger down, moved or up on its own; nothing is drawn and no time goes by.
  void finger(Uint32 sdl_event, touch::Point place_px, SDL_FingerID id = 7);
  int taps() const { return taps_; }
  touch::Point middle_of(const std::string& target) const;

  // Bytes from the receiver, now.
  void receive(std::string_view bytes);

  // One round of the program's loop: events, clock, answers, frame.
  void round();
  // Rounds until the worker has nothing to do and nothing moves.
  void settle();
  // So much time goes by, with rounds in it.
  void wait(milliseconds time);
  // The same for one round that comes late by so much.
  void late_round(milliseconds time);

  // What the last frame says, each piece of text in the order drawn.
  std::vector<PictureText> texts() const { return texts_of(*picture_); }
  // A piece of text is exactly this; is or contains this.
  bool shows(std::string_view text) const;
  bool shows_within(std::string_view text) const;
  std::string all_text() const;

 private:
  const touch::Target& target(const std::string& name) const;

  std::optional<TemporaryFolder> own_folder_;
  std::unique_ptr<shell::Runtime> runtime_;
  std::unique_ptr<shell::Interface> interface_;
  ImDrawData* picture_ = nullptr;
  Monotonic began_;
  Monotonic now_;
  int taps_ = 0;
};

}  // namespace mastwise::test
