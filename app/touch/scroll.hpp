#pragma once

#include "app/touch/gesture.hpp"

namespace mastwise::touch {

// The scroll offset of a list or page. It follows the finger, glides after a fling and stops at its
// ends.
class Scroll {
 public:
  // Sets the heights of the content and the view, once a frame; clamps the offset to them.
  void set_extent(float content_px, float view_px);

  // Pixels of the content above the upper edge of the view, from 0 to greatest_px().
  float offset_px() const { return offset_px_; }
  float greatest_px() const { return greatest_px_; }

  // Moves the content by a finger or a wheel, positive downward. Ends a glide.
  void drag(float dy_px);

  // Starts a glide at this speed, positive downward.
  void fling(float velocity_px_s);

  // Applies a Drag, Fling or Wheel that began on this list; ignores other gestures.
  void apply(const Gesture& gesture);

  // Moves as little as shows what lies at these places of the window, in the view between
  // `view_top` and `view_bottom`; of what is higher than the view, its upper part. True if it
  // moved.
  bool reveal(float top_px, float bottom_px, float view_top_px, float view_bottom_px);

  // Stops a gliding list, like a finger that comes down on it.
  void stop() { velocity_px_s_ = 0.0F; }

  // Glides for `seconds`. Returns whether it still moves and needs another frame. The result does
  // not depend on the frame rate.
  bool advance(float seconds);

  bool moving() const { return velocity_px_s_ != 0.0F; }

 private:
  void move_to(float offset_px);

  float offset_px_ = 0.0F;
  float greatest_px_ = 0.0F;
  float velocity_px_s_ = 0.0F;  // of the content, positive downward
};

}  // namespace mastwise::touch
