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
    stage.tap("place Aim");
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
    stage.tap("units");
    stage.tap("notation");
  });
  Stage stage(test::kTablet, folder.path());
  const std::string& tablet = stage.model().settings.tablet;
  CHECK(tablet.size() == 16);
  CHECK(stage.model().settings ==
        Settings{
            .night = true, .miles = false, .tablet = tablet, .notation = Notation::DegreesMinutes});
}

TEST_CASE("a kill during writing loses no confirmed state") {
  test::TemporaryFolder folder;
  REQUIRE(Logbook::open(folder.file("logbook")));
  for (int round = 0; round < 6; ++round) {
    std::array<int, 2> ends{};
    REQUIRE(::pipe(ends.data()) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
      auto logbook = Logbook::open(folder.file("logbook"));
      for (int count = 1;; ++count) {
        if (!logbook || !logbook->keep_settings(std::to_string(count))) ::_exit(1);
        if (::write(ends[1], &count, sizeof(count)) != sizeof(count)) ::_exit(1);
      }
    }
    ::close(ends[1]);
    int told = 0;
    while (told < 5 + round) REQUIRE(::read(ends[0], &told, sizeof(told)) == sizeof(told));
    ::kill(child, SIGKILL);
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    // All states confirmed before the kill; the last write may be in or not.
    for (int next = 0; ::read(ends[0], &next, sizeof(next)) == sizeof(next);) told = next;
    ::close(ends[0]);
    auto logbook = Logbook::open(folder.file("logbook"));
    REQUIRE(logbook);
    const auto kept = logbook->settings();
    REQUIRE(kept);
    REQUIRE(*kept);
    const int last = std::stoi(**kept);
    CHECK((last == told || last == told + 1));
  }
}
