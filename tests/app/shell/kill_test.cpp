#include "tests/support/killed_child.hpp"
#include "tests/support/stage.hpp"

#include <array>

#include <catch2/catch.hpp>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

// State that must survive a crash: a child process makes it and is killed.
using namespace mastwise;
using test::Stage;

TEST_CASE("the raised antenna survives a kill and a restart") {
  test::TemporaryFolder folder;
  test::in_killed_child([&] {
    Stage stage(test::kTablet, folder.path());
    stage.tap("place Aim");
    stage.tap("raise");
    stage.confirm();
  });
  {
    Stage stage(test::kTablet, folder.path());
    CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
    stage.tap("refuse");  // it is still up
    CHECK(stage.shows("ANTENNA IS UP"));
    stage.set(act::Show{Place::Aim});
    CHECK(stage.targets().find("raise") == nullptr);
    stage.tap("lower");
    stage.confirm();
  }
  Stage stage(test::kTablet, folder.path());
  CHECK(stage.model().safety.antenna == safety::Antenna::Down);
  CHECK_FALSE(stage.shows("ANTENNA IS UP"));
}

TEST_CASE("after a kill during an open prompt the antenna stays down") {
  test::TemporaryFolder folder;
  test::in_killed_child([&] {
    Stage stage(test::kTablet, folder.path());
    stage.tap("place Aim");
    stage.tap("raise");
  });
  Stage stage(test::kTablet, folder.path());
  CHECK(stage.model().safety.antenna == safety::Antenna::Down);
  CHECK(stage.model().safety.asking == Asking::Nothing);
}

TEST_CASE("settings survive a kill") {
  test::TemporaryFolder folder;
  test::in_killed_child([&] {
    Stage stage(test::kTablet, folder.path());
    stage.tap("look");
    stage.tap("settings");
    stage.tap("miles off");
    stage.tap("notation degrees_minutes");
  });
  Stage stage(test::kTablet, folder.path());
  const std::string& tablet = stage.model().settings.tablet;
  CHECK(tablet.size() == 16);
  CHECK(stage.model().settings == Settings{.look = LookChoice::Night,
                                           .miles = false,
                                           .tablet = tablet,
                                           .notation = Notation::DegreesMinutes});
}
