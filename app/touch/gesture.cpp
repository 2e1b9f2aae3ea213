#include "app/touch/gesture.hpp"

#include <algorithm>
#include <utility>

namespace mastwise::touch {
namespace {

// The last entry of a kind is enough: a new gesture of that kind would add a Begin after it.
bool continues(const Gesture& before, const Gesture& gesture) {
  if (gesture.kind == Gesture::Kind::Wheel) return before.start_px == gesture.start_px;
  return before.phase == Gesture::Phase::Change && gesture.phase == Gesture::Phase::Change;
}

void merge(Gesture& before, const Gesture& gesture) {
  before.current_px = gesture.current_px;
  before.delta_px = before.delta_px + gesture.delta_px;
  before.scale *= gesture.scale;
  before.turn = Turn::clockwise_deg(before.turn.clockwise_deg() + gesture.turn.clockwise_deg());
  before.notches += gesture.notches;
  before.at = gesture.at;
}

}  // namespace

void GestureQueue::push(const Gesture& gesture) {
  const auto same_kind =
      std::find_if(waiting_.rbegin(), waiting_.rend(),
                   [&](const Gesture& before) { return before.kind == gesture.kind; });
  if (same_kind != waiting_.rend() && continues(*same_kind, gesture)) {
    merge(*same_kind, gesture);
  } else {
    waiting_.push_back(gesture);
  }
}

std::vector<Gesture> GestureQueue::take() {
  return std::exchange(waiting_, {});
}

}  // namespace mastwise::touch
