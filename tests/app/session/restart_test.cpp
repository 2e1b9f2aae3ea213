#include "app/shared/settings_json.hpp"
#include "core/geo/geodesic.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/killed_child.hpp"
#include "tests/support/receiver_epoch.hpp"
#include "tests/support/stage.hpp"

#include <cmath>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

// What was marked, typed and pinned comes back after the app was killed; a stop that the rig has
// left is offered, not assumed.
using namespace mastwise;
using test::Stage;

namespace {

// Four epochs, one each second: enough to notice a move and to trust a date.
void stand(Stage& stage, const Position& place, int from_second = 0) {
  for (int second = from_second; second < from_second + 4; ++second) {
    stage.receive(test::epoch(place, second));
    stage.wait(milliseconds(1'000));
  }
}

Position at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

}  // namespace

TEST_CASE("after a kill the whole working state is back") {
  const test::TemporaryFolder folder;
  const auto work = [](Stage& stage) {
    stage.tap("place Stations");
    stage.set(act::PinStation{key_of(stage.model().stations->rows[2].station)});
    stage.set(act::SelectStation{key_of(stage.model().stations->rows[1].station)});
    stage.set(act::ChooseSurroundings{reception::Surroundings::forest});
    stage.set(act::ChoosePlan{PlanFor::All});
    stage.set(act::NextPlanFloor{});
    stage.set(act::NextWeather{});
    stage.set(act::OpenField{Field::AheadPlace});
    stage.tap_keys("43.1,-118.2");
    stage.tap("key Use it");
    stage.set(act::Show{Place::Peak});
    stage.tap("begin sweep");
    stage.tap("read");
    stage.set(act::TurnSweep{40.0});
    stage.tap("read");
    stage.tap("read");
    stage.wait(milliseconds(1'000));
  };
  test::in_killed_child([&] {
    Stage stage(test::kTablet, folder.path());
    work(stage);
  });
  std::optional<Model> worked;
  {
    Stage expected;
    work(expected);
    worked = expected.model();
  }
  Stage stage(test::kTablet, folder.path());
  const Model &now = stage.model(), &then = *worked;
  CHECK(now.stop == then.stop);
  CHECK(now.place == Place::Peak);
  CHECK(now.plan.plan_for == PlanFor::All);
  CHECK(now.plan.floor == 1);
  CHECK(now.logbook.weather == then.logbook.weather);
  CHECK(now.ahead.places == then.ahead.places);
  REQUIRE(now.peak.sweep);
  const Sweep &back = *now.peak.sweep, &measured = *then.peak.sweep;
  CHECK(back.station == measured.station);
  CHECK(back.value == measured.value);
  REQUIRE(back.readings.size() == measured.readings.size());
  REQUIRE(back.fit);
  // The two worked at slightly different times, when the needle points a hair elsewhere.
  const auto same = [](Bearing<Dial> one, Bearing<Dial> other) {
    return std::fabs(fold_half_circle_deg(one.degrees() - other.degrees())) < 1e-6;
  };
  CHECK(same(back.heading, measured.heading));
  for (std::size_t i = 0; i < back.readings.size(); ++i) {
    CHECK(same(back.readings[i].heading, measured.readings[i].heading));
    CHECK(back.readings[i].value == measured.readings[i].value);
  }
  CHECK(same(back.fit->peak, measured.fit->peak));
  REQUIRE(now.undo.size() == then.undo.size());
  for (std::size_t i = 0; i < now.undo.size(); ++i) CHECK(now.undo[i].what == then.undo[i].what);
}

TEST_CASE("Undo goes back twenty steps, each by name, also after a restart") {
  const test::TemporaryFolder folder;
  std::vector<Stop> before;
  {
    Stage stage(test::kTablet, folder.path());
    for (std::size_t step = 0; step < 20; ++step) {
      before.push_back(stage.model().stop);
      stage.set(act::PinStation{key_of(stage.model().stations->rows[step % 5].station)});
    }
    stage.wait(milliseconds(1'000));
  }
  Stage stage(test::kTablet, folder.path());
  for (std::size_t step = 20; step > 0; --step) {
    REQUIRE(stage.targets().find("take back") != nullptr);
    stage.tap("take back");
    CHECK(stage.model().stop == before[step - 1]);
  }
  CHECK(stage.targets().find("take back") == nullptr);
}

TEST_CASE("the stop of the last run is offered where the receiver says that the rig is elsewhere") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  const Position campground = at(42.51, -118.53);
  {
    Stage stage(test::kTablet, folder.path());
    stand(stage, campground, 0);
    stage.set(act::SelectStation{key_of(stage.model().stations->rows[0].station)});
    stage.set(act::PinStation{key_of(stage.model().stations->rows[1].station)});
    stage.wait(milliseconds(1'000));
    REQUIRE(stage.model().findings.position);
  }
  SECTION("here again: it is this stop") {
    Stage stage(test::kTablet, folder.path());
    REQUIRE(stage.model().stop.target);
    stand(stage, destination(campground, Bearing<True>::degrees(10.0), 50.0), 0);
    CHECK(stage.model().stop.target);
    CHECK(stage.model().stop.pinned.size() == 1);
    CHECK(stage.targets().find("use earlier") == nullptr);
  }
  SECTION("300 m away: nothing of it counts until it is asked for") {
    Stage stage(test::kTablet, folder.path());
    stand(stage, destination(campground, Bearing<True>::degrees(10.0), 300.0), 0);
    CHECK_FALSE(stage.model().stop.target);
    CHECK(stage.model().stop.pinned.empty());
    stage.tap("place Here");
    CHECK(stage.shows_within("The stop of"));
    stage.tap("use earlier");
    CHECK(stage.model().stop.target);
    CHECK(stage.model().stop.pinned.size() == 1);
    CHECK(stage.targets().find("use earlier") == nullptr);
  }
}

TEST_CASE("three stops with restarts: each place has its own outcomes, and an old one its date") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  const Position first = at(42.51, -118.53), second = at(42.61, -118.43);
  const auto outcomes_at = [&](Position here, Outcome outcome, const std::string& call_sign,
                               int from_second) {
    Stage stage(test::kTablet, folder.path());
    stand(stage, here, from_second);
    stage.set(act::Show{Place::Logbook});
    const std::vector<OutcomeRecord> before = stage.model().logbook.outcomes_here;
    const auto& rows = stage.model().stations->rows;
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const StationRow& one) {
      return one.station.call_sign == call_sign;
    });
    REQUIRE(row != rows.end());
    stage.set(act::LogOutcome{key_of(row->station), outcome});
    CHECK(stage.model().logbook.outcomes_here.size() == 1);
    // Driving on within the same run: nothing of this place counts there.
    stand(stage, destination(here, Bearing<True>::degrees(90.0), 400.0), from_second + 10);
    CHECK(stage.model().logbook.outcomes_here.empty());
    CHECK_FALSE(stage.model().logbook.log.stop_id);
    return before;
  };
  CHECK(outcomes_at(first, Outcome::steady, "QLSC", 0).empty());
  CHECK(outcomes_at(second, Outcome::nothing, "QLSC", 600).empty());
  const auto back = outcomes_at(first, Outcome::breaks_up, "QLSC", 1200);
  REQUIRE(back.size() == 1);
  CHECK(back[0].outcome == Outcome::steady);
  // The third is another stop, because a record was made elsewhere in between; the place is one.
  Stage stage(test::kTablet, folder.path());
  CHECK(stage.model().logbook.log.stops.size() == 3);
}

TEST_CASE("only a bad setting gets its default, with its name, and a newer version's stays") {
  Settings settings;
  settings.look = LookChoice::Night;
  settings.handle = HandleChoice{.first_reading_deg = 12.0};
  settings.pinned_networks = {"Basin"};
  nlohmann::json text = nlohmann::json::parse(settings_text(settings));
  text["notation"] = "of another world";
  text["miles"] = 3;
  text["from_the_future"] = {{"a", 1}};
  const SettingsRead read = read_settings(text.dump());
  CHECK(read.dropped == std::vector<std::string>{"miles", "notation"});
  CHECK(read.settings.look == LookChoice::Night);
  CHECK(read.settings.handle == settings.handle);
  CHECK(read.settings.pinned_networks == settings.pinned_networks);
  CHECK(read.settings.notation == Settings{}.notation);
  CHECK(nlohmann::json::parse(settings_text(read.settings)).at("from_the_future").at("a") == 1);
  CHECK(read_settings("{").dropped.size() == 1);
}

TEST_CASE("a tablet's name is on the disk after its first start") {
  const test::TemporaryFolder folder;
  std::string name;
  {
    Stage stage(test::kTablet, folder.path());
    name = stage.model().settings.tablet;
  }
  Stage stage(test::kTablet, folder.path());
  CHECK_FALSE(name.empty());
  CHECK(stage.model().settings.tablet == name);
}

TEST_CASE("a log that is played keeps its own date") {
  Stage stage;
  stage.set(act::LinkChanged{{.state = Link::State::Open, .name = "log", .recorded = true}});
  // 28 August 2019: older than this build, but not wrong by 1,024 weeks.
  for (const char* second : {"00", "01", "02", "03", "04"}) {
    stage.receive(test::sentence(std::string("GPRMC,1200") + second +
                                 ".00,A,4230.6000,N,11831.8000,W,0.0,,280819,,,A"));
    stage.wait(milliseconds(1'000));
  }
  REQUIRE(stage.model().receiver.date());
  CHECK(std::chrono::year_month_day(stage.model().receiver.date()->date) ==
        std::chrono::year(2019) / 8 / 28);
}

// A start over by mistake, for one.
TEST_CASE("a sweep that was started over comes back by Undo") {
  Stage stage;
  stage.tap("place Peak");
  stage.tap("begin sweep");
  stage.tap("read");
  stage.set(act::TurnSweep{40.0});
  stage.tap("read");
  const Sweep measured = *stage.model().peak.sweep;
  stage.tap("end sweep");
  CHECK_FALSE(stage.model().peak.sweep);
  stage.tap("take back");
  CHECK(*stage.model().peak.sweep == measured);
}
