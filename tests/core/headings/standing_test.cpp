#include "core/headings/standing.hpp"

#include "core/headings/compass_checks.hpp"
#include "core/headings/heading_error.hpp"

#include <array>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

constexpr double kRadian = std::numbers::pi / 180.0;

using Vector = std::array<double, 3>;

double dot(const Vector& a, const Vector& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

// A dipole's field, nT, in the direction `n` [J. D. Jackson, Classical Electrodynamics, 3rd ed.
// (5.56)].
Vector field_nt(const Vector& moment, const Vector& n, double r_m) {
  const double along = 3.0 * dot(moment, n), scale = 100.0 / (r_m * r_m * r_m);
  return {scale * (along * n[0] - moment[0]), scale * (along * n[1] - moment[1]),
          scale * (along * n[2] - moment[2])};
}

}  // namespace

TEST_CASE("the spread of a dipole's pull is that of its field over all directions", "[ways]") {
  constexpr int kSteps = 180;
  constexpr double kMoment = 1000.0, kDistance_m = 5.0;
  double squares = 0.0, weight = 0.0;
  for (int i = 0; i < kSteps; ++i) {
    const double polar = (i + 0.5) * std::numbers::pi / kSteps;
    for (int j = 0; j < 2 * kSteps; ++j) {
      const double azimuth = (j + 0.5) * std::numbers::pi / kSteps;
      const Vector moment{kMoment * std::sin(polar) * std::cos(azimuth),
                          kMoment * std::sin(polar) * std::sin(azimuth), kMoment * std::cos(polar)};
      const Vector field = field_nt(moment, {1.0, 0.0, 0.0}, kDistance_m);
      // Both horizontal components, as the needle may be across either.
      squares += std::sin(polar) * (field[0] * field[0] + field[1] * field[1]) / 2.0;
      weight += std::sin(polar);
    }
  }
  CHECK(dipole_sigma_nt(kMoment, kDistance_m) ==
        Approx(std::sqrt(squares / weight)).epsilon(0.001));
}

// The unit: the earth's dipole of 7.71e22 A m^2 makes 29.9 uT at the magnetic equator, 6,371.2 km
// from its middle [IGRF-13, from memory]. A car of one ton makes 40 nT at 30 ft [S. Breiner,
// Applications Manual for Portable Magnetometers (1973), from memory]: 306 A m^2.
TEST_CASE("a moment makes the published field at its distance", "[ways]") {
  const double of_component = std::sqrt(5.0 / 6.0);
  CHECK(dipole_sigma_nt(7.71e22, 6'371'200.0) == Approx(of_component * 29'860.0).epsilon(0.005));
  CHECK(dipole_sigma_nt(306.0, 9.144) == Approx(of_component * 40.0).epsilon(0.005));
  CHECK(kRigMoment_am2 / 3.0 == Approx(306.0).epsilon(0.1));
}

// The field manuals' 5 m for a vehicle leaves the 2 degrees to which reciprocal bearings agree, and
// their 18 m less than a compass can be read to [common practice, no source].
TEST_CASE("the field manuals' distances follow from a rig's steel", "[ways]") {
  constexpr double kMiddleLatitudes_nt = 20'000.0;
  const auto at = [](Standing standing) {
    return deviation_sigma_deg(standing, kMiddleLatitudes_nt);
  };
  CHECK(at(Standing::few_steps_off) > 1.5);
  CHECK(at(Standing::few_steps_off) < 2.5);
  CHECK(at(Standing::well_clear) < 1.0);
  CHECK(at(Standing::picnic_table) > kBaseplateCompass_deg);
  CHECK(at(Standing::on_roof) > 20.0);
  CHECK(at(Standing::beside_rig) > at(Standing::on_roof));
  CHECK(at(Standing::beside_rig) < 90.0);
  const auto keep = keep_away_distances();
  CHECK(from_rig_m(Standing::few_steps_off) == keep[0].least_m);
  CHECK(from_rig_m(Standing::well_clear) == keep[0].better_m);
}

TEST_CASE("the same steel pulls a needle farther where the earth's field is weak", "[ways]") {
  for (const Standing standing : kStandings) {
    CHECK(deviation_sigma_deg(standing, 8'000.0) > deviation_sigma_deg(standing, 20'000.0));
    CHECK(deviation_sigma_deg(standing, 20'000.0) > deviation_sigma_deg(standing, 35'000.0));
  }
  // By hand: 9 A m^2 at 0.7 m make 2,395 nT, 1,000 at 6 m 423 and 0.1 at 0.3 m 338; 2,456 in all.
  CHECK(deviation_sigma_deg(Standing::picnic_table, 20'000.0) ==
        Approx(std::atan(2'456.0 / 20'000.0) / kRadian).epsilon(0.001));
}

// By hand: tan 3.43 degrees is 18 / 300; tan 1 degree is 18 / 1,031.
TEST_CASE("a near mark sighted from aside is off by its parallax", "[ways]") {
  CHECK(parallax_deg(18.0, 300.0) == Approx(3.43).margin(0.01));
  CHECK(least_mark_m(18.0) == Approx(1'031.2).margin(0.1));
  CHECK(parallax_deg(18.0, least_mark_m(18.0)) == Approx(kSightLine_deg));
  CHECK(parallax_deg(0.0, 300.0) == 0.0);
  // 1 in 60 is 1 degree [rule of navigators].
  CHECK(least_mark_m(1.0) == Approx(57.3).margin(0.05));
}

TEST_CASE("a typed rig heading errs as the compass did where it was read", "[ways]") {
  const auto sigma = [](std::optional<Standing> read_at) {
    return typed_heading_sigma_deg(read_at, 0.4, 20'000.0);
  };
  // 3 (+) 0.4 (+) 0.97 (+) 1 for the sight along the side.
  CHECK(sigma(Standing::well_clear) == Approx(3.33).margin(0.01));
  CHECK(sigma(Standing::few_steps_off) > sigma(Standing::well_clear));
  CHECK(sigma(Standing::beside_rig) > 70.0);
  CHECK(sigma(std::nullopt) == kUnsaidHeading_deg);
}

TEST_CASE("each place to stand has a short name", "[ways]") {
  for (const Standing standing : kStandings) {
    CHECK(parse_standing(short_name(standing)) == standing);
    CHECK_FALSE(to_text(standing).empty());
  }
  CHECK_FALSE(parse_standing("beneath"));
}
