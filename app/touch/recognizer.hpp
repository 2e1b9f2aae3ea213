#pragma once

#include "app/touch/events.hpp"
#include "app/touch/gesture.hpp"
#include "app/touch/pair.hpp"
#include "app/touch/velocity.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace mastwise::touch {

// How far a finger may move before a tap becomes a drag. Bare fingers commonly get 8 density
// independent pixels, 1.3 mm; a gloved thumb rolls further. Common practice, no source.
inline constexpr float kSlopMm = 3.0F;
// Hold time of a long press. Common practice (0.4 to 0.6 s), no source.
inline constexpr milliseconds kLongPress{600};
// A finger slower than this at its lift stops the list; speeds above the greatest are glitches of
// the screen and are capped. Common practice, no source.
inline constexpr float kLeastFlingMmS = 40.0F;
inline constexpr float kGreatestFlingMmS = 1500.0F;
// A row of a list for each notch of the wheel. Our choice.
inline constexpr float kWheelMm = 12.0F;
// A mouse press this soon after the last finger's lift counts as the finger's echo. Our choice:
// nobody moves from the screen to the mouse in that time.
inline constexpr milliseconds kEchoTime{500};
// A finger without events this long when another comes down has lost its lift. Our choice.
inline constexpr milliseconds kLostLift{10'000};

// Turns finger, mouse and wheel events into gestures. One finger taps, holds or drags; two pinch or
// turn; a third is ignored. After two fingers the remaining one is ignored too, until all have
// lifted or another joins it. The touch screen has priority: systems turn the first finger into a
// mouse as well, so a mouse press is dropped when a finger comes down beside it, and ignored while
// a finger is down and for kEchoTime after. Events of unknown fingers, moves out of order and
// places that are not finite are ignored.
class Recognizer {
 public:
  // `px_per_mm` of the actual screen, finite and positive.
  explicit Recognizer(float px_per_mm);

  void feed(const PointerEvent& event);
  void feed(const WheelEvent& event);

  // Advances the clock, once a frame after the events: a long press fires while the finger is held.
  void advance(Monotonic now);

  // Lifts all fingers, for a window that lost the focus or a screen that was replaced.
  void cancel_all(Monotonic now);

  // The gestures since last time, in order, each change of a gesture merged into one.
  std::vector<Gesture> take() { return gestures_.take(); }

  // The one finger that is down, to highlight its target. Empty with two fingers.
  struct Press {
    Point start_px;
    Point current_px;
    Monotonic down_at;
    bool may_be_tap = false;  // neither moved away nor held for long
    bool dragged = false;     // left its place
  };
  std::optional<Press> press() const;

  // When advance() will next emit a gesture if no event comes first, so that the app can sleep
  // until then.
  std::optional<Monotonic> long_press_due() const;

  std::size_t fingers_down() const { return fingers_.size(); }

 private:
  enum class State { Idle, Pressed, Held, Dragging, Paired, Spent };
  struct Finger {
    std::int64_t id = 0;
    Point start_px;
    Point current_px;
    Monotonic down_at;
    Monotonic heard_at;
  };
  using Fingers = std::vector<Finger>;

  Fingers::iterator find(std::int64_t id);
  void down(const PointerEvent& event);
  bool is_echo(const PointerEvent& event) const;
  void cancel_beside(const PointerEvent& event);
  void start_press(const Finger& finger);
  void start_pair(Monotonic at);
  void move(Fingers::iterator finger, Point place_px, Monotonic at);
  void move_single(const Finger& finger, Point step_px);
  void begin_drag(const Finger& finger);
  void lift(Fingers::iterator finger, Gesture::Phase phase, Monotonic at);
  void lift_single(const Finger& finger, Gesture::Phase phase);
  void fling(const Finger& finger);
  void say(Gesture::Kind kind, Gesture::Phase phase, const Finger& finger, Point delta_px = {});

  float px_per_mm_;
  float slop_px_;
  State state_ = State::Idle;
  Fingers fingers_;  // in the order they came down; the pair is the first two
  Velocity velocity_;
  std::optional<Pair> pair_;
  std::optional<Monotonic> last_lift_;  // of a finger, not of the mouse
  GestureQueue gestures_;
};

}  // namespace mastwise::touch
