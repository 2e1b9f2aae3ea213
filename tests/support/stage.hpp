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
inline constexpr Screen kScreens[]{kHeadUnit, kTablet, kLargeTablet, kUpright};

// The stop of the practice area.
inline const Position kDryLake = *Position::at_deg(42.5, -118.5);

// Mastwise without its window: stores in a separate folder, session, worker, interface. Fingers are
// SDL events, as in the window loop; the test controls the clock. A missing or disabled target
// fails the test.
class Stage {
 public:
  // Nothing listens at the discard port.
  static constexpr const char* kNoServer = "http://127.0.0.1:9";

  // `data_folder`: folder of logbook and catalog; empty makes a temporary one.
  // A very first start goes to the practice area unless `first_start`.
  // `publishers_base`: the server to fetch from; unless a test has one, none answers there.
  explicit Stage(const Screen& screen = kTablet, std::string data_folder = {},
                 bool first_start = false, const std::string& publishers_base = kNoServer);
  ~Stage();
  Stage(const Stage&) = delete;
  Stage& operator=(const Stage&) = delete;

  const Model& model() const { return runtime_->session().model(); }
  shell::Session& session() { return runtime_->session(); }
  const touch::Targets& targets() const { return interface_->targets(); }
  const std::vector<ui::DrawnText>& drawn() const { return interface_->texts(); }
  const ui::Metrics& metrics() const { return interface_->metrics(); }
  bool moving() const { return interface_->moving(); }
  Monotonic now() const { return now_; }
  const Stop& practice_stop() const { return runtime_->practice_stop(); }

  // Applies an action without a finger, to set a test's start state.
  void set(const Action& action);

  void tap(const std::string& target);
  // Taps there, in pixels, whatever is there.
  void tap_at(touch::Point place_px);
  // Taps "key X" for every character X, and "Space" for a space.
  void tap_keys(std::string_view text);
  void hold(const std::string& target, milliseconds time);
  // Holds the confirm button of the open prompt long enough. Counts as a tap.
  void confirm();
  // A finger over the screen from one place to another, in pixels.
  void drag(touch::Point from_px, touch::Point to_px, milliseconds time);
  // A single finger down, move or up, without drawing or passing time.
  void finger(Uint32 sdl_event, touch::Point place_px, SDL_FingerID id = 7);
  // A key of a keyboard down and up, and held for a time with the system's repeats.
  void key(SDL_Keycode key, Uint16 modifiers = KMOD_NONE);
  void hold_key(SDL_Keycode key, milliseconds time);
  void key_event(Uint32 sdl_event, SDL_Keycode key, bool repeat = false,
                 Uint16 modifiers = KMOD_NONE);
  // A keyboard's text.
  void type(std::string_view text);
  // A turn of a wheel at a place of the screen.
  void wheel(touch::Point place_px, float notches);
  // The name of the target with the focus, empty if hidden.
  std::string focused() const;
  // Turns the knob until the focus is on this target.
  void focus(const std::string& target);
  int taps() const { return taps_; }
  touch::Point middle_of(const std::string& target) const;

  // Bytes from the receiver, now.
  void receive(std::string_view bytes);

  // Goes on with another screen, as after a turn of the tablet: scrolling and fingers begin anew.
  void show_on(const Screen& screen);

  // Sets the tablet's calendar, which then goes on from there.
  void set_clock(UtcTime time) { clock_ = time - (now_ - began_); }

  // One round of the window loop: events, clock, answers, frame.
  void round();
  // Rounds until the worker is idle and nothing moves.
  void settle();
  // Passes this much time with rounds.
  void wait(milliseconds time);
  // The same for one round that is late by this much.
  void late_round(milliseconds time);

  // The texts of the last frame in drawing order.
  const std::vector<PictureText>& texts() const;
  // Whether a text equals this; equals or contains this.
  bool shows(std::string_view text) const;
  bool shows_within(std::string_view text) const;
  std::string all_text() const;

 private:
  void skip_first_start();
  const touch::Target& target(const std::string& name) const;

  std::optional<TemporaryFolder> own_folder_;
  std::unique_ptr<shell::Runtime> runtime_;
  std::unique_ptr<shell::Interface> interface_;
  ImDrawData* picture_ = nullptr;
  mutable std::optional<std::vector<PictureText>> texts_;  // of `picture_`, once someone asks
  Monotonic began_;
  UtcTime clock_;  // at `began_`
  Monotonic now_;
  int taps_ = 0;
};

}  // namespace mastwise::test
