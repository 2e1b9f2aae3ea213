#include "core/headings/sayings.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <string>
#include <variant>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const Position kStop = Position::at_deg(45.0, -110.0).value();

// True 37 with declination 13 E, the nose at 300, 60 km away; everything known.
SayingInputs all_known() {
  const auto heading = Bearing<True>::degrees(37.0);
  MagneticField field{};
  field.declination = Declination::east_deg(13.0);
  field.declination_sigma_deg = 0.4;
  field.zone = MagneticField::Zone::Normal;
  const GridZone grid{"12N", Convergence::east_deg(0.7)};
  const AimCard card{.distance_m = 60'000.0,
                     .bearing_true = heading,
                     .bearing_magnetic = to_magnetic(heading, field.declination),
                     .bearing_grid = to_grid(heading, grid.convergence),
                     .field = field,
                     .grid = grid,
                     .rig_angle = RigAngle::clockwise_deg(97.0)};
  const auto handle =
      Handle::calibrate({HandleReading::dial_deg(0.0), RigAngle::clockwise_deg(0.0)},
                        {HandleReading::dial_deg(90.0), RigAngle::clockwise_deg(270.0)});
  REQUIRE(handle);
  return {.from = kStop,
          .card = card,
          .context = {.stop_error_m = 5.0,
                      .transmitter_error_m = 15.0,
                      .deviation_sigma_deg = kKeptAwayDeviation_deg,
                      .rig_heading_sigma_deg = 3.0,
                      .clock_error_min = 1.0,
                      .walk_end_error_m = 3.0},
          .handle = *handle,
          .handle_now = HandleReading::dial_deg(0.0),
          .sun = SunNow{Bearing<True>::degrees(240.0), Bearing<True>::degrees(241.25)},
          .pole_star = Bearing<True>::degrees(359.0),
          .landmark = Landmark{"the church tower",
                               destination(kStop, Bearing<True>::degrees(90.0), 1'000.0), 10.0},
          .walk_m = 200.0};
}

const Saying& find(const Sayings& all, SayingKind kind) {
  const auto found = std::find_if(all.sayings.begin(), all.sayings.end(),
                                  [&](const Saying& each) { return each.kind == kind; });
  REQUIRE(found != all.sayings.end());
  return *found;
}

bool left_out(const Sayings& all, SayingKind kind) {
  return std::any_of(all.left_out.begin(), all.left_out.end(), [&](const LeftOut& each) {
    return each.kind == kind && !each.why.remedy.empty();
  });
}

}  // namespace

// magnetic = true - D, grid = true - convergence, rig angle = true - nose; a compass with its own
// declination set reads true.
TEST_CASE("one heading in every way of saying it", "[ways]") {
  const Sayings all = say_heading(all_known());
  CHECK(all.sayings.size() == 10);
  CHECK(all.left_out.empty());

  const Saying& plain = find(all, SayingKind::magnetic_bearing);
  CHECK(std::get<Bearing<Magnetic>>(plain.said_as).degrees() == Approx(24.0));
  CHECK(plain.words == "A plain compass, its own declination at 0, reads 24");
  const Saying& set = find(all, SayingKind::set_compass);
  CHECK(std::get<Bearing<True>>(set.said_as).degrees() == Approx(37.0));
  CHECK(set.words == "Set your compass's own declination to 13 E, then read 37");
  CHECK(find(all, SayingKind::true_bearing).words == "True bearing 37");
  CHECK(find(all, SayingKind::grid_bearing).words ==
        "On a map with the grid of zone 12N: 36 from its grid lines");
  CHECK(find(all, SayingKind::rig_sides).words == "three o'clock, square off the right side");
  const auto turn = std::get<HandleTurn>(find(all, SayingKind::handle).said_as);
  CHECK(turn.reading.dial_deg() == Approx(263.0));
  CHECK(turn.clockwise_from_below_deg == Approx(-97.0));
}

TEST_CASE("one heading by shadow, star, landmark and walk", "[ways]") {
  const Sayings all = say_heading(all_known());
  // The sun at 240 throws the shadow to 60; in five minutes at 241.25 to 61.25.
  const auto shadow = std::get<FromShadow>(find(all, SayingKind::sun_shadow).said_as);
  CHECK(shadow.now.clockwise_deg() == Approx(-23.0));
  CHECK(shadow.in_five_minutes.clockwise_deg() == Approx(-24.25));
  CHECK(find(all, SayingKind::sun_shadow).words.find("23 degrees left now, 24 degrees left in") !=
        std::string::npos);
  CHECK(find(all, SayingKind::pole_star).words ==
        "Face the pole star: the heading is 38 degrees right");
  CHECK(find(all, SayingKind::landmark).words ==
        "Face the church tower: the heading is 53 degrees left");
  const auto walk = std::get<WalkTo>(find(all, SayingKind::walked_line).said_as);
  const PathBetween path = path_between(kStop, walk.target);
  CHECK(path.distance_m == Approx(200.0));
  CHECK(path.bearing.degrees() == Approx(37.0));
}

// atan(sqrt(2) 3 / 200) = 1.2 and the sight's 1; 3 (+) 2 (+) 0.4 for the compass in the hand;
// 10 and 5 m at 1 km with the sight's 1.
TEST_CASE("each saying has its own budget, the smallest error first", "[ways]") {
  const Sayings all = say_heading(all_known());
  CHECK(std::is_sorted(all.sayings.begin(), all.sayings.end(),
                       [](auto& a, auto& b) { return a.sigma_deg < b.sigma_deg; }));
  for (const Saying& each : all.sayings) {
    CHECK(each.sigma_deg == each.budget.total_deg);
    CHECK_FALSE(to_text(each.kind).empty());
  }
  CHECK(find(all, SayingKind::walked_line).sigma_deg == Approx(1.57).margin(0.01));
  CHECK(find(all, SayingKind::magnetic_bearing).sigma_deg == Approx(3.63).margin(0.01));
  CHECK(find(all, SayingKind::landmark).sigma_deg == Approx(1.187).margin(0.005));
  CHECK(find(all, SayingKind::sun_shadow).sigma_deg == Approx(1.031).margin(0.002));
  CHECK(find(all, SayingKind::handle).sigma_deg == Approx(5.83).margin(0.01));
}

TEST_CASE("what is not known leaves its sayings out with a reason", "[ways]") {
  SayingInputs inputs = all_known();
  inputs.card.rig_angle.reset();
  inputs.sun.reset();
  inputs.context.deviation_sigma_deg.reset();
  const Sayings all = say_heading(inputs);
  for (const SayingKind kind : {SayingKind::rig_sides, SayingKind::handle, SayingKind::sun_shadow,
                                SayingKind::magnetic_bearing, SayingKind::set_compass}) {
    INFO(to_text(kind));
    CHECK(left_out(all, kind));
  }
  CHECK(all.sayings.size() + all.left_out.size() == 10);

  SayingInputs pole = all_known();
  pole.card.field.zone = MagneticField::Zone::Blackout;
  CHECK(left_out(say_heading(pole), SayingKind::magnetic_bearing));
  CHECK(left_out(say_heading(pole), SayingKind::set_compass));
}
