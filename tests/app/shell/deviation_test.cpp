#include "app/here/actions.hpp"
#include "app/shared/actions.hpp"
#include "app/shared/settings_json.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/receiver_log.hpp"
#include "tests/support/rig_iron.hpp"
#include "tests/support/stage.hpp"

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// The deviation card of a heading sensor on the rig: learned from driving, and used where the
// sensor is.
using namespace mastwise;
using test::RigIron;
using test::Stage;

namespace {

constexpr double kDown_nt = 48'000.0;
const RigIron kIron{.along_nt = 3000.0, .across_nt = 2000.0};

std::vector<DrivenStretch> driven_round(const Stage& stage) {
  const Findings& found = stage.model().findings;
  std::vector<DrivenStretch> stretches;
  for (int i = 0; i < 16; ++i) {
    const double course_deg = 22.5 * i;
    const double read_deg = kIron.reads_deg(course_deg, found.field->horizontal_nt, kDown_nt);
    stretches.push_back({.read = Bearing<Magnetic>::degrees(read_deg),
                         .deviation_deg = fold_half_circle_deg(course_deg - read_deg),
                         .sigma_deg = 1.0,
                         .horizontal_nt = found.field->horizontal_nt,
                         .at = found.date});
  }
  return stretches;
}

void read_sensor(Stage& stage, double degrees) {
  stage.receive(test::sentence(fmt::format("HCHDG,{:.1f},,,,", fold_circle_deg(degrees))));
  stage.settle();
}

std::optional<Bearing<True>> sensor_points(const Stage& stage) {
  return sensor_says(stage.model().receiver.heading(stage.model().now), stage.model().findings);
}

// East at 40 knots for half a minute, while the sensor reads 80.
void drive_straight(Stage& stage) {
  const Position at = *Position::at_deg(42.5, -118.5);
  for (int second = 0; second < 30; ++second) {
    stage.receive(test::sentence("HCHDG,80.0,,,,"));
    stage.receive(test::epoch(36'000 + second, at, 40.0, 90.0));
    stage.wait(milliseconds(1000));
  }
}

double line_deg(const HeadingBudget& budget, ErrorKind kind) {
  for (const ErrorLine& line : budget.lines) {
    if (line.kind == kind) return line.sigma_deg;
  }
  return NAN;
}

}  // namespace

TEST_CASE("a card that holds corrects the sensor of the rig and its stated error") {
  Stage stage;
  stage.set(act::StretchesBack{driven_round(stage)});
  const double magnetic_deg = 100.0;
  const MagneticField field = *stage.model().findings.field;
  read_sensor(stage, kIron.reads_deg(magnetic_deg, field.horizontal_nt, kDown_nt));
  const auto nose = to_true(Bearing<Magnetic>::degrees(magnetic_deg), field.declination);
  // Until somebody says that it is fixed to the rig, nothing is corrected.
  REQUIRE(stage.model().findings.facing);
  CHECK((*stage.model().findings.facing - nose).size_deg() > 5.0);
  CHECK_FALSE(stage.model().findings.sensor_deviation);
  stage.set(act::OpenSheet{Sheet::Sensor});
  stage.settle();
  CHECK(stage.shows("Ready. Say what the sensor is fixed to."));
  stage.tap("mount rig");
  CHECK(stage.shows("It corrects the sensor."));
  REQUIRE(sensor_points(stage));
  CHECK((*sensor_points(stage) - nose).size_deg() < 1.0);
  // It does not turn with the antenna, so it leads nobody to the target.
  CHECK_FALSE(stage.model().findings.facing);
  CHECK_FALSE(stage.model().findings.turn);
  const auto budget =
      heading_budget(PointingMethod::magnetic_heading_sensor, heading_context(stage.model()));
  REQUIRE(budget);
  CHECK(line_deg(*budget, ErrorKind::deviation) < 1.0);
  CHECK(line_deg(*budget, ErrorKind::reading) < 1.0);
  stage.set(act::NoseFromSensor{});
  REQUIRE(stage.model().stop.nose);
  CHECK((std::get<Bearing<True>>(stage.model().stop.nose->heading) - nose).size_deg() < 1.0);
  CHECK(stage.model().stop.nose->sigma_deg < 2.0);
  // On the antenna it turns away from the rig's iron: no card.
  stage.tap("mount antenna");
  CHECK_FALSE(stage.model().findings.sensor_deviation);
  CHECK(stage.model().findings.turn);
  CHECK(stage.shows_within("no card can hold"));
}

TEST_CASE("half a circle corrects nothing and says what is missing") {
  Stage stage;
  auto half = driven_round(stage);
  half.resize(8);
  stage.set(act::ChooseSetting{"sensor_mount", "rig"});
  stage.set(act::StretchesBack{half});
  read_sensor(stage, 40.0);
  CHECK_FALSE(stage.model().findings.sensor_deviation);
  const auto budget =
      heading_budget(PointingMethod::magnetic_heading_sensor, heading_context(stage.model()));
  REQUIRE(budget);
  CHECK(line_deg(*budget, ErrorKind::deviation) == kCompensated_deg);
  stage.set(act::OpenSheet{Sheet::Sensor});
  stage.settle();
  CHECK(stage.shows("Not used yet: too little of the circle."));
  CHECK(stage.shows_within("8 straight stretches"));
}

TEST_CASE("a straight drive is kept for the card, and deleting it can be undone") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  drive_straight(stage);
  REQUIRE(stage.model().settings.sensor_stretches.size() == 1);
  const DrivenStretch kept = stage.model().settings.sensor_stretches.front();
  const double declination_deg = stage.model().findings.field->declination.east_deg();
  CHECK(kept.read.degrees() == Approx(80.0).margin(0.01));
  CHECK(kept.deviation_deg == Approx(10.0 - declination_deg).margin(0.2));
  const SettingsRead again = read_settings(settings_text(stage.model().settings));
  CHECK(again.settings.sensor_stretches == stage.model().settings.sensor_stretches);
  stage.set(act::ForgetStretches{});
  CHECK(stage.model().settings.sensor_stretches.empty());
  stage.set(act::TakeBack{});
  CHECK(stage.model().settings.sensor_stretches.size() == 1);
}

TEST_CASE("a played log and a sensor on the antenna teach no card") {
  Stage stage;
  stage.set(act::SetStop{Stop{}});
  SECTION("a played log") {
    Link link = stage.model().link;
    link.recorded = true;
    stage.set(act::LinkChanged{link});
  }
  SECTION("a sensor on the antenna") {
    stage.set(act::ChooseSetting{"sensor_mount", "antenna"});
  }
  drive_straight(stage);
  REQUIRE(stage.model().findings.position);
  CHECK(stage.model().settings.sensor_stretches.empty());
}
