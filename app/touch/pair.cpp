#include "app/touch/pair.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::touch {
namespace {

constexpr double kDegreesPerRadian = 180.0 / std::numbers::pi;

// Clockwise as seen on the screen, because y runs downward there.
double direction_deg(Point from_px, Point to_px) {
  const Point way = to_px - from_px;
  return std::atan2(static_cast<double>(way.y), static_cast<double>(way.x)) * kDegreesPerRadian;
}

}  // namespace

// Fingers closer than the slop count as that far apart, so that the scale stays bounded.
Pair::Pair(Point first_px, Point second_px, float slop_px)
    : slop_px_(slop_px),
      start_px_(middle(first_px, second_px)),
      current_px_(start_px_),
      told_px_(start_px_),
      told_span_px_(std::max(distance(first_px, second_px), slop_px)),
      direction_deg_(direction_deg(first_px, second_px)) {}

void Pair::move(Point first_px, Point second_px, Monotonic at, GestureQueue& gestures) {
  current_px_ = middle(first_px, second_px);
  const float span_px = distance(first_px, second_px);
  // Between fingers that nearly meet the direction is noise.
  if (span_px >= slop_px_) {
    const double now_deg = direction_deg(first_px, second_px);
    untold_turn_deg_ += Turn::clockwise_deg(now_deg - direction_deg_).clockwise_deg();
    direction_deg_ = now_deg;
  }
  Gesture gesture;
  gesture.phase = Gesture::Phase::Change;
  gesture.start_px = start_px_;
  gesture.current_px = current_px_;
  gesture.at = at;
  pinch(std::max(span_px, slop_px_), gesture, gestures);
  turn(std::max(span_px, slop_px_), gesture, gestures);
}

void Pair::pinch(float span_px, Gesture gesture, GestureQueue& gestures) {
  if (!pinching_) {
    const float change_px = span_px - told_span_px_;
    if (std::fabs(change_px) < slop_px_) return;
    pinching_ = true;
    told_span_px_ += std::copysign(slop_px_, change_px);
    told_px_ = current_px_;
    gesture.phase = Gesture::Phase::Begin;
  }
  gesture.kind = Gesture::Kind::Pinch;
  gesture.scale = span_px / told_span_px_;
  gesture.delta_px = current_px_ - told_px_;
  told_span_px_ = span_px;
  told_px_ = current_px_;
  gestures.push(gesture);
}

void Pair::turn(float span_px, Gesture gesture, GestureQueue& gestures) {
  if (!turning_) {
    const double slop_deg = static_cast<double>(slop_px_ / span_px) * kDegreesPerRadian;
    if (std::fabs(untold_turn_deg_) < slop_deg) return;
    turning_ = true;
    untold_turn_deg_ -= std::copysign(slop_deg, untold_turn_deg_);
    gesture.phase = Gesture::Phase::Begin;
  }
  gesture.kind = Gesture::Kind::Turn;
  gesture.turn = Turn::clockwise_deg(untold_turn_deg_);
  untold_turn_deg_ = 0.0;
  gestures.push(gesture);
}

void Pair::finish(Gesture::Phase phase, Monotonic at, GestureQueue& gestures) const {
  Gesture gesture;
  gesture.phase = phase;
  gesture.start_px = start_px_;
  gesture.current_px = current_px_;
  gesture.at = at;
  if (pinching_) {
    gesture.kind = Gesture::Kind::Pinch;
    gestures.push(gesture);
  }
  if (turning_) {
    gesture.kind = Gesture::Kind::Turn;
    gestures.push(gesture);
  }
}

}  // namespace mastwise::touch
