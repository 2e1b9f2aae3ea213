#pragma once

#include "core/time.hpp"

#include <algorithm>
#include <optional>

namespace mastwise::touch {

// A prompt ignores touches this long after it is first drawn: a double tap must not pass it.
// People tap twice within 0.5 s (common practice, no source).
inline constexpr milliseconds kPromptRest{700};
// Time to hold a prompt's button. Our choice: longer than any tap or long press.
inline constexpr milliseconds kHoldToConfirm{800};
// Time for a passenger to hold the button that unlocks the screens under way. Our choice: longer
// than the 2 s of a driver's glance [NHTSA visual-manual guidelines, 78 FR 24817].
inline constexpr milliseconds kHoldToUnlock{3'000};

// Detects a long enough hold of a prompt's button. A touch that began before the prompt was drawn
// for kPromptRest does not count. Only time with drawn frames counts, so that a stall cannot
// confirm a prompt that the person has not seen.
class Hold {
 public:
  explicit Hold(Monotonic drawn) : drawn_(drawn), last_frame_(drawn) {}

  // Call once for each frame that shows the button. `pressed_since`: when the one finger that rests
  // on the button went down; empty without one. `needed`: how long it must rest. True once for each
  // press.
  bool advance(Monotonic now, std::optional<Monotonic> pressed_since,
               milliseconds needed = kHoldToConfirm) {
    constexpr milliseconds kLongestFrame{100};
    const auto frame = std::clamp<Monotonic::duration>(now - last_frame_, {}, kLongestFrame);
    last_frame_ = now;
    if (pressed_since && *pressed_since < drawn_ + kPromptRest) pressed_since.reset();
    if (pressed_since != press_) {
      press_ = pressed_since;
      held_ = {};
      return false;
    }
    needed_ = needed;
    if (!press_ || held_ >= needed_) return false;
    held_ += frame;
    return held_ >= needed_;
  }

  // Accepts touches now.
  bool awake(Monotonic now) const { return now >= drawn_ + kPromptRest; }
  bool pressed() const { return press_.has_value(); }
  // Of the hold, 0 to 1.
  float progress() const {
    using Seconds = std::chrono::duration<float>;
    return std::min(1.0F, Seconds(held_) / Seconds(needed_));
  }
  Monotonic drawn() const { return drawn_; }

 private:
  Monotonic drawn_;  // first
  Monotonic last_frame_;
  std::optional<Monotonic> press_;
  Monotonic::duration held_{};
  milliseconds needed_ = kHoldToConfirm;
};

}  // namespace mastwise::touch
