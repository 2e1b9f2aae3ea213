#include "core/headings/stretch_finder.hpp"

#include "tests/support/dice.hpp"
#include "tests/support/rig_iron.hpp"

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;
using test::Dice;
using test::RigIron;

namespace {

constexpr double kDown_nt = 48000.0;
const UtcTime kDriveStart = std::chrono::sys_days{std::chrono::year{2027} / 6 / 15};
const MagneticField kFieldHere{.declination = Declination::east_deg(12.0),
                               .declination_sigma_deg = 0.4,
                               .declination_deg_per_year = 0.0,
                               .inclination_deg = 66.0,
                               .horizontal_nt = 20'000.0,
                               .total_nt = 52'000.0,
                               .zone = MagneticField::Zone::Normal,
                               .beyond_model_end = false};

// A rig on the road: it turns at a rate, its sensor follows with a lag, both with noise, one sample
// a second.
class SimulatedDrive {
 public:
  explicit SimulatedDrive(const RigIron& iron, double lag_s = 2.0) : iron_(iron), lag_s_(lag_s) {}

  void go(int seconds, double speed_mps, double turn_deg_per_s = 0.0) {
    for (int second = 0; second < seconds; ++second) {
      course_deg_ += turn_deg_per_s;
      const double magnetic_deg = course_deg_ - kFieldHere.declination.east_deg();
      const double shown_deg = iron_.reads_deg(magnetic_deg, kFieldHere.horizontal_nt, kDown_nt);
      const double behind_deg = fold_half_circle_deg(shown_deg - sensor_deg_);
      sensor_deg_ += behind_deg * (1.0 - std::exp(-1.0 / lag_s_));
      now_ += milliseconds(1000);
      const double course_noise_deg = 10.0 / (3.6 * std::max(speed_mps, 1.0));
      const auto found = finder_.add(
          {.course = Bearing<True>::degrees(course_deg_ + course_noise_deg * dice_.normal()),
           .speed_mps = speed_mps,
           .read = Bearing<Magnetic>::degrees(sensor_deg_ + 1.5 * dice_.normal())},
          kFieldHere, kDriveStart + now_.time_since_epoch(), now_);
      if (!found) continue;
      stretches.push_back(*found);
      courses_deg.push_back(course_deg_);
    }
  }

  std::vector<DrivenStretch> stretches;
  std::vector<double> courses_deg;  // at the end of each

 private:
  RigIron iron_;
  double lag_s_;
  StretchFinder finder_;
  Dice dice_{4};
  double course_deg_ = 30.0, sensor_deg_ = 20.0;
  Monotonic now_ = {};
};

}  // namespace

TEST_CASE("a straight stretch gives the deviation of its direction", "[aim]") {
  const RigIron iron{.along_nt = 2500.0, .across_nt = -1500.0};
  SimulatedDrive drive(iron);
  for (int leg = 0; leg < 12; ++leg) {
    drive.go(90, 20.0);
    drive.go(10, 8.0, 3.3);
  }
  REQUIRE(drive.stretches.size() == 12);
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const DrivenStretch& one = drive.stretches[i];
    const double magnetic_deg = drive.courses_deg[i] - kFieldHere.declination.east_deg();
    const double read_deg = iron.reads_deg(magnetic_deg, kFieldHere.horizontal_nt, kDown_nt);
    const double deviation_deg = fold_half_circle_deg(magnetic_deg - read_deg);
    CHECK(one.deviation_deg == Approx(deviation_deg).margin(2.0 * one.sigma_deg));
    CHECK((one.read - Bearing<Magnetic>::degrees(read_deg)).size_deg() < 2.0);
    CHECK(one.sigma_deg >= StretchFinder::kRoad_deg);
    CHECK(one.horizontal_nt == kFieldHere.horizontal_nt);
  }
}

TEST_CASE("a whole drive round a town makes a card that corrects", "[aim]") {
  const RigIron iron{.along_nt = 3000.0, .across_nt = 2000.0, .along_by_along = 0.03};
  SimulatedDrive drive(iron, 4.0);
  std::vector<DrivenStretch> kept;
  for (int leg = 0; leg < 24; ++leg) {
    drive.go(90, 15.0);
    drive.go(11, 7.0, 5.0);
  }
  for (const DrivenStretch& one : drive.stretches) add_stretch(kept, one);
  const auto card = fit_deviation(kept);
  REQUIRE(state_of(card, kFieldHere.horizontal_nt, kDriveStart) == CardState::holds);
  for (int course_deg = 0; course_deg < 360; course_deg += 30) {
    const double read_deg = iron.reads_deg(course_deg, kFieldHere.horizontal_nt, kDown_nt);
    const auto read = Bearing<Magnetic>::degrees(read_deg);
    const auto by_card = deviation_at(card, read, kFieldHere.horizontal_nt, kDriveStart);
    REQUIRE(by_card);
    CHECK((read + by_card->turn - Bearing<Magnetic>::degrees(course_deg)).size_deg() <
          2.5 * by_card->sigma_deg);
    CHECK(by_card->sigma_deg < 1.0);
  }
}

TEST_CASE("curves, slow driving, gaps and sharp turns give no stretch", "[aim]") {
  SimulatedDrive curve(RigIron{});
  curve.go(300, 20.0, 0.5);
  CHECK(curve.stretches.empty());
  SimulatedDrive slow(RigIron{});
  slow.go(300, 9.0);
  CHECK(slow.stretches.empty());
  SimulatedDrive blocks(RigIron{});
  for (int block = 0; block < 30; ++block) {
    blocks.go(15, 12.0);
    blocks.go(3, 12.0, 30.0);
  }
  CHECK(blocks.stretches.empty());
}

TEST_CASE("a long straight road gives one stretch every minute and a quarter", "[aim]") {
  SimulatedDrive drive(RigIron{});
  drive.go(600, 25.0);
  CHECK(drive.stretches.size() >= 7);
  CHECK(drive.stretches.size() <= 8);
}

// South is where the difference of two bearings changes its sign.
TEST_CASE("a stretch may begin right after a half turn", "[aim]") {
  SimulatedDrive drive(RigIron{});
  drive.go(5, 20.0);
  drive.go(6, 20.0, 30.0);
  drive.go(60, 20.0);
  CHECK(drive.stretches.size() == 1);
}
