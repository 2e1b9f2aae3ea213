#pragma once

#include "app/touch/gesture.hpp"

namespace mastwise::touch {

// Two fingers on the screen: a Pinch, a Turn, or both. Each begins when one finger has moved by the
// slop relative to the other: toward or away for a Pinch, around for a Turn. Each reports only the
// movement beyond the slop, so that nothing jumps.
class Pair {
 public:
  Pair(Point first_px, Point second_px, float slop_px);

  void move(Point first_px, Point second_px, Monotonic at, GestureQueue& gestures);

  // Emits End or Cancel for each begun gesture.
  void finish(Gesture::Phase phase, Monotonic at, GestureQueue& gestures) const;

 private:
  void pinch(float span_px, Gesture gesture, GestureQueue& gestures);
  void turn(float span_px, Gesture gesture, GestureQueue& gestures);

  float slop_px_;
  Point start_px_;  // the point between the fingers
  Point current_px_;
  Point told_px_;         // at the last Pinch
  float told_span_px_;    // finger distance at the last Pinch
  double direction_deg_;  // from the first finger to the second, clockwise from the right
  double untold_turn_deg_ = 0.0;
  bool pinching_ = false;
  bool turning_ = false;
};

}  // namespace mastwise::touch
