#include "core/geo/geodesic.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>
#include <malloc.h>

// Hours on the road at high speed: memory and handles stay flat, every drive with the antenna up
// sounds the alarm, and no other does.
using namespace mastwise;
using safety::Drive;
using test::Stage;

namespace {

// Heap in use, in bytes [malloc.h]: the resident size also counts caches of files.
std::size_t heap_bytes() {
  const struct mallinfo2 info = mallinfo2();
  return info.uordblks + info.hblkhd;
}

std::ptrdiff_t open_files() {
  const std::filesystem::directory_iterator all("/proc/self/fd");
  return std::distance(begin(all), end(all));
}

class Road {
 public:
  explicit Road(const std::string& folder) {
    test::fill_catalog(folder + "/catalog");
    stage_.emplace(test::kTablet, folder);
    go(0.0, 5);
  }

  // Half an hour's drive, half an hour's stop with all that one does there.
  void hour(bool forgets_the_antenna) {
    drive(forgets_the_antenna);
    stop();
  }

  int alarms() const { return alarms_; }
  int stops() const { return stops_; }

 private:
  void go(double knots, int seconds) {
    constexpr double kMetersPerNauticalMile = 1852.0;  // [SI brochure, table 8 of the 8th edition]
    const int ridden = test::kSanitized && seconds > 100 ? seconds / 15 : seconds;
    for (int i = 0; i < ridden; ++i) {
      const auto east = Bearing<True>::degrees(eastward_ ? 90.0 : 270.0);
      place_ = destination(place_, east, knots * kMetersPerNauticalMile / 3600.0 + 1e-6);
      stage_->receive(test::epoch(second_++, place_, knots, east.degrees()));
      stage_->late_round(milliseconds(1'000));
      const bool alarm = stage_->model().safety.drive == Drive::Alarm;
      alarms_ += alarm && !alarmed_ ? 1 : 0;
      alarmed_ = alarm;
    }
  }

  void drive(bool antenna_is_up) {
    eastward_ = !eastward_;
    if (antenna_is_up) {
      go(30.0, 20);
      REQUIRE(stage_->model().safety.drive == Drive::Alarm);
      go(0.0, 5);
      REQUIRE(stage_->model().safety.asking == Asking::AfterAlarm);
      stage_->settle();
      stage_->tap("will lower");
      stage_->confirm();
    }
    REQUIRE(stage_->model().safety.antenna == safety::Antenna::Down);
    go(50.0, 900);
    // Slow traffic, a halt at a light, and on.
    go(2.0, 60);
    go(0.0, 120);
    go(40.0, 600);
  }

  void stop() {
    go(0.0, 600);
    stage_->settle();
    stage_->tap("place Stations");
    REQUIRE(stage_->model().stations);
    REQUIRE(stage_->model().stations->rows.size() > 5);
    for (const char* map : {"place Map", "place Stations"}) {
      stage_->tap(map);
      go(0.0, 10);
    }
    stage_->set(act::SelectStation{key_of(stage_->model().stations->rows[2].station)});
    for (const Place place : {Place::Peak, Place::Logbook, Place::Ahead}) {
      stage_->set(act::Show{place});
      go(0.0, 10);
    }
    stage_->set(act::LogOutcome{key_of(stage_->model().stations->rows[2].station),
                                stops_ % 2 == 0 ? Outcome::steady : Outcome::nothing});
    stage_->tap("place Aim");
    stage_->tap("raise");
    stage_->confirm();
    REQUIRE(stage_->model().safety.antenna == safety::Antenna::Raised);
    go(0.0, 600);
    ++stops_;
    // Of three stops one is left with the antenna up.
    if (stops_ % 3 == 0) return;
    stage_->tap("lower");
    stage_->settle();
    stage_->confirm();
  }

  std::optional<Stage> stage_;
  Position place_ = *Position::at_deg(42.5, -119.4);
  bool eastward_ = false;
  int second_ = 3'600;
  bool alarmed_ = false;
  int alarms_ = 0;
  int stops_ = 0;
};

}  // namespace

TEST_CASE("hours on the road: memory and files stay flat, and each alarm is a true one") {
  const test::TemporaryFolder folder;
  Road road(folder.path());
  const char* wanted = std::getenv("MASTWISE_SOAK_HOURS");
  const int hours = wanted != nullptr ? std::max(4, std::atoi(wanted)) : 4;
  road.hour(false);
  road.hour(false);
  const std::size_t heap = heap_bytes();
  const std::ptrdiff_t files = open_files();
  int forgotten = 0;
  for (int hour = 2; hour < hours; ++hour) {
    const bool up = road.stops() % 3 == 0;
    road.hour(up);
    forgotten += up ? 1 : 0;
    CHECK(road.alarms() == forgotten);
    CHECK(open_files() == files);
    const double growth = static_cast<double>(heap_bytes()) / static_cast<double>(heap);
    UNSCOPED_INFO("hour " << hour << ": " << heap_bytes() << " bytes, " << growth);
    if (!test::kSanitized) CHECK(growth < 1.02);
  }
  CHECK(road.stops() == hours);
}
