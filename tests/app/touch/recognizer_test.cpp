#include "app/touch/recognizer.hpp"

#include "tests/app/touch/streams.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::touch;
using namespace mastwise::touch::test;

namespace {

using Event = PointerEvent::Kind;
using Kind = Gesture::Kind;
using Phase = Gesture::Phase;

std::vector<Gesture> played(const std::string& name) {
  Recognizer recognizer(kPxPerMm);
  const auto gestures = test::played(recognizer, stream(name));
  CHECK(recognizer.fingers_down() == 0);
  return gestures;
}

Point way_of(const std::vector<Gesture>& gestures) {
  Point way;
  for (const Gesture& gesture : gestures) way = way + gesture.delta_px;
  return way;
}

}  // namespace

TEST_CASE("a glove that rolls still taps where it came down") {
  const auto gestures = played("glove_tap");
  REQUIRE(told(gestures) == "T-");
  CHECK(gestures[0].start_px == Point{402.0F, 311.0F});
  CHECK(gestures[0].current_px == Point{411.5F, 320.5F});
  CHECK(gestures[0].at == at_ms(131));
}

TEST_CASE("a slow drag moves by the finger's path minus the slop, without a fling") {
  const auto gestures = played("slow_drag");
  REQUIRE(told(gestures) == "D+D=D-");
  CHECK(gestures[0].start_px == Point{500.0F, 300.0F});
  // 240 px minus 3 mm of 6 px; the sideways jitter uses its share of the slop, at most 2 px of 18.
  CHECK(way_of(gestures).y == Approx(222.0).margin(0.2));
  CHECK(std::fabs(way_of(gestures).x) < 2.0F);
}

TEST_CASE("a finger lifted while it moves flings at its speed") {
  const auto gestures = played("fling");
  REQUIRE(told(gestures) == "D+D=D-F-");
  // 400 mm/s is 2400 px/s upward. The lift comes 4 ms after the last place, and the first of the
  // last 100 ms were slower.
  CHECK(gestures.back().velocity_px_s.y < -2100.0F);
  CHECK(gestures.back().velocity_px_s.y > -2400.0F);
  CHECK(std::fabs(gestures.back().velocity_px_s.x) < 60.0F);
}

TEST_CASE("a lift outside the widget is not a tap and still names the widget") {
  const auto gestures = played("lift_outside");
  // 3 px in 18 ms are 28 mm/s, too slow for a fling.
  CHECK(told(gestures) == "D+D=D-");
  for (const Gesture& gesture : gestures) CHECK(gesture.start_px == Point{395.0F, 200.0F});
  CHECK(gestures.back().current_px == Point{455.0F, 200.0F});
}

TEST_CASE("a drag continues while the finger is down") {
  const auto gestures = played("long_drag");
  CHECK(told(gestures) == "D+D=D-");
  // Back where it began: only the slop remains, in the direction of the first step.
  CHECK(length(way_of(gestures)) == Approx(18.0).margin(0.1));
  CHECK(gestures.back().at == at_ms(12150));
}

TEST_CASE("a drag continues beyond the window") {
  const auto gestures = played("beyond_window");
  CHECK(told(gestures) == "D+D=D-");
  float farthest_px = 0.0F;
  for (const Gesture& gesture : gestures) farthest_px = std::max(farthest_px, gesture.current_px.x);
  CHECK(farthest_px == 1350.0F);
  CHECK(length(way_of(gestures)) == Approx(18.0).margin(0.01));
}

TEST_CASE("two spreading fingers pinch, and the remaining one does nothing") {
  const auto gestures = played("pinch_unequal");
  REQUIRE(told(gestures) == "P+P=P-");
  float scale = 1.0F;
  for (const Gesture& gesture : gestures) scale *= gesture.scale;
  // 120 px to 360 px, counted from where the slop of 18 px was used up.
  CHECK(scale == Approx(360.0 / 138.0).epsilon(1e-4));
  CHECK(gestures[0].start_px == Point{640.0F, 400.0F});
  CHECK(length(way_of(gestures)) < 3.1F);  // one finger's event comes first: half a step
  CHECK(gestures.back().current_px == Point{640.0F, 400.0F});
}

TEST_CASE("two fingers that turn to the right turn clockwise") {
  const auto gestures = played("turn_90");
  REQUIRE(told(gestures) == "R+R=R-");
  double turned_deg = 0.0;
  for (const Gesture& gesture : gestures) turned_deg += gesture.turn.clockwise_deg();
  // Minus the slop: 18 px at a span of 240 px are 0.075 rad, 4.297 degrees.
  CHECK(turned_deg == Approx(90.0 - 4.297).margin(0.01));
  CHECK(gestures[0].start_px == Point{640.0F, 400.0F});
}

TEST_CASE("a long press fires while held, follows moves, and its lift is not a tap") {
  const auto gestures = played("long_press_drift");
  REQUIRE(told(gestures) == "L+L=L-");
  CHECK(gestures[0].at == at_ms(600));
  CHECK(gestures[0].start_px == Point{300.0F, 300.0F});
  CHECK(gestures.back().current_px == Point{380.0F, 340.0F});
}

TEST_CASE("a lost lift does not block the next touch") {
  // Without its lift, the first touch looks like a long press.
  CHECK(told(played("lost_up")) == "L+LxT-");
  CHECK(told(played("lost_up_new_number")) == "L+LxT-");
}

TEST_CASE("a third finger changes nothing for the two") {
  const auto gestures = played("third_finger");
  REQUIRE(told(gestures) == "P+P=P-");
  float scale = 1.0F;
  for (const Gesture& gesture : gestures) scale *= gesture.scale;
  CHECK(scale == Approx(400.0 / 258.0).epsilon(1e-4));
}

TEST_CASE("a finger also reported as a mouse taps once") {
  const auto gestures = played("mouse_echo");
  REQUIRE(told(gestures) == "T-T-T-");
  CHECK(gestures[0].start_px.x == 400.0F);
  CHECK(gestures[1].start_px.x == 500.0F);
  CHECK(gestures[2].start_px.x == 600.0F);
}

TEST_CASE("the mouse alone taps, and again some time after a finger") {
  Recognizer recognizer(kPxPerMm);
  recognizer.feed({Event::Move, kMouse, 10, 10, at_ms(0)});
  recognizer.feed({Event::Down, kMouse, 10, 10, at_ms(10)});
  recognizer.feed({Event::Up, kMouse, 10, 10, at_ms(80)});
  recognizer.feed({Event::Down, 1, 10, 10, at_ms(1000)});
  recognizer.feed({Event::Up, 1, 10, 10, at_ms(1080)});
  recognizer.feed({Event::Down, kMouse, 10, 10, at_ms(1580)});
  recognizer.feed({Event::Up, kMouse, 10, 10, at_ms(1600)});
  CHECK(told(recognizer.take()) == "T-T-T-");
}

TEST_CASE("a press shows until it is decided, and the recognizer gives the wake-up time") {
  Recognizer recognizer(kPxPerMm);
  CHECK_FALSE(recognizer.press());
  CHECK_FALSE(recognizer.long_press_due());
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(50)});
  recognizer.feed({Event::Move, 1, 117, 100, at_ms(60)});
  REQUIRE(recognizer.press());
  CHECK(recognizer.press()->may_be_tap);
  CHECK(recognizer.press()->start_px == Point{100.0F, 100.0F});
  CHECK(recognizer.press()->current_px == Point{117.0F, 100.0F});
  CHECK(recognizer.long_press_due() == at_ms(650));

  SECTION("by leaving the slop") {
    recognizer.feed({Event::Move, 1, 119, 100, at_ms(70)});
    CHECK_FALSE(recognizer.press()->may_be_tap);
    CHECK_FALSE(recognizer.long_press_due());
    const auto gestures = recognizer.take();
    REQUIRE(told(gestures) == "D+");
    CHECK(gestures[0].delta_px.x == Approx(1.0));
    // Coming back does not make it a tap again.
    recognizer.feed({Event::Move, 1, 100, 100, at_ms(90)});
    recognizer.feed({Event::Up, 1, 100, 100, at_ms(400)});
    CHECK(told(recognizer.take()) == "D=D-");
  }
  SECTION("by time") {
    recognizer.advance(at_ms(649));
    CHECK(recognizer.press()->may_be_tap);
    recognizer.advance(at_ms(650));
    CHECK_FALSE(recognizer.press()->may_be_tap);
    CHECK(told(recognizer.take()) == "L+");
  }
  SECTION("by a lift after a long time in which no frame was drawn") {
    recognizer.feed({Event::Up, 1, 117, 100, at_ms(900)});
    CHECK(told(recognizer.take()) == "L+L-");
  }
  SECTION("by a second finger") {
    recognizer.feed({Event::Down, 2, 300, 100, at_ms(80)});
    CHECK_FALSE(recognizer.press());
    recognizer.feed({Event::Up, 2, 300, 100, at_ms(120)});
    recognizer.feed({Event::Up, 1, 117, 100, at_ms(130)});
    CHECK(told(recognizer.take()).empty());
  }
  SECTION("by a lift far away that no move announced") {
    recognizer.feed({Event::Up, 1, 400, 100, at_ms(300)});
    CHECK(told(recognizer.take()).find('T') == std::string::npos);
  }
}

TEST_CASE("a second finger ends a drag without a fling and pinches at once") {
  Recognizer recognizer(kPxPerMm);
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(0)});
  recognizer.feed({Event::Move, 1, 160, 100, at_ms(40)});
  recognizer.feed({Event::Down, 2, 300, 100, at_ms(50)});
  recognizer.feed({Event::Move, 2, 340, 100, at_ms(60)});
  recognizer.feed({Event::Up, 1, 160, 100, at_ms(70)});
  // The remaining finger and a new one are a pair again.
  recognizer.feed({Event::Down, 3, 100, 100, at_ms(90)});
  recognizer.feed({Event::Move, 3, 200, 100, at_ms(99)});
  recognizer.feed({Event::Cancel, 3, 200, 100, at_ms(100)});
  recognizer.feed({Event::Up, 2, 340, 100, at_ms(101)});
  const auto gestures = recognizer.take();
  CHECK(told(gestures) == "D+D-P+P-P+Px");
  // Fingers that come together make it smaller.
  CHECK(gestures[4].scale < 1.0F);
}

TEST_CASE("a fling faster than any thumb is capped at the greatest speed") {
  Recognizer recognizer(kPxPerMm);
  recognizer.feed({Event::Down, 1, 0, 0, at_ms(0)});
  recognizer.feed({Event::Up, 1, 300, 400, at_ms(10)});
  const auto flings = of_kind(recognizer.take(), Kind::Fling);
  REQUIRE(flings.size() == 1);
  // 50,000 px/s by the places; 1500 mm/s are 9000 px/s, in the same direction.
  CHECK(flings[0].velocity_px_s.x == Approx(5400.0));
  CHECK(flings[0].velocity_px_s.y == Approx(7200.0));
}

TEST_CASE("two fingers moved side by side do not jump when they then spread") {
  Recognizer recognizer(kPxPerMm);
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(0)});
  recognizer.feed({Event::Down, 2, 200, 100, at_ms(5)});
  for (int y = 101; y <= 400; ++y) {
    recognizer.feed({Event::Move, 1, 100, static_cast<float>(y), at_ms(y)});
    recognizer.feed({Event::Move, 2, 200, static_cast<float>(y), at_ms(y)});
  }
  CHECK(told(recognizer.take()).empty());
  recognizer.feed({Event::Move, 2, 220, 400, at_ms(410)});
  const auto gestures = recognizer.take();
  REQUIRE(told(gestures) == "P+");
  CHECK(gestures[0].delta_px == Point{});
  CHECK(gestures[0].scale == Approx(120.0 / 118.0));
  CHECK(gestures[0].start_px == Point{150.0F, 100.0F});
}

TEST_CASE("fingers that nearly meet do not turn or shrink without bound") {
  Recognizer recognizer(kPxPerMm);
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(0)});
  recognizer.feed({Event::Down, 2, 220, 100, at_ms(5)});
  recognizer.feed({Event::Move, 2, 101, 100, at_ms(20)});
  recognizer.feed({Event::Move, 2, 100, 101, at_ms(30)});
  recognizer.feed({Event::Move, 2, 220, 100, at_ms(40)});
  const auto gestures = recognizer.take();
  CHECK(told(gestures) == "P+P=");
  // Down to the slop and out again: from 102 px, where the pinch began, to 120 px.
  CHECK(gestures[0].scale == Approx(18.0 / 102.0));
  CHECK(gestures[0].scale * gestures[1].scale == Approx(120.0 / 102.0));
}

TEST_CASE("a canceled touch does nothing") {
  Recognizer recognizer(kPxPerMm);
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(0)});
  recognizer.feed({Event::Cancel, 1, 100, 100, at_ms(40)});
  CHECK(told(recognizer.take()).empty());
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(50)});
  recognizer.feed({Event::Move, 1, 200, 100, at_ms(90)});
  recognizer.feed({Event::Cancel, 1, 300, 100, at_ms(100)});
  CHECK(told(recognizer.take()) == "D+Dx");
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(150)});
  recognizer.feed({Event::Down, 2, 200, 100, at_ms(160)});
  recognizer.cancel_all(at_ms(170));
  CHECK(recognizer.fingers_down() == 0);
  recognizer.feed({Event::Up, 1, 100, 100, at_ms(180)});
  CHECK(told(recognizer.take()).empty());
}

TEST_CASE("strange events are ignored, but a lift is accepted") {
  constexpr float kNone = std::numeric_limits<float>::quiet_NaN();
  Recognizer recognizer(kPxPerMm);
  recognizer.feed({Event::Move, 9, 100, 100, at_ms(10)});
  recognizer.feed({Event::Up, 9, 100, 100, at_ms(20)});
  recognizer.feed({Event::Down, 1, kNone, 100, at_ms(30)});
  CHECK(recognizer.fingers_down() == 0);
  recognizer.feed({Event::Down, 1, 100, 100, at_ms(100)});
  recognizer.feed({Event::Move, 1, 400, 100, at_ms(90)});
  recognizer.feed({Event::Down, 1, 500, 100, at_ms(95)});
  recognizer.feed({Event::Move, 1, 400, kNone, at_ms(110)});
  recognizer.feed({Event::Up, 1, kNone, kNone, at_ms(80)});
  const auto gestures = recognizer.take();
  REQUIRE(told(gestures) == "T-");
  CHECK(gestures[0].current_px == Point{100.0F, 100.0F});
  CHECK(gestures[0].at == at_ms(100));
}

TEST_CASE("a wheel scrolls, and its notches of one frame are one gesture") {
  Recognizer recognizer(kPxPerMm);
  for (int i = 0; i < 3; ++i) {
    recognizer.feed(WheelEvent{50.0F, 60.0F, 1.0F, at_ms(i)});
  }
  recognizer.feed(WheelEvent{90.0F, 60.0F, -1.0F, at_ms(4)});
  const auto gestures = recognizer.take();
  REQUIRE(told(gestures) == "W-W-");
  CHECK(gestures[0].notches == 3.0F);
  CHECK(gestures[0].start_px == Point{50.0F, 60.0F});
  CHECK(gestures[0].delta_px.y == Approx(3 * kWheelMm * kPxPerMm));
  CHECK(gestures[1].delta_px.y < 0.0F);
}

TEST_CASE("many moves between two frames are one change with the whole path") {
  const auto events = stream("slow_drag");
  Recognizer at_once(kPxPerMm);
  for (const PointerEvent& event : events) at_once.feed(event);
  const auto gestures = at_once.take();
  CHECK(gestures.size() == 3);
  const Point by_frames = way_of(played("slow_drag"));
  CHECK(way_of(gestures).x == Approx(by_frames.x).margin(1e-3));
  CHECK(way_of(gestures).y == Approx(by_frames.y).margin(1e-3));
}
