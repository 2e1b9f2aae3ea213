#include "app/shell/tablet_line.hpp"
#include "core/motion/sensor_lines.hpp"
#include "platform/clock.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/sensor_tree.hpp"
#include "tests/support/stage.hpp"

#include <thread>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// A rig that seems to move with its antenna up, by the tablet's accelerometer or a heading sensor.
using namespace mastwise;
using namespace std::chrono_literals;
using test::Stage;

namespace {

void raise_mast(Stage& stage) {
  stage.tap("place Aim");
  stage.tap("raise");
  stage.confirm();
}

// A tablet on the dash that shakes for these seconds.
class Dash {
 public:
  explicit Dash(Stage& stage) : stage_(stage) {}
  void rest() { shake(5, 0.0); }
  void shake(int seconds, double by_mps2) {
    for (int second = 0; second < seconds; ++second) {
      std::string lines;
      for (int i = 0; i < 8; ++i) {
        at_s_ += 0.125;
        const double sign = i % 2 == 0 ? 1.0 : -1.0;
        lines += motion::to_line({.at_s = at_s_, .value = {0.0, 7.0, 6.9 + sign * by_mps2}});
      }
      stage_.set(act::TabletBytes{stage_.now(), lines});
      stage_.late_round(1000ms);
    }
    stage_.settle();
  }

 private:
  Stage& stage_;
  double at_s_ = 0.0;
};

}  // namespace

TEST_CASE("a shaking rig with the antenna up is asked about before anything else", "[motion]") {
  Stage stage;
  raise_mast(stage);
  Dash dash(stage);
  dash.shake(30, 0.05);
  CHECK(stage.model().safety.asking == Asking::Nothing);
  stage.tap("place Stations");
  stage.set(act::Ask{Asking::Weather});
  dash.shake(12, 0.4);
  CHECK(stage.model().safety.asking == Asking::Moving);
  CHECK(stage.shows("The rig seems to move"));
  CHECK(stage.targets().find("place Stations") == nullptr);
  SECTION("it stands") {
    stage.tap("refuse");
    CHECK(stage.model().safety.antenna == safety::Antenna::Raised);
    dash.shake(60, 0.4);
    CHECK(stage.model().safety.asking == Asking::Nothing);
    dash.shake(90, 0.4);
    CHECK(stage.model().safety.asking == Asking::Moving);
  }
  SECTION("it is down") {
    stage.confirm();
    CHECK(stage.model().safety.asking == Asking::Nothing);
    CHECK(stage.model().safety.antenna == safety::Antenna::Down);
    dash.shake(200, 0.4);
    CHECK(stage.model().safety.asking == Asking::Nothing);
  }
}

TEST_CASE("a receiver that says the rig stands is believed over a shaking tablet", "[motion]") {
  Stage stage;
  raise_mast(stage);
  Dash dash(stage);
  dash.rest();
  for (int second = 0; second < 15; ++second) {
    stage.receive(test::epoch(36'000 + second, test::kDryLake, 0.1, 90.0));
    dash.shake(1, 0.4);
  }
  CHECK(stage.model().safety.asking == Asking::Nothing);
  // The receiver falls silent.
  dash.shake(20, 0.4);
  CHECK(stage.model().safety.asking == Asking::Moving);
}

TEST_CASE("with the antenna down, or on the roof, a shaking tablet asks nothing", "[motion]") {
  Stage stage;
  Dash dash(stage);
  dash.rest();
  dash.shake(20, 0.4);
  CHECK(stage.model().safety.asking == Asking::Nothing);
  raise_mast(stage);
  stage.set(act::GoToRoof{});
  stage.confirm();
  REQUIRE(stage.model().safety.roof);
  dash.rest();
  dash.shake(20, 0.4);
  CHECK(stage.model().findings.rig_seems_to_move);
  CHECK(stage.model().safety.asking == Asking::Nothing);
}

TEST_CASE("shaking of before the sensors fell silent does not count", "[motion]") {
  Stage stage;
  Dash dash(stage);
  dash.rest();
  dash.shake(20, 0.4);
  raise_mast(stage);
  stage.wait(3s);
  CHECK(stage.model().safety.asking == Asking::Nothing);
}

TEST_CASE("a heading sensor on the rig that turns asks, one on the antenna does not", "[motion]") {
  for (const bool on_rig : {true, false}) {
    Stage stage;
    stage.set(act::ChooseSetting{"sensor_mount", on_rig ? "rig" : "antenna"});
    raise_mast(stage);
    const auto turn = [&](double from_deg, double rate_dps, int seconds) {
      for (int second = 0; second < seconds; ++second) {
        stage.receive(test::sentence(fmt::format("HEHDT,{:.1f},T", from_deg + rate_dps * second)));
        stage.late_round(1000ms);
      }
    };
    turn(100.0, 0.0, 30);
    CHECK(stage.model().safety.asking == Asking::Nothing);
    turn(100.0, 6.0, 15);
    CHECK(stage.model().safety.asking == (on_rig ? Asking::Moving : Asking::Nothing));
  }
}

TEST_CASE("the sensors are read only while the antenna is up") {
  using shell::TabletNeed;
  Stage stage;
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::nothing);
  raise_mast(stage);
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::motion);
  stage.set(act::Ask{Asking::Drive});
  stage.confirm();
  CHECK(shell::tablet_need(stage.model()) == TabletNeed::nothing);
}

TEST_CASE("the kernel's folders lead through the real reader to the question", "[motion]") {
  Stage stage;
  raise_mast(stage);
  test::SensorTree tree;
  tree.add_accelerometer("iio:device0");
  shell::TabletLine line([] {}, tree.root());
  const auto until = [&](auto shake, auto done) {
    for (int i = 0; i < 800 && !done(); ++i) {
      shake(i);
      std::this_thread::sleep_for(25ms);
      stage.session().act(act::Tick{platform::monotonic_now(), platform::utc_now()});
      line.give_to(stage.session());
    }
    return done();
  };
  // Five seconds at rest, then it shakes.
  const auto shaken = [&](int i) {
    const char* reading = i % 7 < 3 ? "941" : "1021";
    tree.write("iio:device0/in_accel_z_raw", i < 200 ? "981" : reading);
  };
  REQUIRE(until(shaken, [&] { return stage.model().safety.asking == Asking::Moving; }));
  CHECK(stage.model().tablet_link.name == "invented-accel");
  tree.remove("iio:device0");
  CHECK(until([](int) {}, [&] { return stage.model().tablet_link.state == Link::State::Lost; }));
  CHECK_FALSE(stage.model().findings.rig_seems_to_move);
}
