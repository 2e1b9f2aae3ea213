#include "platform/sensor_source.hpp"

#include <array>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace std::chrono_literals;
using motion::Sample;
using motion::Vector;

namespace {

// A sensor that answers what the test says.
struct InventedSensor {
  std::optional<Vector> value = Vector{0.0, 0.0, 9.80665};
  platform::AxisSensor as_read(Sample::Kind kind) {
    return {
        .kind = kind, .name = "invented", .where = "the screen", .read = [this] { return value; }};
  }
};

}  // namespace

// Flat on a table, screen up, Windows reports -1 g; a tablet held upright -1 g along y.
TEST_CASE("what Windows reports is turned into the push and the field that a tablet feels") {
  const Vector flat = platform::from_windows(Sample::Kind::acceleration, {0.0, 0.0, -1.0});
  CHECK(flat.z == Approx(9.80665));
  const Vector upright = platform::from_windows(Sample::Kind::acceleration, {0.0, -1.0, 0.0});
  CHECK(upright.y == Approx(9.80665));
  const Vector field = platform::from_windows(Sample::Kind::field, {214.0, -30.0, -409.0});
  CHECK(field.x == Approx(21.4));
  CHECK(field.y == Approx(-3.0));
  CHECK(field.z == Approx(-40.9));
}

TEST_CASE("any sensors of three axes are read as lines, and lost after four failures") {
  InventedSensor level, compass;
  compass.value = Vector{20.0, 0.0, -40.0};
  const auto source = platform::sensor_source(
      {level.as_read(Sample::Kind::acceleration), compass.as_read(Sample::Kind::field)},
      "two invented ones", {.every = 1ms, .told = 1ms});
  CHECK(source->name() == "two invented ones");
  std::array<char, 200> buffer{};
  const auto chunk = source->read(buffer, 1000ms);
  REQUIRE(chunk);
  std::vector<Sample> samples;
  motion::SensorLines lines;
  lines.feed({buffer.data(), chunk->size}, Monotonic(1ms),
             [&](const Sample& one) { samples.push_back(one); });
  REQUIRE(samples.size() == 2);
  CHECK(samples[0].value.z == Approx(9.80665).margin(0.01));
  CHECK(samples[1].value.x == Approx(20.0).margin(0.1));

  compass.value = std::nullopt;
  int silent = 0;
  auto next = source->read(buffer, 1000ms);
  for (; next && silent < 10; next = source->read(buffer, 1000ms)) ++silent;
  REQUIRE_FALSE(next);
  CHECK(silent == 3);
  CHECK(next.error().where == "the screen");
}
