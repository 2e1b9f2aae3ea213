#include "tests/app/touch/streams.hpp"

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::touch;
using namespace mastwise::touch::test;

namespace {

using Event = PointerEvent::Kind;
using Phase = Gesture::Phase;

// Few fingers, so that they often collide; times that sometimes run backward; places near the slop.
PointerEvent random_event(std::mt19937& random, int& time_ms) {
  const auto pick = [&](int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
  };
  time_ms += pick(0, 20) == 0 ? pick(300, 12'000) : pick(-5, 40);
  PointerEvent event;
  const int kind = pick(0, 9);
  event.kind = kind < 3   ? Event::Down
               : kind < 7 ? Event::Move
               : kind < 9 ? Event::Up
                          : Event::Cancel;
  const int finger = pick(0, 4);
  event.finger = finger == 0 ? kMouse : finger;
  event.x_px = static_cast<float>(pick(0, 60));
  event.y_px = static_cast<float>(pick(0, 60));
  event.at = at_ms(time_ms);
  return event;
}

// Checks: Begin, then changes, then End or Cancel, with no gesture open at the end. Returns the
// fault.
std::string out_of_order(const std::vector<Gesture>& gestures) {
  std::set<Gesture::Kind> open;
  for (const Gesture& gesture : gestures) {
    const bool at_once = gesture.kind == Gesture::Kind::Tap ||
                         gesture.kind == Gesture::Kind::Fling ||
                         gesture.kind == Gesture::Kind::Wheel;
    if (at_once) {
      if (gesture.phase != Phase::End) return "a momentary gesture with a phase";
    } else if (gesture.phase == Phase::Begin) {
      if (!open.insert(gesture.kind).second) return "begun twice";
    } else if (open.count(gesture.kind) == 0) {
      return "not begun";
    } else if (gesture.phase != Phase::Change) {
      open.erase(gesture.kind);
    }
  }
  return open.empty() ? "" : "never ended";
}

bool all_finite(const std::vector<Gesture>& gestures) {
  return std::all_of(gestures.begin(), gestures.end(), [](const Gesture& gesture) {
    return is_finite(gesture.delta_px) && is_finite(gesture.velocity_px_s) &&
           std::isfinite(gesture.scale) && gesture.scale > 0.0F &&
           std::isfinite(gesture.turn.clockwise_deg());
  });
}

}  // namespace

TEST_CASE("no event stream leaves a finger stuck, a gesture open or an extra tap") {
  std::size_t taps_seen = 0;
  std::map<Gesture::Kind, std::size_t> seen;
  for (unsigned seed = 0; seed < 2000; ++seed) {
    std::mt19937 random(seed);
    Recognizer recognizer(kPxPerMm);
    std::vector<Gesture> gestures;
    const auto take = [&] {
      const auto more = recognizer.take();
      gestures.insert(gestures.end(), more.begin(), more.end());
    };
    std::size_t downs = 0;
    int time_ms = 0;
    for (int i = 0; i < 60; ++i) {
      const PointerEvent event = random_event(random, time_ms);
      if (event.kind == Event::Down) ++downs;
      recognizer.feed(event);
      if (i % 3 == 0) recognizer.advance(event.at);
      if (i % 4 == 0) take();
    }
    for (const std::int64_t finger : {kMouse, INT64_C(1), INT64_C(2), INT64_C(3), INT64_C(4)}) {
      recognizer.feed({seed % 2 == 0 ? Event::Up : Event::Cancel, finger, 0, 0, at_ms(time_ms)});
    }
    take();
    INFO("seed " << seed << ": " << told(gestures));
    const auto taps = of_kind(gestures, Gesture::Kind::Tap).size();
    for (const Gesture& gesture : gestures) ++seen[gesture.kind];
    taps_seen += taps;
    REQUIRE(recognizer.fingers_down() == 0);
    REQUIRE_FALSE(recognizer.press());
    REQUIRE(taps <= downs);
    REQUIRE(out_of_order(gestures) == "");
    REQUIRE(all_finite(gestures));
  }
  // The streams must reach every finger gesture, or the test checks nothing.
  CHECK(taps_seen > 100);
  CHECK(seen.size() == 6);
}
