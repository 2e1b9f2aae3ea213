#include "app/words/times.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/receiver_epoch.hpp"
#include "tests/support/tablet.hpp"

#include <catch2/catch.hpp>

// The tablet's calendar is wrong, or jumps while the app runs or between runs.
using namespace mastwise;
using test::Stage;
using namespace std::chrono;

namespace {

// Noon in UTC: 1 January by the clocks of the Americas too.
constexpr UtcTime k1970{milliseconds(43'290'000)};
constexpr UtcTime kToday{sys_days(year(2026) / 7 / 2) + hours(18)};
const Position kHome = *Position::at_deg(42.51, -118.53);

void log_at_clock(Stage& stage, std::size_t row, Outcome outcome) {
  REQUIRE(stage.model().stations);
  REQUIRE(stage.model().stations->rows.size() > row);
  stage.set(act::LogOutcome{key_of(stage.model().stations->rows[row].station), outcome});
}

UtcTime last_arrival(const Stage& stage) {
  REQUIRE_FALSE(stage.model().logbook.log.stops.empty());
  return stage.model().logbook.log.stops.front().arrived;
}

}  // namespace

TEST_CASE("the screen reports a clock in 1970, and neither declination nor records use its date") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  Stage stage(test::kTablet, folder.path());
  test::stand_at(stage, 42.51, -118.53);
  const auto declined_deg = [&] {
    const Declination declination = stage.model().findings.field->declination;
    return to_true(Bearing<Magnetic>::degrees(0.0), declination).degrees();
  };
  const double before_deg = declined_deg();
  stage.set_clock(k1970);
  stage.set(act::Show{Place::Here});
  CHECK(stage.model().findings.date_origin == Findings::DateOrigin::Floor);
  CHECK(stage.model().findings.date >= sys_days(year(2026) / 7 / 2));
  CHECK(declined_deg() == Approx(before_deg).margin(0.05));
  CHECK(stage.shows_within("The tablet's clock is"));
  log_at_clock(stage, 0, Outcome::steady);
  CHECK(last_arrival(stage) >= sys_days(year(2026) / 7 / 2));
  // Set right, the note goes.
  stage.set_clock(kToday + days(3));
  stage.wait(milliseconds(1'000));
  CHECK_FALSE(stage.shows_within("The tablet's clock is wrong"));
  CHECK(stage.model().findings.date_origin == Findings::DateOrigin::Machine);
}

TEST_CASE("a receiver's date wins over a clock two years ahead, and the screen says so") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  stage.set(act::LinkChanged{{.state = Link::State::Open, .name = "test"}});
  stage.set_clock(sys_days(year(2038) / 7 / 2) + hours(18));
  stage.set(act::Show{Place::Here});
  for (int second = 0; second < 6; ++second) {
    stage.receive(test::epoch(kHome, second));
    stage.wait(milliseconds(1'000));
  }
  CHECK(floor<days>(stage.model().findings.date) == sys_days(year(2036) / 7 / 2));
  CHECK(stage.shows_within("The tablet's clock is"));
}

TEST_CASE("a clock that jumps during a run moves no timer of alarm, undo or retry") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  stage.set(act::LinkChanged{{.state = Link::State::Open, .name = "test"}});
  stage.tap("place Aim");
  stage.tap("raise");
  stage.confirm();
  int second = 0;
  const auto drive = [&](double knots) {
    stage.receive(test::epoch(kHome, second++, knots));
    stage.wait(milliseconds(1'000));
  };
  drive(20.0);
  REQUIRE(stage.model().safety.drive == safety::Drive::Alarm);
  for (const UtcTime clock : {k1970, kToday - days(1), kToday + days(730)}) {
    stage.set_clock(clock);
    drive(20.0);
    CHECK(stage.model().safety.drive == safety::Drive::Alarm);
  }
  // Two minutes of silence end it, whatever the calendar says.
  stage.set_clock(kToday + days(9'000));
  stage.wait(milliseconds(60'000));
  CHECK(stage.model().safety.drive == safety::Drive::Alarm);
  stage.set_clock(k1970);
  stage.wait(milliseconds(70'000));
  CHECK(stage.model().safety.drive == safety::Drive::Parked);
  CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
}

TEST_CASE("a clock set back or ahead between runs joins no two days into one stop") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  std::vector<UtcTime> arrivals;
  // Two years ahead by mistake, set right, one day back, and right again.
  for (const UtcTime clock :
       {kToday + days(730), kToday + hours(30), kToday + hours(4), kToday + hours(60)}) {
    Stage stage(test::kTablet, folder.path());
    stage.set_clock(clock);
    test::stand_at(stage, 42.51, -118.53);
    log_at_clock(stage, 0, Outcome::steady);
    CHECK(abs(last_arrival(stage) - clock) < minutes(1));
    stage.tap("place Logbook");
    CHECK(stage.model().logbook.outcomes_here.size() == 1);
    arrivals.push_back(last_arrival(stage));
  }
  Stage stage(test::kTablet, folder.path());
  stage.set_clock(kToday + hours(61));
  test::stand_at(stage, 42.51, -118.53);
  CHECK(stage.model().logbook.log.stops.size() == 4);
  CHECK(stage.model().logbook.log.outcomes.size() == 4);
}
