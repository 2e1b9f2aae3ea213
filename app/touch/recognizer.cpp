#include "app/touch/recognizer.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::touch {

using Kind = Gesture::Kind;
using Phase = Gesture::Phase;

Recognizer::Recognizer(float px_per_mm) : px_per_mm_(px_per_mm), slop_px_(kSlopMm * px_per_mm) {}

Recognizer::Fingers::iterator Recognizer::find(std::int64_t id) {
  return std::find_if(fingers_.begin(), fingers_.end(),
                      [&](const Finger& finger) { return finger.id == id; });
}

void Recognizer::feed(const PointerEvent& event) {
  const Point place{event.x_px, event.y_px};
  const auto finger = find(event.finger);
  const bool known = finger != fingers_.end();
  switch (event.kind) {
    case PointerEvent::Kind::Down:
      if (is_finite(place) && !(known && event.at < finger->heard_at)) down(event);
      return;
    case PointerEvent::Kind::Move:
      if (known && is_finite(place) && event.at >= finger->heard_at) move(finger, place, event.at);
      return;
    case PointerEvent::Kind::Up:
    case PointerEvent::Kind::Cancel:
      if (!known) return;
      // Accept a lift at any time and place: a finger must not stay down forever.
      const Monotonic at = std::max(event.at, finger->heard_at);
      const bool up = event.kind == PointerEvent::Kind::Up;
      if (up) move(finger, is_finite(place) ? place : finger->current_px, at);
      lift(finger, up ? Phase::End : Phase::Cancel, at);
      return;
  }
}

void Recognizer::feed(const WheelEvent& event) {
  const Point place{event.x_px, event.y_px};
  if (!is_finite(place) || !std::isfinite(event.notches)) return;
  Gesture gesture;
  gesture.kind = Kind::Wheel;
  gesture.start_px = gesture.current_px = place;
  gesture.delta_px = {0.0F, event.notches * kWheelMm * px_per_mm_};
  gesture.notches = event.notches;
  gesture.at = event.at;
  gestures_.push(gesture);
}

void Recognizer::advance(Monotonic now) {
  const auto due = long_press_due();
  if (!due || now < *due) return;
  state_ = State::Held;
  Finger held = fingers_.front();
  held.heard_at = *due;
  say(Kind::LongPress, Phase::Begin, held);
}

void Recognizer::cancel_all(Monotonic now) {
  while (!fingers_.empty()) {
    lift(fingers_.begin(), Phase::Cancel, std::max(now, fingers_.front().heard_at));
  }
}

std::optional<Recognizer::Press> Recognizer::press() const {
  if (state_ == State::Idle || state_ == State::Paired || state_ == State::Spent) {
    return std::nullopt;
  }
  const Finger& finger = fingers_.front();
  return Press{finger.start_px, finger.current_px, finger.down_at, state_ == State::Pressed,
               state_ == State::Dragging};
}

std::optional<Monotonic> Recognizer::long_press_due() const {
  if (state_ != State::Pressed) return std::nullopt;
  return fingers_.front().down_at + kLongPress;
}

void Recognizer::down(const PointerEvent& event) {
  if (is_echo(event)) return;
  advance(event.at);
  cancel_beside(event);
  const Point place{event.x_px, event.y_px};
  fingers_.push_back({event.finger, place, place, event.at, event.at});
  if (fingers_.size() == 1) start_press(fingers_.front());
  if (fingers_.size() == 2) start_pair(event.at);
}

bool Recognizer::is_echo(const PointerEvent& event) const {
  if (event.finger != kMouse) return false;
  const bool touched = std::any_of(fingers_.begin(), fingers_.end(),
                                   [](const Finger& finger) { return finger.id != kMouse; });
  return touched || (last_lift_ && event.at < *last_lift_ + kEchoTime);
}

// Removes fingers that cannot be down beside the new one: the same finger after a lost lift, a
// finger without events for long, and the finger's mouse echo.
void Recognizer::cancel_beside(const PointerEvent& event) {
  const auto is_gone = [&](const Finger& finger) {
    return finger.id == event.finger || finger.id == kMouse ||
           finger.heard_at + kLostLift <= event.at;
  };
  for (auto gone = std::find_if(fingers_.begin(), fingers_.end(), is_gone); gone != fingers_.end();
       gone = std::find_if(fingers_.begin(), fingers_.end(), is_gone)) {
    lift(gone, Phase::Cancel, std::max(event.at, gone->heard_at));
  }
}

void Recognizer::start_press(const Finger& finger) {
  state_ = State::Pressed;
  velocity_ = {};
  velocity_.add(finger.start_px, finger.down_at);
}

void Recognizer::start_pair(Monotonic at) {
  Finger& first = fingers_[0];
  first.heard_at = std::max(at, first.heard_at);
  if (state_ == State::Held) say(Kind::LongPress, Phase::End, first);
  if (state_ == State::Dragging) say(Kind::Drag, Phase::End, first);
  state_ = State::Paired;
  pair_.emplace(first.current_px, fingers_[1].current_px, slop_px_);
}

void Recognizer::move(Fingers::iterator finger, Point place_px, Monotonic at) {
  advance(at);
  const Point step_px = place_px - finger->current_px;
  finger->current_px = place_px;
  finger->heard_at = at;
  if (step_px == Point{}) return;
  const bool of_pair = finger - fingers_.begin() < 2;
  if (state_ == State::Paired && of_pair) {
    pair_->move(fingers_[0].current_px, fingers_[1].current_px, at, gestures_);
  } else if (state_ != State::Paired && state_ != State::Spent) {
    velocity_.add(place_px, at);
    move_single(*finger, step_px);
  }
}

void Recognizer::move_single(const Finger& finger, Point step_px) {
  if (state_ == State::Pressed && distance(finger.start_px, finger.current_px) > slop_px_) {
    begin_drag(finger);
  } else if (state_ == State::Held) {
    say(Kind::LongPress, Phase::Change, finger, step_px);
  } else if (state_ == State::Dragging) {
    say(Kind::Drag, Phase::Change, finger, step_px);
  }
}

void Recognizer::begin_drag(const Finger& finger) {
  state_ = State::Dragging;
  const Point way = finger.current_px - finger.start_px;
  say(Kind::Drag, Phase::Begin, finger, way - way * (slop_px_ / length(way)));
}

void Recognizer::lift(Fingers::iterator finger, Phase phase, Monotonic at) {
  finger->heard_at = at;
  if (finger->id != kMouse) last_lift_ = at;
  if (state_ == State::Paired) {
    if (finger - fingers_.begin() < 2) {
      pair_->finish(phase, at, gestures_);
      state_ = State::Spent;
    }
  } else if (state_ != State::Spent) {
    lift_single(*finger, phase);
  }
  fingers_.erase(finger);
  if (fingers_.empty()) state_ = State::Idle;
}

void Recognizer::lift_single(const Finger& finger, Phase phase) {
  if (state_ == State::Held) {
    say(Kind::LongPress, phase, finger);
  } else if (state_ == State::Dragging) {
    say(Kind::Drag, phase, finger);
    if (phase == Phase::End) fling(finger);
  } else if (phase == Phase::End) {
    say(Kind::Tap, Phase::End, finger);
  }
}

void Recognizer::fling(const Finger& finger) {
  const Point velocity_px_s = velocity_.at_release(finger.heard_at);
  const float speed_mm_s = length(velocity_px_s) / px_per_mm_;
  if (speed_mm_s < kLeastFlingMmS) return;
  Gesture gesture;
  gesture.kind = Kind::Fling;
  gesture.start_px = finger.start_px;
  gesture.current_px = finger.current_px;
  gesture.velocity_px_s = velocity_px_s * std::min(1.0F, kGreatestFlingMmS / speed_mm_s);
  gesture.at = finger.heard_at;
  gestures_.push(gesture);
}

void Recognizer::say(Kind kind, Phase phase, const Finger& finger, Point delta_px) {
  Gesture gesture;
  gesture.kind = kind;
  gesture.phase = phase;
  gesture.start_px = finger.start_px;
  gesture.current_px = finger.current_px;
  gesture.delta_px = delta_px;
  gesture.began = finger.down_at;
  gesture.at = finger.heard_at;
  gestures_.push(gesture);
}

}  // namespace mastwise::touch
