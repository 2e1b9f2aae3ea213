#include "platform/tablet_sensors.hpp"

#include "core/motion/sensor_lines.hpp"
#include "platform/device_link.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/sensor_tree.hpp"

#include <array>
#include <string>

#include <catch2/catch.hpp>

// Files named as the kernel's ABI document sysfs-bus-iio names them.
using namespace mastwise;
using namespace std::chrono_literals;
using motion::Sample;
using test::SensorTree;

namespace {

Result<std::unique_ptr<platform::ByteSource>> opened(const SensorTree& tree) {
  return platform::tablet_sensor_source({.root = tree.root(), .every = 1ms, .told = 1ms})();
}

// The samples of one poll.
std::vector<Sample> samples_of(platform::ByteSource& source) {
  std::string text;
  std::array<char, 64> buffer{};
  while (text.empty() || text.back() != '\n') {
    const auto chunk = source.read(buffer, 1000ms);
    REQUIRE(chunk);
    text.append(buffer.data(), chunk->size);
  }
  std::vector<Sample> samples;
  motion::SensorLines lines;
  lines.feed(text, Monotonic(1ms), [&](const Sample& one) { samples.push_back(one); });
  return samples;
}

}  // namespace

TEST_CASE("raw readings of the kernel become m/s2 and microtesla in the screen's frame") {
  SensorTree tree;
  tree.add_accelerometer("iio:device0");
  tree.add_magnetometer("iio:device1");
  tree.write("iio:device0/in_accel_z_raw", "1000");
  tree.write("iio:device0/in_accel_scale", "0.0098");
  tree.write("iio:device1/in_magn_x_raw", "310");
  tree.write("iio:device1/in_magn_x_offset", "-10");
  tree.write("iio:device1/in_magn_scale", "0.001");
  tree.write("iio:device1/in_magn_mount_matrix", "0, -1, 0; 1, 0, 0; 0, 0, 1");
  const auto source = opened(tree);
  REQUIRE(source);
  CHECK((*source)->name() == "invented-accel, invented-magn");
  const auto samples = samples_of(**source);
  REQUIRE(samples.size() == 2);
  CHECK(samples[0].kind == Sample::Kind::acceleration);
  CHECK(samples[0].value.z == Approx(9.8));
  CHECK(samples[1].kind == Sample::Kind::field);
  // 300 counts of a milligauss are 30 uT; the matrix turns x into y.
  CHECK(samples[1].value.x == Approx(0.0).margin(1e-9));
  CHECK(samples[1].value.y == Approx(30.0));
}

TEST_CASE("a machine without an accelerometer says so") {
  const SensorTree tree;
  const auto source = opened(tree);
  REQUIRE_FALSE(source);
  CHECK(source.error().what == "no accelerometer");
  SensorTree other;
  other.add_magnetometer("iio:device0");
  CHECK_FALSE(opened(other));
}

TEST_CASE("a sensor with a missing part is not used, and the error says why") {
  SensorTree tree;
  tree.add_accelerometer("iio:device0");
  CHECK((*opened(tree))->name() == "invented-accel; no magnetometer");
  tree.add_magnetometer("iio:device1");
  tree.remove("iio:device1/in_magn_y_raw");
  CHECK((*opened(tree))->name() ==
        "invented-accel; invented-magn is not used: its y axis cannot be read");
  tree.write("iio:device1/in_magn_y_raw", "busy");
  CHECK((*opened(tree))->name() ==
        "invented-accel; invented-magn is not used: its y axis cannot be read");
  tree.write("iio:device1/in_magn_y_raw", "5");
  tree.remove("iio:device1/in_magn_scale");
  CHECK((*opened(tree))->name() ==
        "invented-accel; invented-magn is not used: the scale of its x axis cannot be read");
  tree.write("iio:device1/in_magn_scale", "0.001");
  for (const char* matrix : {"", "1, 0, 0; 0, 1, 0", "1, 0, 0; 0, 1, 0; 0, 0, 2", "none",
                             "1, 0, 0; 0, 1, 0; 0, 0, 1, 0"}) {
    tree.write("iio:device1/in_mount_matrix", matrix);
    INFO(matrix);
    CHECK((*opened(tree))->name() ==
          "invented-accel; invented-magn is not used: its mount matrix is not one");
  }
  tree.write("iio:device1/in_mount_matrix", "1, 0, 0; 0, 1, 0; 0, 0, 1");
  CHECK((*opened(tree))->name() == "invented-accel, invented-magn");
}

TEST_CASE("of two accelerometers the one of the display is read") {
  SensorTree tree;
  tree.add_accelerometer("iio:device0");
  tree.write("iio:device0/label", "accel-base");
  tree.write("iio:device0/name", "base");
  tree.add_accelerometer("iio:device1");
  tree.write("iio:device1/label", "accel-display");
  CHECK((*opened(tree))->name() == "invented-accel; no magnetometer");
}

TEST_CASE("a sensor that is removed while it is read is lost, and found again") {
  SensorTree tree;
  tree.add_accelerometer("iio:device0");
  test::NewsBox box;
  platform::DeviceLink link(
      platform::tablet_sensor_source({.root = tree.root(), .every = 1ms, .told = 1ms}),
      box.deliver(), {5ms, 20ms, 5ms});
  using Kind = platform::LinkNews::Kind;
  REQUIRE(box.wait_for(Kind::bytes));
  tree.remove("iio:device0");
  REQUIRE(box.wait_for(Kind::lost));
  tree.add_accelerometer("iio:device0");
  REQUIRE(box.wait_for(Kind::found, 2));
  link.stop();
}

TEST_CASE("a sensor that fails a read or two is not lost") {
  SensorTree tree;
  tree.add_accelerometer("iio:device0");
  const auto source =
      platform::tablet_sensor_source({.root = tree.root(), .every = 1ms, .told = 1ms})();
  REQUIRE(source);
  std::array<char, 256> bytes{};
  const auto next = [&] { return (*source)->read(bytes, 50ms); };
  REQUIRE(next());
  tree.write("iio:device0/in_accel_y_raw", "busy");
  for (int failures = 0; failures < 3; ++failures) {
    const auto chunk = next();
    REQUIRE(chunk);
    CHECK(chunk->size == 0);
  }
  tree.write("iio:device0/in_accel_y_raw", "0");
  for (int i = 0; i < 3; ++i) CHECK(next()->size > 0);
  tree.write("iio:device0/in_accel_y_raw", "busy");
  for (int failures = 0; failures < 3; ++failures) REQUIRE(next());
  CHECK_FALSE(next());
}

TEST_CASE("samples wait and come together when nobody reads them") {
  SensorTree tree;
  tree.add_accelerometer("iio:device0");
  const auto source =
      platform::tablet_sensor_source({.root = tree.root(), .every = 5ms, .told = 50ms})();
  REQUIRE(source);
  CHECK(samples_of(**source).size() == 1);
  const auto together = samples_of(**source);
  CHECK(together.size() > 3);
  CHECK(together.size() < 15);
  CHECK(together.back().at_s > together.front().at_s);
}
