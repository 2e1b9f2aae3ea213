#include "core/headings/sayings.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <variant>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const Position kStop = Position::at_deg(45.0, -110.0).value();

// True 37 with declination 13 E, the nose at 300, 60 km away; everything known.
SayingInputs all_inputs_known() {
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
  return {
      .from = kStop,
      .card = card,
      .context = {.stop_error_m = 5.0,
                  .transmitter_error_m = 15.0,
                  .deviation_sigma_deg = 2.0,
                  .rig_heading_sigma_deg = 3.0,
                  .clock_error_min = 1.0,
                  .walk_end_error_m = 3.0},
      .handle = *handle,
      .handle_now = HandleReading::dial_deg(0.0),
      .sun = SunNow{Bearing<True>::degrees(240.0), Bearing<True>::degrees(241.25)},
      .guides = {{.body = sky::GuideBody::canopus,
                  .azimuth = Bearing<True>::degrees(180.0),
                  .altitude_deg = 29.97,
                  .apparent_altitude_deg = 30.0,
                  .magnitude = -0.7,
                  .turn_deg_per_min = 0.1,
                  .why_none = std::nullopt},
                 {.body = sky::GuideBody::sirius,
                  .azimuth = Bearing<True>::degrees(30.0),
                  .altitude_deg = 59.99,
                  .apparent_altitude_deg = 60.0,
                  .magnitude = -1.5,
                  .turn_deg_per_min = 0.4,
                  .why_none = std::nullopt}},
      .landmark = Landmark{.name = "the church tower",
                           .position = destination(kStop, Bearing<True>::degrees(90.0), 1'000.0),
                           .error_m = 10.0},
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

// magnetic = true - D, grid = true - convergence, rig angle = true - nose; a compass with its
// declination set reads true.
TEST_CASE("one heading appears in every form", "[ways]") {
  const Sayings all = say_heading(all_inputs_known());
  CHECK(all.sayings.size() == 11);
  CHECK(all.left_out.empty());

  const Saying& plain = find(all, SayingKind::magnetic_bearing);
  CHECK(std::get<Bearing<Magnetic>>(plain.said_as).degrees() == Approx(24.0));
  const Saying& set = find(all, SayingKind::set_compass);
  CHECK(std::get<OnSetCompass>(set.said_as).reads.degrees() == Approx(37.0));
  CHECK(std::get<OnSetCompass>(set.said_as).declination.east_deg() == Approx(13.0));
  const Saying& true_bearing = find(all, SayingKind::true_bearing);
  CHECK(std::get<Bearing<True>>(true_bearing.said_as).degrees() == Approx(37.0));
  const auto grid = std::get<OnGrid>(find(all, SayingKind::grid_bearing).said_as);
  CHECK(grid.bearing.degrees() == Approx(36.3));
  CHECK(grid.zone == "12N");
  const auto sides = std::get<RigAngle>(find(all, SayingKind::rig_sides).said_as);
  CHECK(sides.clockwise_deg() == Approx(97.0));
  const auto turn = std::get<HandleTurn>(find(all, SayingKind::handle).said_as);
  CHECK(turn.reading.dial_deg() == Approx(263.0));
  CHECK(turn.clockwise_from_below_deg == Approx(-97.0));
}

TEST_CASE("one heading appears by shadow, star, landmark and walk", "[ways]") {
  const Sayings all = say_heading(all_inputs_known());
  // The sun at 240 throws the shadow to 60; in five minutes at 241.25 to 61.25.
  const auto shadow = std::get<FromShadow>(find(all, SayingKind::sun_shadow).said_as);
  REQUIRE(shadow.angle);
  CHECK(shadow.angle->now.clockwise_deg() == Approx(-23.0));
  CHECK(shadow.angle->in_five_minutes.clockwise_deg() == Approx(-24.25));
  CHECK(shadow.marks.empty());
  const auto stars = std::get<FromStars>(find(all, SayingKind::star).said_as);
  REQUIRE(stars.size() == 2);
  CHECK(stars[0].body == sky::GuideBody::canopus);
  CHECK(stars[0].aside.clockwise_deg() == Approx(-143.0));
  CHECK(stars[1].aside.clockwise_deg() == Approx(7.0));
  // The best star's: 1 / cos 30 = 1.155, 0.1 of the clock and 1 of the sight over the mast.
  CHECK(find(all, SayingKind::star).sigma_deg == Approx(1.531).margin(0.002));
  const auto landmark = std::get<FromLandmark>(find(all, SayingKind::landmark).said_as);
  CHECK(landmark.aside.clockwise_deg() == Approx(-53.0));
  CHECK(landmark.name == "the church tower");
  CHECK_FALSE(landmark.town);
  const auto walk = std::get<WalkTo>(find(all, SayingKind::walked_line).said_as);
  const PathBetween path = path_between(kStop, walk.target);
  CHECK(path.distance_m == Approx(200.0));
  CHECK(path.bearing.degrees() == Approx(37.0));
}

// atan(sqrt(2) 3 / 200) = 1.2 and the sight's 1; 3 (+) 2 (+) 0.4 for a handheld compass;
// 10 and 5 m at 1 km with the sight's 1; each with 1 for the sight over the mast.
TEST_CASE("each form has its error budget, the smallest error first", "[ways]") {
  const Sayings all = say_heading(all_inputs_known());
  CHECK(std::is_sorted(all.sayings.begin(), all.sayings.end(),
                       [](auto& a, auto& b) { return a.sigma_deg < b.sigma_deg; }));
  for (const Saying& each : all.sayings) {
    CHECK(each.sigma_deg == each.budget.total_deg);
    CHECK_FALSE(to_text(each.kind).empty());
    CHECK(each.said_as.index() == static_cast<std::size_t>(each.kind));
  }
  CHECK(find(all, SayingKind::walked_line).sigma_deg == Approx(1.861).margin(0.01));
  CHECK(find(all, SayingKind::magnetic_bearing).sigma_deg == Approx(3.765).margin(0.01));
  CHECK(find(all, SayingKind::landmark).sigma_deg == Approx(1.552).margin(0.005));
  CHECK(find(all, SayingKind::sun_shadow).sigma_deg == Approx(1.436).margin(0.002));
  CHECK(find(all, SayingKind::handle).sigma_deg == Approx(5.83).margin(0.01));
}

// The mark's 0.5 degree a minute instead of the present 0.25, the sight's 1 and 1 over the mast.
TEST_CASE("a mark of the shadow to come is a way even before sunrise", "[ways]") {
  SayingInputs inputs = all_inputs_known();
  inputs.sun.reset();
  const UtcTime time{std::chrono::hours(24 * 20'000)};
  inputs.sun_marks = {{time, sky::ShadowLies::Left, -0.5}};
  const Sayings all = say_heading(inputs);
  const auto shadow = std::get<FromShadow>(find(all, SayingKind::sun_shadow).said_as);
  CHECK(shadow.marks == inputs.sun_marks);
  CHECK_FALSE(shadow.angle);
  CHECK(find(all, SayingKind::sun_shadow).sigma_deg == Approx(1.5).margin(0.002));
}

TEST_CASE("a missing fact leaves its forms out with a reason", "[ways]") {
  SayingInputs inputs = all_inputs_known();
  inputs.card.rig_angle.reset();
  inputs.sun.reset();
  inputs.guides.clear();
  inputs.context.deviation_sigma_deg.reset();
  const Sayings all = say_heading(inputs);
  for (const SayingKind kind :
       {SayingKind::rig_sides, SayingKind::handle, SayingKind::sun_shadow, SayingKind::star,
        SayingKind::magnetic_bearing, SayingKind::set_compass}) {
    INFO(to_text(kind));
    CHECK(left_out(all, kind));
  }
  CHECK(all.sayings.size() + all.left_out.size() == 11);

  SayingInputs pole = all_inputs_known();
  pole.card.field.zone = MagneticField::Zone::Blackout;
  CHECK(left_out(say_heading(pole), SayingKind::magnetic_bearing));
  CHECK(left_out(say_heading(pole), SayingKind::set_compass));
}

namespace {

// What a person has at a stop.
struct Situation {
  const char* name;
  Standing standing;
  bool sun, stars, landmark, receiver, nose;
  std::optional<SayingKind> best, under_clouds;
};

SayingInputs inputs_of(const Situation& now) {
  constexpr double kHorizontal_nt = 20'000.0;
  SayingInputs inputs = all_inputs_known();
  inputs.context.standing = now.standing;
  inputs.context.deviation_sigma_deg = deviation_sigma_deg(now.standing, kHorizontal_nt);
  inputs.handle.reset();
  if (!now.sun) inputs.sun.reset();
  if (!now.stars) inputs.guides.clear();
  if (!now.landmark) inputs.landmark.reset();
  if (!now.receiver) inputs.walk_m.reset();
  if (!now.nose) inputs.card.rig_angle.reset();
  return inputs;
}

}  // namespace

// Both readings have the same pull of iron, so only their own errors count: 3 sqrt(2) = 4.24 with
// the landmark's 1.187 and the sight's 1, or the shadow's 1.031.
TEST_CASE("a compass turned in place works beside steel, from what is known", "[ways]") {
  SayingInputs inputs = all_inputs_known();
  inputs.context.standing = Standing::beside_rig;
  inputs.context.deviation_sigma_deg.reset();
  const Sayings by_landmark = say_heading(inputs);
  const Saying& landmark = find(by_landmark, SayingKind::turn_in_place);
  CHECK(std::get<FromTurn>(landmark.said_as).known == FromTurn::Known::landmark);
  CHECK(std::get<FromTurn>(landmark.said_as).aside.clockwise_deg() == Approx(-53.0).margin(0.1));
  CHECK(landmark.sigma_deg == Approx(4.52).margin(0.01));
  CHECK_FALSE(needs_sky(landmark));
  inputs.landmark.reset();
  const Sayings by_sun = say_heading(inputs);
  const Saying& shadow = find(by_sun, SayingKind::turn_in_place);
  CHECK(std::get<FromTurn>(shadow.said_as).aside.clockwise_deg() == Approx(-23.0));
  CHECK(shadow.sigma_deg == Approx(4.48).margin(0.01));
  CHECK(needs_sky(shadow));
  inputs.sun.reset();
  const Sayings by_star = say_heading(inputs);
  const auto& star = std::get<FromTurn>(find(by_star, SayingKind::turn_in_place).said_as);
  CHECK(star.star == sky::GuideBody::canopus);
  inputs.guides.clear();
  CHECK(left_out(say_heading(inputs), SayingKind::turn_in_place));
}

// The least error at hand: the sun 1.4 degrees, a star 1.5, a landmark at 1 km 1.6, 200 m walked
// 1.9, a compass well clear 3.3 and at a table 7.7, the rig's sides 7.2.
TEST_CASE("the best way at a moment is the one with the least error that can be used", "[ways]") {
  using enum SayingKind;
  constexpr auto kNone = std::nullopt;
  const Situation situations[] = {
      {"day, all at hand", Standing::well_clear, true, false, true, true, true, sun_shadow,
       landmark},
      {"night, all at hand", Standing::well_clear, false, true, true, true, true, star, landmark},
      {"night, nothing but a compass", Standing::well_clear, false, true, false, false, false, star,
       magnetic_bearing},
      {"cloud or not, no sensor and no receiver", Standing::few_steps_off, true, false, false,
       false, true, sun_shadow, magnetic_bearing},
      {"beside steel by day", Standing::beside_rig, true, false, false, false, true, sun_shadow,
       rig_sides},
      {"beside steel at night with a receiver", Standing::beside_rig, false, false, false, true,
       true, walked_line, walked_line},
      {"on the roof, nothing known", Standing::on_roof, false, false, false, false, false, kNone,
       kNone},
      {"at a table, the nose known", Standing::picnic_table, false, false, false, false, true,
       rig_sides, rig_sides},
  };
  for (const Situation& now : situations) {
    INFO(now.name);
    const Sayings all = say_heading(inputs_of(now));
    const auto kind_of = [&](bool sky_seen) -> std::optional<SayingKind> {
      const Saying* best = best_way(all.sayings, sky_seen);
      return best == nullptr ? std::nullopt : std::optional(best->kind);
    };
    CHECK(kind_of(true) == now.best);
    CHECK(kind_of(false) == now.under_clouds);
  }
}
