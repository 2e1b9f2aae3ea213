#pragma once

#include "app/touch/gesture.hpp"

namespace mastwise::touch {

// How far a list or a page is scrolled. It follows the finger, glides on after a fling and stops at
// its ends.
class Scroll {
 public:
  // The heights of the whole content and of the part seen, once a frame; what is scrolled beyond
  // them is taken back.
  void set_extent(float content_px, float view_px);

  // Pixels of the content above the upper edge of the view, from 0 to greatest_px().
  float offset_px() const { return offset_px_; }
  float greatest_px() const { return greatest_px_; }

  // Moves the content by a finger or a wheel, positive downward. A glide ends.
  void drag(float dy_px);

  // Lets the content glide from this speed, positive downward.
  void fling(float velocity_px_s);

  // A Drag, Fling or Wheel that began on this list; other gestures do nothing.
  void apply(const Gesture& gesture);

  // Holds a gliding list, as a finger does that comes down on it.
  void stop() { velocity_px_s_ = 0.0F; }

  // Glides on for so many seconds. Returns whether it still moves: if not, no further frame need be
  // drawn. The result does not depend on how the time is cut into frames.
  bool advance(float seconds);

  bool moving() const { return velocity_px_s_ != 0.0F; }

 private:
  void move_to(float offset_px);

  float offset_px_ = 0.0F;
  float greatest_px_ = 0.0F;
  float velocity_px_s_ = 0.0F;  // of the content, positive downward
};

}  // namespace mastwise::touch
