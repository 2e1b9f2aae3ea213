#include "app/ui/metrics.hpp"
#include "app/ui/spring.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise::ui;

namespace {

double after(double seconds, int frames) {
  Spring spring(0.0);
  spring.aim_at(100.0);
  for (int i = 0; i < frames; ++i) spring.advance(seconds / frames, 0.0);
  return spring.value();
}

}  // namespace

TEST_CASE("a spring moves the same at any frame rate") {
  for (const double seconds : {0.05, 0.1, 0.2}) {
    for (const int frames : {2, 7, 24, 500}) {
      CHECK(after(seconds, frames) == Approx(after(seconds, 1)).margin(1e-9));
    }
  }
}

TEST_CASE("a spring is critically damped and arrives in 200 ms") {
  CHECK(after(0.2, 12) == Approx(99.0).margin(0.05));
  CHECK(after(0.1, 6) < 95.0);
  Spring spring(0.0);
  spring.aim_at(100.0);
  double before = 0.0;
  int frames = 0;
  while (spring.advance(1.0 / 60.0)) {
    CHECK(spring.value() > before);  // always on
    CHECK(spring.value() <= 100.0);  // never beyond
    before = spring.value();
    REQUIRE(++frames < 60);  // it comes to rest
  }
  CHECK(spring.value() == 100.0);
  CHECK_FALSE(spring.advance(1.0 / 60.0));
}

TEST_CASE("a spring with a reversed target keeps its speed at first") {
  Spring spring(0.0);
  spring.aim_at(100.0);
  spring.advance(0.04);
  const double there = spring.value();
  spring.aim_at(0.0);
  spring.advance(0.001);
  CHECK(spring.value() > there);
  for (int i = 0; i < 60; ++i) spring.advance(1.0 / 60.0);
  CHECK(spring.value() == 0.0);
}

TEST_CASE("a target has the same size on every screen") {
  // Millimeters by dots per inch over 25.4.
  const Metrics tablet = metrics(1280.0f, 800.0f, 189.0f);
  CHECK(tablet.px_per_mm == Approx(189.0 / 25.4));
  CHECK(tablet.px_per_unit == Approx(1.0).margin(0.001));
  CHECK_FALSE(tablet.portrait());
  struct Size {
    float width_px, height_px;
  };
  for (const Size& size : {Size{800.0f, 480.0f}, Size{1280.0f, 800.0f}, Size{1920.0f, 1200.0f}}) {
    const float dots = usual_dots_per_inch(size.width_px, size.height_px);
    const Metrics upright = metrics(size.height_px, size.width_px, dots);
    const Metrics lying = metrics(size.width_px, size.height_px, dots);
    CHECK(upright.portrait());
    CHECK(upright.px_per_unit == lying.px_per_unit);
    CHECK(kTouchUnits * lying.px_per_unit / lying.px_per_mm >= 9.0f - 0.01f);
    CHECK(lying.width() >= 1099.9f);
    CHECK(lying.height() >= 659.9f);
  }
  // A huge screen shows everything larger, one too small for the layout everything smaller.
  CHECK(metrics(3840.0f, 2160.0f, 96.0f).width() <= 1640.1f);
  CHECK(metrics(480.0f, 320.0f, 160.0f).width() >= 989.9f);
}
