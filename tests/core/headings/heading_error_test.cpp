#include "core/headings/heading_error.hpp"

#include "core/geo/line_error.hpp"
#include "core/geo/magnetic_field.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// A stop where everything is known, 60 km from the transmitter.
HeadingContext all_known() {
  return {.distance_m = 60'000.0,
          .stop_error_m = 5.0,
          .transmitter_error_m = 15.0,
          .declination_sigma_deg = 0.4,
          .deviation_sigma_deg = 2.0,
          .rig_heading_sigma_deg = 3.0,
          .handle_zero_sigma_deg = 1.0,
          .handle_play_deg = kUsualHandlePlay_deg,
          .clock_error_min = 1.0,
          .sun_turn_deg_per_min = 0.25,
          .star_turn_deg_per_min = -0.2,
          .star_altitude_deg = 60.0,
          .latitude_deg = 45.0,
          .landmark_error_m = 10.0,
          .landmark_distance_m = 1'000.0,
          .known_direction_sigma_deg = 1.2,
          .walk_length_m = 100.0,
          .walk_end_error_m = 3.0,
          .course_sigma_deg = 1.0};
}

double sigma_of(const HeadingBudget& budget, ErrorKind kind) {
  const auto line = std::find_if(budget.lines.begin(), budget.lines.end(),
                                 [&](const ErrorLine& each) { return each.kind == kind; });
  REQUIRE(line != budget.lines.end());
  return line->sigma_deg;
}

constexpr PointingMethod kAll[] = {PointingMethod::bearing_alone,
                                   PointingMethod::baseplate_compass,
                                   PointingMethod::sighting_compass,
                                   PointingMethod::set_compass,
                                   PointingMethod::tablet_magnetometer,
                                   PointingMethod::handle,
                                   PointingMethod::rig_sides,
                                   PointingMethod::sun_shadow,
                                   PointingMethod::star,
                                   PointingMethod::pole_star_as_north,
                                   PointingMethod::landmark,
                                   PointingMethod::walked_line,
                                   PointingMethod::course_over_ground,
                                   PointingMethod::true_heading_sensor,
                                   PointingMethod::magnetic_heading_sensor,
                                   PointingMethod::turn_in_place};

}  // namespace

// Common practice, no source: declination 0.4, the needle near iron 2, a handheld reading 3,
// the handle's play 5: about 6 degrees in whole.
TEST_CASE("the typical whole budget of compass and handle is about six degrees", "[ways]") {
  const ErrorLine lines[] = {{ErrorKind::declination, 0.4, "", false},
                             {ErrorKind::deviation, 2.0, "", true},
                             {ErrorKind::reading, kBaseplateCompass_deg, "", true},
                             {ErrorKind::handle_play, kUsualHandlePlay_deg, "", true}};
  CHECK(root_of_squares_deg(lines) == Approx(6.18).margin(0.005));

  // The same with Mastwise: the compass gives the rig heading, and the handle turns by it.
  HeadingContext context = all_known();
  const auto compass = heading_budget(PointingMethod::baseplate_compass, context);
  REQUIRE(compass);
  CHECK(compass->total_deg ==
        Approx(std::sqrt(0.4 * 0.4 + 2.0 * 2.0 + 3.0 * 3.0 + 1.0)).margin(0.01));
  context.rig_heading_sigma_deg = compass->total_deg;
  context.handle_zero_sigma_deg = 0.0;
  const auto whole = heading_budget(PointingMethod::handle, context);
  REQUIRE(whole);
  // The sight over the mast adds 1 degree to the 6.18.
  CHECK(whole->total_deg == Approx(std::hypot(6.18, 1.0)).margin(0.02));
}

// Worked figures of the trade: 0.5 mm at each end is 2.0 degrees over 20 mm and 0.4 over 97; 10 m
// at 1 km is 0.6; 3 m at each end is 4.9 degrees at 50 m, 2.4 at 100, 1.2 at 200.
TEST_CASE("position errors make their angle errors", "[ways]") {
  CHECK(line_error_deg(0.5, 20.0) == Approx(2.0).margin(0.05));
  CHECK(line_error_deg(0.5, 97.0) == Approx(0.4).margin(0.05));
  CHECK(angle_of_error_deg(10.0, 1'000.0) == Approx(0.6).margin(0.05));
  CHECK(line_error_deg(3.0, 50.0) == Approx(4.9).margin(0.06));
  CHECK(line_error_deg(3.0, 100.0) == Approx(2.4).margin(0.05));
  CHECK(line_error_deg(3.0, 200.0) == Approx(1.2).margin(0.05));
  // 0.65 / cos 60 = 1.3.
  CHECK(pole_star_from_north_deg(60.0) == Approx(1.3));
}

TEST_CASE("every method has its error lines, largest first, each with its source", "[ways]") {
  for (const PointingMethod method : kAll) {
    INFO(to_text(method));
    CHECK_FALSE(to_text(method).empty());
    const auto budget = heading_budget(method, all_known());
    REQUIRE(budget);
    CHECK(budget->total_deg == Approx(root_of_squares_deg(budget->lines)));
    CHECK(std::is_sorted(budget->lines.begin(), budget->lines.end(),
                         [](auto& a, auto& b) { return a.sigma_deg > b.sigma_deg; }));
    for (const ErrorLine& line : budget->lines) {
      CHECK_FALSE(line.source.empty());
      CHECK_FALSE(to_text(line.kind).empty());
      CHECK(line.common_practice == (line.source == "common practice, no source"));
    }
  }
}

TEST_CASE("each method asks only for the facts it needs", "[ways]") {
  HeadingContext context = all_known();
  context.deviation_sigma_deg.reset();
  const auto unsaid = heading_budget(PointingMethod::sighting_compass, context);
  REQUIRE_FALSE(unsaid);
  CHECK(unsaid.error().remedy.find("18 m") != std::string::npos);
  // Beside the rig a compass is refused whatever its deviation is thought to be.
  context.deviation_sigma_deg = 1.0;
  for (const Standing standing : kStandings) {
    context.standing = standing;
    const bool works = !refuses_compass(standing);
    CHECK(bool(heading_budget(PointingMethod::sighting_compass, context)) == works);
    CHECK(heading_budget(PointingMethod::magnetic_heading_sensor, context));
    CHECK(heading_budget(PointingMethod::landmark, context));
  }
  context.standing.reset();
  CHECK(heading_budget(PointingMethod::sun_shadow, context));

  context.rig_heading_sigma_deg.reset();
  CHECK_FALSE(heading_budget(PointingMethod::handle, context));
  CHECK_FALSE(heading_budget(PointingMethod::rig_sides, context));
  context.stop_error_m.reset();
  CHECK_FALSE(heading_budget(PointingMethod::bearing_alone, context));
  context.stop_error_m = -1.0;
  CHECK_FALSE(heading_budget(PointingMethod::bearing_alone, context));
  context = all_known();
  context.latitude_deg = -34.0;
  CHECK_FALSE(heading_budget(PointingMethod::pole_star_as_north, context));
  CHECK_FALSE(heading_budget(PointingMethod::map_ruler, context));
}

TEST_CASE("a bearing from paper adds the errors of the ruler and the sheet's north", "[ways]") {
  HeadingContext context = all_known();
  context.paper_map = HeadingContext::PaperMap{.line_mm = 20.0, .local_meridian = false};
  const auto sheet = heading_budget(PointingMethod::map_ruler, context);
  REQUIRE(sheet);
  CHECK(sheet->total_deg == Approx(2.86).margin(0.02));  // 2.02 (+) 2
  context.paper_map->local_meridian = true;
  const auto meridian = heading_budget(PointingMethod::map_ruler, context);
  REQUIRE(meridian);
  CHECK(meridian->lines.size() == 1);
  const auto compass = heading_budget(PointingMethod::baseplate_compass, context);
  REQUIRE(compass);
  CHECK(sigma_of(*compass, ErrorKind::map_ruler) == Approx(2.02).margin(0.01));
  CHECK(compass->lines.size() == 5);
}

// The model's uncertainty at 20,000 nT is 0.38 degrees [WMM2025, error model]; 15.8 m at 60 km is
// 0.015; a whole-degree setting errs by 1 / sqrt(12).
TEST_CASE("the error lines use the figures of the stop", "[ways]") {
  HeadingContext context = all_known();
  context.declination_sigma_deg = declination_sigma_deg(20'000.0);
  const auto budget = heading_budget(PointingMethod::set_compass, context);
  REQUIRE(budget);
  CHECK(sigma_of(*budget, ErrorKind::declination) == Approx(0.375).margin(0.005));
  CHECK(sigma_of(*budget, ErrorKind::position) == Approx(0.0151).margin(0.0002));
  CHECK(sigma_of(*budget, ErrorKind::rounding) == Approx(0.289).margin(0.001));
  const auto sun = heading_budget(PointingMethod::sun_shadow, context);
  REQUIRE(sun);
  CHECK(sigma_of(*sun, ErrorKind::sun_clock) == Approx(0.25));
  // 1 / cos 60 = 2, and a minute of the clock times 0.2 degree.
  const auto star = heading_budget(PointingMethod::star, context);
  REQUIRE(star);
  CHECK(sigma_of(*star, ErrorKind::reading) == Approx(2.0));
  CHECK(sigma_of(*star, ErrorKind::sun_clock) == Approx(0.2));
  context.star_altitude_deg = 90.0;
  CHECK_FALSE(heading_budget(PointingMethod::star, context));
}
