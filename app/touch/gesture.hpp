#pragma once

#include "app/touch/geometry.hpp"
#include "core/angles/bearing.hpp"
#include "core/time.hpp"

#include <vector>

namespace mastwise::touch {

// The kinds of gestures.
struct Gesture {
  enum class Kind {
    Tap,        // one finger, short, in place; phase End
    LongPress,  // one finger held in place; Begin while still held, Change as it then moves, End
    Drag,       // one finger that left its place
    Fling,      // follows the End of a Drag whose finger was still moving; phase End
    Pinch,      // two fingers apart or together
    Turn,       // two fingers about each other; may go on together with a Pinch
    Wheel,      // phase End
  };
  enum class Phase { Begin, Change, End, Cancel };

  Kind kind = Kind::Tap;
  Phase phase = Phase::End;
  // Where the finger went down, or the point between the two; selects the widget.
  Point start_px;
  Point current_px;
  // Movement since the gesture's last entry. A drag's deltas add up to the finger's path minus the
  // slop, so that nothing jumps when the drag begins. For a Pinch it is the path of the point
  // between the fingers. A Turn has none.
  Point delta_px;
  Point velocity_px_s;   // of a Fling
  float scale = 1.0F;    // of a Pinch: factor about current_px since last, more than 1 when apart
  mastwise::Turn turn;   // of a Turn: about current_px since last, clockwise as seen on the screen
  float notches = 0.0F;  // of a Wheel
  Monotonic began = {};  // of one finger: when it went down
  Monotonic at;
};

// Gestures waiting for the next frame. Changes of one gesture, and turns of the wheel over one
// place, become a single entry, however many events the screen sends between two frames.
class GestureQueue {
 public:
  void push(const Gesture& gesture);
  std::vector<Gesture> take();

 private:
  std::vector<Gesture> waiting_;
};

}  // namespace mastwise::touch
