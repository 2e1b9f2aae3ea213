#include "core/propagation/p1812/bullington.hpp"
#include "core/propagation/p1812/knife_edge.hpp"
#include "core/propagation/p1812/p1812.hpp"
#include "core/propagation/p1812/spherical_earth.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::p1812 {

namespace {

constexpr double kMedianRadiusKm = 6371.0 * 157.0 / (157.0 - 45.0);

// (21) from a knife-edge loss.
double with_taper_db(double edge_db, double distance_km) {
  return edge_db + (1.0 - std::exp(-edge_db / 6.0)) * (10.0 + 0.02 * distance_km);
}

SphericalPath smooth_path(double distance_km, double heights_m) {
  return {.distance_km = distance_km,
          .frequency_ghz = 0.6,
          .wavelength_m = 0.2998 / 0.6,
          .earth_radius_km = kMedianRadiusKm,
          .transmitter_height_m = heights_m,
          .receiver_height_m = heights_m};
}

}  // namespace

// Recommendation ITU-R P.526, figure of J(v): 6.0 dB at 0, 13.9 at 1, 20.5 at 2.4, none at -0.78.
TEST_CASE("Knife-edge loss has the values of P.526") {
  CHECK(knife_edge_loss_db(0.0) == Approx(6.0).margin(0.05));
  CHECK(knife_edge_loss_db(1.0) == Approx(13.9).margin(0.05));
  CHECK(knife_edge_loss_db(2.4) == Approx(20.5).margin(0.05));
  CHECK(knife_edge_loss_db(-0.78) == 0.0);
  CHECK(knife_edge_loss_db(-0.77) == Approx(0.0).margin(0.1));
  // Far in the shadow a knife edge costs 13 + 20 log v (P.526).
  CHECK(knife_edge_loss_db(100.0) == Approx(13.0 + 40.0).margin(0.1));
}

// A ridge 100 m over the line, 2 km from one end of 60 km: v = h sqrt(2 d / (lambda d1 d2)) gives
// 17, 21 and 26 dB at 69, 194 and 545 MHz (P.526).
TEST_CASE("Bullington over a single sharp ridge is its knife-edge loss with the taper") {
  const struct {
    double frequency_mhz;
    double edge_db;
  } cases[] = {{69.0, 17.0}, {194.0, 21.0}, {545.0, 26.0}};
  std::vector<double> heights_m(61, 0.0);
  // The Earth's bulge at the ridge belongs to its 100 m over the line between antennas at 150 m.
  const double bulge_m = 500.0 * 2.0 * 58.0 / kMedianRadiusKm;
  heights_m[2] = 250.0 - bulge_m;
  Scratch scratch;
  for (const auto& one : cases) {
    const Link link = {.frequency_mhz = one.frequency_mhz,
                       .transmitter_height_m = 150.0,
                       .receiver_height_m = 150.0,
                       .path_latitude_deg = 45.0};
    const auto path = analyze_path({.spacing_km = 1.0, .heights_m = heights_m}, link, scratch);
    REQUIRE(path);
    const double wavelength_m = 299.8 / one.frequency_mhz;
    const double v = 100.0 * std::sqrt(2.0 * 60e3 / (wavelength_m * 2e3 * 58e3));
    CHECK(knife_edge_loss_db(v) == Approx(one.edge_db).margin(0.5));
    CHECK(path->median.bullington_actual_db ==
          Approx(with_taper_db(knife_edge_loss_db(v), 60.0)).margin(1e-6));
    CHECK(path->transmitter_horizon_km == Approx(2.0));
    CHECK(path->receiver_horizon_km == Approx(58.0));
    CHECK_FALSE(path->line_of_sight);
  }
}

// A ridge that just touches the line costs 6 dB (P.526), before the taper.
TEST_CASE("A grazing ridge costs six decibels and the taper, just above or below the line") {
  const double bulge_m = 500.0 * 5.0 * 15.0 / kMedianRadiusKm;
  Scratch scratch;
  for (const double over_m : {-1e-6, 1e-6}) {
    std::vector<double> heights_m(21, 0.0);
    heights_m[5] = 200.0 - bulge_m + over_m;
    const Link link = {.frequency_mhz = 600.0,
                       .transmitter_height_m = 200.0,
                       .receiver_height_m = 200.0,
                       .path_latitude_deg = 45.0};
    const auto path = analyze_path({.spacing_km = 1.0, .heights_m = heights_m}, link, scratch);
    REQUIRE(path);
    CHECK(path->line_of_sight == (over_m < 0.0));
    CHECK(path->median.bullington_actual_db == Approx(with_taper_db(6.03, 20.0)).margin(0.01));
  }
}

TEST_CASE("The shortcut for the smooth surface's Bullington loss equals the sum over all points") {
  constexpr double kWavelengthM = 0.5;
  for (const double spacing_km : {0.1, 0.7}) {
    for (const double start_m : {1.0, 30.0, 400.0, 5000.0}) {
      for (const double end_m : {1.0, 12.0, 150.0, 2500.0}) {
        for (const double radius_km : {kMedianRadiusKm, 3.0 * 6371.0}) {
          const std::size_t points = 151;
          const std::vector<double> zeros(points, 0.0);
          std::vector<double> reciprocals(points, 1.0);
          for (std::size_t i = 1; i < points; ++i) {
            reciprocals[i] = 1.0 / static_cast<double>(i);
          }
          const double d = spacing_km * static_cast<double>(points - 1);
          const Section section = {.spacing_km = spacing_km,
                                   .reciprocals = reciprocals.data(),
                                   .points = points,
                                   .length_km = d};
          const double bulge = 500.0 / radius_km;
          const Outlook seen = look_along(section, zeros.data(), {start_m, end_m}, {bulge, bulge});
          const BullingtonView view = {seen.obstacles.transmitter_horizon_median + bulge * d,
                                       seen.obstacles.receiver_horizon_median + bulge * d,
                                       seen.clearances.median};
          INFO(spacing_km << " km, " << start_m << " m, " << end_m << " m, " << radius_km);
          CHECK(smooth_bullington_loss_db(section, {start_m, end_m}, bulge, kWavelengthM) ==
                Approx(bullington_loss_db(view, {start_m, end_m}, d, kWavelengthM))
                    .margin(1e-9)
                    .epsilon(0));
        }
      }
    }
  }
}

// The field far beyond the horizon of a smooth sphere falls by 20 log(e) 2.33811 sin(60 deg) dB for
// each (k a / 2)^(1/3) d / a: 2.33811 is the first zero of the Airy function (Abramowitz and
// Stegun, table 10.13), and by 10 log d less. Bound: the rounding of 17.6 and 21.88 in (31), (33).
TEST_CASE("Smooth-earth diffraction falls at the rate of the first residue") {
  const double near_km = 300.0, far_km = 400.0;
  const double wave_number = 2.0 * std::numbers::pi / (0.2998 / 0.6);
  const double radius_m = 1000.0 * kMedianRadiusKm;
  const double natural =
      std::cbrt(0.5 * wave_number * radius_m) * 1000.0 * (far_km - near_km) / radius_m;
  const double expected_db =
      20.0 * std::log10(std::numbers::e) * 2.33811 * std::sqrt(0.75) * natural -
      10.0 * std::log10(far_km / near_km);
  const double found_db = spherical_earth_loss_db(smooth_path(far_km, 30.0)) -
                          spherical_earth_loss_db(smooth_path(near_km, 30.0));
  CHECK(found_db == Approx(expected_db).epsilon(0.005));
}

TEST_CASE(
    "Smooth-earth loss rises with distance, falls with height, and has no step at the horizon") {
  double before_db = 0.0;
  for (double d = 5.0; d < 400.0; d += 2.5) {
    const double loss_db = spherical_earth_loss_db(smooth_path(d, 50.0));
    CHECK(loss_db >= before_db);
    before_db = loss_db;
  }
  CHECK(before_db > 100.0);
  CHECK(spherical_earth_loss_db(smooth_path(80.0, 20.0)) >
        spherical_earth_loss_db(smooth_path(80.0, 40.0)));
  CHECK(spherical_earth_loss_db(smooth_path(5.0, 200.0)) == 0.0);  // clear by far
  // Horizon at 4.12 (sqrt h1 + sqrt h2) km for the 4/3 Earth; with this radius 4.227.
  const double horizon_km = std::sqrt(0.002 * kMedianRadiusKm) * 2.0 * std::sqrt(50.0);
  CHECK(spherical_earth_loss_db(smooth_path(horizon_km * 1.000001, 50.0)) ==
        Approx(spherical_earth_loss_db(smooth_path(horizon_km * 0.999999, 50.0))).margin(0.01));
}

// P.526 section 3.1.1.2: the height gain of an antenna has a floor of 2 + 20 log K, here with
// KH = 0.036 (ae f)^(-1/3) ((22 - 1)^2 + (18 * 0.003 / f)^2)^(-1/4) of land; at B = 1 it is
// 20 log 1.1 = 0.83 dB, and B = 1 is at 0.9575 (f^2 / ae)^(1/3) h = 1 since beta is 1 for so small
// a K.
TEST_CASE("The height gain of a very low antenna over a smooth earth has a floor") {
  const double f = 0.6;
  const double admittance =
      0.036 / std::cbrt(kMedianRadiusKm * f) / std::pow(21.0 * 21.0 + 0.09 * 0.09, 0.25);
  const double floor_db = 2.0 + 20.0 * std::log10(admittance);
  const double high_m = 1.0 / (0.9575 * std::cbrt(f * f / kMedianRadiusKm));
  const double low_db = spherical_earth_loss_db(smooth_path(200.0, 1e-3));
  const double high_db = spherical_earth_loss_db(smooth_path(200.0, high_m));
  CHECK(low_db == spherical_earth_loss_db(smooth_path(200.0, 1e-4)));
  CHECK(low_db - high_db == Approx(2.0 * (0.83 - floor_db)).margin(0.02));
}

// Sea water carries vertical polarization far better than horizontal at VHF (P.526 section 3).
TEST_CASE("Vertical polarization loses less than horizontal over the sea") {
  SphericalPath path = smooth_path(120.0, 10.0);
  path.frequency_ghz = 0.06;
  path.wavelength_m = 0.2998 / 0.06;
  path.sea_fraction = 1.0;
  const double horizontal_db = spherical_earth_loss_db(path);
  path.polarization = Polarization::vertical;
  CHECK(spherical_earth_loss_db(path) < horizontal_db - 10.0);
}

}  // namespace mastwise::p1812
