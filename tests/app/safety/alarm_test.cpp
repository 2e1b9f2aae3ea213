#include "app/safety/update.hpp"
#include "app/service/startup.hpp"
#include "app/session/turn_tone.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/stage.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using safety::Antenna;
using safety::Drive;
using test::Stage;

namespace {

// A rig with a receiver: one epoch a second.
class Rig {
 public:
  explicit Rig(Stage& stage) : stage_(stage) {}
  void drive_knots(double knots, int seconds = 1) {
    for (int i = 0; i < seconds; ++i) {
      stage_.receive(test::epoch(second_++, parked_, knots, 90.0));
      stage_.wait(milliseconds(1'000));
    }
  }

 private:
  Stage& stage_;
  const Position parked_ = *Position::at_deg(42.5, -118.5);
  int second_ = 36'000;
};

void raise(Stage& stage) {
  stage.tap("place Aim");
  stage.tap("raise");
  stage.confirm();
}

std::vector<AntennaChange> changes(const test::TemporaryFolder& folder) {
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook);
  auto found = logbook->antenna_changes();
  REQUIRE(found);
  return *std::move(found);
}

}  // namespace

TEST_CASE("the alarm runs through up, driving, quiet, stopped, down and undo") {
  test::TemporaryFolder folder;
  Stage stage(test::kTablet, folder.path());
  Rig rig(stage);
  raise(stage);

  rig.drive_knots(3.0);  // 5.6 km/h
  CHECK(stage.model().safety.drive == Drive::Alarm);
  CHECK(stage.shows("ANTENNA IS UP"));
  REQUIRE(stage.targets().all().size() == 1);
  const double loud = tone_of(stage.model())->loudness;

  stage.tap("quiet alarm");
  CHECK(stage.targets().all().empty());
  CHECK(stage.shows("ANTENNA IS UP"));
  CHECK(tone_of(stage.model())->loudness < 0.5 * loud);
  rig.drive_knots(50.0, 29);
  CHECK(tone_of(stage.model())->loudness < 0.5 * loud);
  rig.drive_knots(50.0, 2);
  CHECK(tone_of(stage.model())->loudness == loud);
  CHECK(stage.model().safety.antenna == Antenna::Raised);

  rig.drive_knots(1.0);  // 1.9 km/h: slow is not stopped
  CHECK(stage.model().safety.drive == Drive::Alarm);
  rig.drive_knots(0.0);
  CHECK(stage.model().safety.drive == Drive::Parked);
  CHECK(stage.model().safety.asking == Asking::AfterAlarm);
  CHECK(stage.shows("Is it down and latched?"));
  stage.tap("confirm");
  CHECK(stage.model().safety.antenna == Antenna::Raised);
  stage.confirm();
  CHECK(stage.model().safety.antenna == Antenna::Down);
  CHECK(changes(folder).front().confirmed == safety::after_alarm().accept);

  stage.tap("take back");
  CHECK(stage.model().safety.antenna == Antenna::Raised);
  CHECK_FALSE(stage.model().safety.undo);
  const auto kept = changes(folder);
  REQUIRE(kept.size() == 3);
  CHECK(kept[0].confirmed == "Undo");
  CHECK(kept[0].antenna == Antenna::Raised);
  CHECK(kept[2].confirmed == safety::before_raising().accept);
  CHECK(kept[2].when > UtcTime());
  CHECK_FALSE(kept[2].place);  // the practice area has no real place
}

TEST_CASE("driving on without lowering brings the alarm back") {
  Stage stage;
  Rig rig(stage);
  raise(stage);
  rig.drive_knots(10.0);
  rig.drive_knots(0.0);
  REQUIRE(stage.model().safety.asking == Asking::AfterAlarm);
  SECTION("the question still open") {}
  SECTION("after \"It is still up\"") {
    stage.tap("refuse");
    CHECK(stage.model().safety.asking == Asking::Nothing);
    CHECK(stage.model().safety.antenna == Antenna::Raised);
  }
  rig.drive_knots(10.0);
  CHECK(stage.model().safety.drive == Drive::Alarm);
  CHECK(stage.model().safety.asking == Asking::Nothing);
}

TEST_CASE("nothing marks the antenna down while the rig moves") {
  Stage stage;
  Rig rig(stage);
  raise(stage);
  rig.drive_knots(2.0);  // 3.7 km/h: no alarm yet
  REQUIRE(stage.model().safety.drive == Drive::Parked);
  stage.tap("lower");
  rig.drive_knots(2.0);
  stage.confirm();
  CHECK(stage.model().safety.antenna == Antenna::Raised);
  CHECK(stage.shows_within("The rig is moving"));

  rig.drive_knots(20.0);
  for (const Asking asking :
       {Asking::Drive, Asking::AfterAlarm, Asking::UndoRaise, Asking::StillUp}) {
    stage.set(act::Ask{asking});
    stage.set(act::ConfirmAsked{});
    CHECK(stage.model().safety.antenna == Antenna::Raised);
  }
  stage.set(act::TakeBack{});
  stage.set(act::ConfirmAsked{});
  CHECK(stage.model().safety.antenna == Antenna::Raised);
  CHECK(stage.model().safety.drive == Drive::Alarm);
}

TEST_CASE("a silent receiver does not end the alarm, and after two minutes Mastwise asks") {
  Stage stage;
  Rig rig(stage);
  raise(stage);
  rig.drive_knots(20.0);
  stage.wait(milliseconds(110'000));
  CHECK(stage.model().safety.drive == Drive::Alarm);
  CHECK(stage.model().safety.asking == Asking::Nothing);
  stage.wait(milliseconds(20'000));
  CHECK(stage.model().safety.asking == Asking::AfterAlarm);
  CHECK(stage.model().safety.antenna == Antenna::Raised);
}

TEST_CASE("a change of the antenna can be undone for 60 s") {
  Stage stage;
  raise(stage);
  stage.wait(milliseconds(59'000));
  CHECK(stage.model().safety.undo);
  SECTION("Undo of a mistaken raise asks before the antenna counts as down") {
    stage.tap("take back");
    CHECK(stage.model().safety.asking == Asking::UndoRaise);
    CHECK(stage.model().safety.antenna == Antenna::Raised);
    stage.confirm();
    CHECK(stage.model().safety.antenna == Antenna::Down);
  }
  SECTION("no longer") {
    stage.wait(milliseconds(2'000));
    CHECK_FALSE(stage.model().safety.undo);
    CHECK(stage.targets().find("take back") == nullptr);
  }
  SECTION("another touch that can be undone comes first") {
    stage.tap("place Here");
    stage.set(act::ForgetNose{});
    stage.tap("take back");
    CHECK(stage.model().stop.nose);
    CHECK(stage.model().safety.asking == Asking::Nothing);
    CHECK(stage.model().safety.undo);
  }
}

TEST_CASE("the antenna counts as up before the write and as down only after it") {
  Stage stage;
  Model model = stage.model();
  const auto magnetic = service::load_magnetic_model();
  REQUIRE(magnetic);
  const World world{*magnetic, stage.practice_stop()};
  const auto act_on = [&](const Action& action) { apply(model, action, world); };
  act_on(act::Ask{Asking::Raise});
  act_on(act::ConfirmAsked{});
  REQUIRE(antenna_to_write(model.safety, model.now));
  CHECK(model.safety.antenna == Antenna::Down);
  act_on(act::AntennaWritten{"the disk is full"});
  CHECK(model.safety.antenna == Antenna::Raised);
  CHECK(model.trouble == "the disk is full");
  CHECK_FALSE(antenna_to_write(model.safety, model.now));
  act_on(act::Tick{model.now + milliseconds(6'000), model.machine_time});
  CHECK(antenna_to_write(model.safety, model.now));
  act_on(act::AntennaWritten{});
  CHECK_FALSE(model.safety.unsaved);

  act_on(act::Ask{Asking::Drive});
  act_on(act::ConfirmAsked{});
  act_on(act::AntennaWritten{"the disk is full"});
  CHECK(model.safety.antenna == Antenna::Raised);
  CHECK_FALSE(model.safety.unsaved);
}

TEST_CASE(
    "without a receiver a raised antenna is asked about at the start, after a night and "
    "on battery") {
  const test::TemporaryFolder folder;
  {
    Stage stage(test::kTablet, folder.path());
    stage.tap("place Aim");
    stage.tap("raise");
    stage.confirm();
    REQUIRE(stage.model().safety.antenna == safety::Antenna::Raised);
    CHECK(stage.model().safety.asking == Asking::Nothing);
  }
  Stage stage(test::kTablet, folder.path());
  CHECK(stage.model().safety.asking == Asking::StillUp);
  CHECK(stage.shows("The antenna was left up"));
  // Before anything else: it covers the places.
  CHECK(stage.targets().find("place Stations") == nullptr);
  stage.tap("refuse");
  CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
  CHECK(stage.shows("ANTENNA IS UP"));
  stage.late_round(std::chrono::hours(7));
  CHECK(stage.model().safety.asking == Asking::Nothing);
  stage.late_round(std::chrono::hours(2));
  CHECK(stage.model().safety.asking == Asking::StillUp);
  stage.settle();
  stage.tap("refuse");
  CHECK(stage.model().safety.asking == Asking::Nothing);
  stage.session().act(act::Unplugged{});
  CHECK(stage.model().safety.asking == Asking::StillUp);
  stage.settle();
  stage.confirm();
  CHECK(stage.model().safety.antenna == safety::Antenna::Down);
  stage.late_round(std::chrono::hours(9));
  stage.session().act(act::Unplugged{});
  CHECK(stage.model().safety.asking == Asking::Nothing);
}
