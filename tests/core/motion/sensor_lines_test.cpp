#include "core/motion/sensor_lines.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using motion::Sample;
using motion::SensorLines;
using Kind = motion::Sample::Kind;

namespace {

const auto kNobody = [](const Sample&) {};
Monotonic at_ms(int ms) {
  return Monotonic(milliseconds(ms));
}

}  // namespace

TEST_CASE("a sample's line is read as it was written", "[motion]") {
  const Sample sample{.kind = Kind::field, .at_s = 12.25, .value = {21.4, -3.0625, -40.9}};
  CHECK(motion::to_line(sample) == "MAG 12.250 21.4000 -3.0625 -40.9000\n");
  const auto back = motion::parse_line("MAG 12.250 21.4000 -3.0625 -40.9000");
  REQUIRE(back);
  CHECK(*back == sample);
}

TEST_CASE("lines that are not samples are rejected", "[motion]") {
  for (const char* line :
       {"", "ACC", "ACC 1 2 3", "ACC 1 2 3 4 5", "ACC 1 2 3 x", "ACC 1 2 3 nan", "ACC 1 2 3 inf",
        "ACC -1 2 3 4", "ACC 1 2 3 201", "MAG 1 0 0 10001", "mag 1 2 3 4", "ACC 1 2 3 4x"}) {
    INFO(line);
    CHECK_FALSE(motion::parse_line(line));
  }
  CHECK(motion::parse_line("ACC 0 0 0 0"));
}

TEST_CASE("a held tablet is the mean of its last second, and ages", "[motion]") {
  SensorLines lines;
  std::vector<Sample> heard;
  const auto hear = [&](const Sample& sample) { heard.push_back(sample); };
  lines.feed("ACC 1.0 0 0 8\nMAG 1.0 1 2 3\nACC 1.5 0 0 9\nAC", at_ms(100), hear);
  lines.feed("C 2.2 2 0 10\n", at_ms(200), hear);
  CHECK(heard.size() == 4);
  const auto mean = lines.mean(Kind::acceleration, at_ms(300));
  REQUIRE(mean);
  CHECK(*mean == motion::Vector{1.0, 0.0, 9.5});
  CHECK(lines.spread(Kind::acceleration).samples == 2);
  CHECK(lines.spread(Kind::acceleration).rms == Approx(std::sqrt(1.25)));
  // The magnetometer's only sample is more than a second old.
  CHECK_FALSE(lines.mean(Kind::field, at_ms(300)));
  CHECK(lines.mean(Kind::acceleration, at_ms(2199)));
  CHECK_FALSE(lines.mean(Kind::acceleration, at_ms(2200)));
}

TEST_CASE("a source that begins anew leaves nothing of the old run", "[motion]") {
  SensorLines lines;
  lines.feed("ACC 50.0 9 0 0\n", at_ms(0), kNobody);
  lines.feed("ACC 0.1 0 0 9\n", at_ms(100), kNobody);
  CHECK(lines.mean(Kind::acceleration, at_ms(100)) == motion::Vector{0.0, 0.0, 9.0});
}

TEST_CASE("endless lines of sensors take no memory", "[motion]") {
  SensorLines lines;
  lines.feed(std::string(100'000, '1'), at_ms(0), kNobody);
  lines.feed("\nACC 1 0 0 9\n", at_ms(10), kNobody);
  CHECK(lines.mean(Kind::acceleration, at_ms(10)));
}
