#include "app/touch/scroll.hpp"

#include "tests/app/touch/streams.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise::touch;
using namespace mastwise::touch::test;

namespace {

Scroll list_of(float content_px, float view_px) {
  Scroll scroll;
  scroll.set_extent(content_px, view_px);
  return scroll;
}

float glided_px(float velocity_px_s, float frame_s) {
  Scroll scroll = list_of(100'000.0F, 500.0F);
  scroll.fling(velocity_px_s);
  while (scroll.advance(frame_s)) continue;
  return scroll.offset_px();
}

}  // namespace

TEST_CASE("the content follows the finger and stops at its ends") {
  Scroll scroll = list_of(1200.0F, 500.0F);
  CHECK(scroll.greatest_px() == 700.0F);
  scroll.drag(-100.0F);
  CHECK(scroll.offset_px() == 100.0F);
  scroll.drag(30.0F);
  CHECK(scroll.offset_px() == 70.0F);
  scroll.drag(500.0F);
  CHECK(scroll.offset_px() == 0.0F);
  scroll.drag(-5000.0F);
  CHECK(scroll.offset_px() == 700.0F);
  SECTION("a list that becomes shorter stays within") {
    scroll.set_extent(600.0F, 500.0F);
    CHECK(scroll.offset_px() == 100.0F);
  }
  SECTION("a list that fits does not scroll") {
    scroll.set_extent(300.0F, 500.0F);
    CHECK(scroll.offset_px() == 0.0F);
    scroll.drag(-10.0F);
    CHECK(scroll.offset_px() == 0.0F);
  }
}

// Exponential decay by hand: v0 * tau in total, minus the remainder at the rest speed:
// (2000 - 15) * 0.325 s = 645.1 px.
TEST_CASE("a glide goes equally far at any frame rate") {
  CHECK(glided_px(-2000.0F, 1.0F / 60.0F) == Approx(645.1).margin(0.2));
  CHECK(glided_px(-2000.0F, 1.0F / 25.0F) == Approx(645.1).margin(0.2));
  CHECK(glided_px(-2000.0F, 10.0F) == Approx(645.1).margin(0.2));
}

TEST_CASE("a glide stops and reports it") {
  Scroll scroll = list_of(100'000.0F, 500.0F);
  CHECK_FALSE(scroll.advance(0.016F));
  scroll.fling(-2000.0F);
  int frames = 0;
  while (scroll.advance(1.0F / 60.0F)) ++frames;
  // tau * ln(2000 / 15) = 1.59 s.
  CHECK(frames == Approx(95).margin(1));
  CHECK_FALSE(scroll.moving());
  const float rest_px = scroll.offset_px();
  CHECK_FALSE(scroll.advance(1.0F));
  CHECK(scroll.offset_px() == rest_px);
}

TEST_CASE("an end, a finger or a wheel ends a glide") {
  Scroll scroll = list_of(600.0F, 500.0F);
  scroll.fling(-2000.0F);
  SECTION("end") {
    CHECK_FALSE(scroll.advance(0.5F));
    CHECK(scroll.offset_px() == 100.0F);
  }
  SECTION("finger down") {
    CHECK(scroll.moving());
    scroll.stop();
    CHECK_FALSE(scroll.advance(0.5F));
    CHECK(scroll.offset_px() == 0.0F);
  }
  SECTION("drag") {
    scroll.drag(-10.0F);
    CHECK_FALSE(scroll.moving());
  }
}

TEST_CASE("a list scrolls by finger and by wheel") {
  Recognizer recognizer(kPxPerMm);
  Scroll scroll = list_of(5000.0F, 500.0F);
  for (const Gesture& gesture : played(recognizer, stream("fling"))) scroll.apply(gesture);
  // The finger went 272 px upward (2400 px/s for 5 of the 9 steps of 16 ms), minus the slop.
  CHECK(scroll.offset_px() == Approx(272.0 - 18.0).margin(0.2));
  CHECK(scroll.advance(0.1F));
  CHECK(scroll.offset_px() > 400.0F);
  const float before_px = scroll.offset_px();
  recognizer.feed(WheelEvent{100.0F, 100.0F, 1.0F, at_ms(9000)});
  for (const Gesture& gesture : recognizer.take()) scroll.apply(gesture);
  CHECK(scroll.offset_px() == Approx(before_px - 72.0F));
  CHECK_FALSE(scroll.moving());
}
