#pragma once

#include "app/touch/recognizer.hpp"

#include <string>
#include <vector>

namespace mastwise::touch::test {

inline Monotonic at_ms(int time_ms) {
  return Monotonic(milliseconds(time_ms));
}

// The events of tests/app/touch/streams/`name`.txt, of a screen of 6 pixels to the millimeter.
inline constexpr float kPxPerMm = 6.0F;
std::vector<PointerEvent> stream(const std::string& name);

// The recognizer's gestures when polled 60 times a second, up to a second after the last event.
std::vector<Gesture> played(Recognizer& recognizer, const std::vector<PointerEvent>& events);

// One letter for each gesture, with + for Begin, = for Change, - for End and x for Cancel, runs of
// changes once: "T-" is a tap, "D+D=D-F-" a drag with a fling.
std::string told(const std::vector<Gesture>& gestures);

std::vector<Gesture> of_kind(const std::vector<Gesture>& gestures, Gesture::Kind kind);

}  // namespace mastwise::touch::test
