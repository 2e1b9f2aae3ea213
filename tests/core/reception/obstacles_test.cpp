#include "core/reception/obstacles.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/calibration.hpp"
#include "tests/core/reception/invented_country.hpp"

#include <cmath>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

// Height over the line for a given v between antennas at both distances.
double height_for_m(double v, double near_m, double far_m, double frequency_mhz) {
  return v / std::sqrt(2.0 * (near_m + far_m) / (299.792458 / frequency_mhz * near_m * far_m));
}

}  // namespace

// Recommendation ITU-R P.526 (31): J(0) 6.0, J(1) 13.9, J(2.4) 20.5 dB; nothing below v = -0.78.
TEST_CASE("a knife edge has the loss of P.526") {
  for (const double frequency_mhz : {69.0, 194.0, 545.0}) {
    const auto loss_db = [&](double v) {
      return edge_loss_db(height_for_m(v, 2e3, 58e3, frequency_mhz), 2e3, 58e3, frequency_mhz);
    };
    CHECK(loss_db(0.0) == Approx(6.03).margin(0.01));
    CHECK(loss_db(1.0) == Approx(13.9).margin(0.05));
    CHECK(loss_db(2.4) == Approx(20.5).margin(0.05));
    CHECK(loss_db(-0.79) == 0.0);
  }
  // A ridge 100 m over the line, 2 km away on 60 km.
  CHECK(edge_loss_db(100.0, 2e3, 58e3, 69.0) == Approx(17.0).margin(0.5));
  CHECK(edge_loss_db(100.0, 2e3, 58e3, 194.0) == Approx(21.0).margin(0.5));
  CHECK(edge_loss_db(100.0, 2e3, 58e3, 545.0) == Approx(26.0).margin(0.5));
}

TEST_CASE("a lone ridge is found at its place, and both models see it") {
  const auto tiles = test::country(1, test::one_ridge());
  const auto list = survey(test::roof_antenna(),
                           {test::transmitter(test::north_of_stop(50e3), 20, 500.0, 100.0)}, tiles);
  REQUIRE(list.size() == 1);
  const Outlook& outlook = list[0].outlook;
  REQUIRE(outlook.mode == PathMode::point_to_point);
  REQUIRE_FALSE(outlook.obstacles.empty());
  const Obstacle& ridge = outlook.obstacles[0];
  CHECK(ridge.distance_m == Approx(12e3).margin(100.0));
  CHECK_FALSE(ridge.earth_curve);
  // 600 m of ridge, of which the points 90 m apart may miss some, and 27 m of bulge (12 and 38 km
  // on 4/3 of 6,371 km) over a line from 210 m at the stop to 500 m at the mast.
  const double line_m = 210.0 + (500.0 - 210.0) * 12.0 / 50.0;
  CHECK(ridge.above_line_m <= 600.0 + 26.8 - line_m + 1.0);
  CHECK(ridge.above_line_m > 500.0 + 26.8 - line_m);
  CHECK(ridge.loss_db == Approx(edge_loss_db(ridge.above_line_m, ridge.distance_m,
                                             50e3 - ridge.distance_m, outlook.frequency_mhz))
                             .margin(0.1));
  // P.1812 uses the edge and (1 - exp(-J / 6)) (10 + 0.02 d) for the rest of the path (21); the
  // terrain model has its rounded edges.
  // The calibration to average country counts besides.
  const double free_dbuvm =
      106.92 + 10.0 * std::log10(100.0) - 20.0 * std::log10(50.0) -
      above_measured_curves_db(Knowledge::profile, outlook.frequency_mhz, 50e3);
  const double local_db =
      local_loss(Surroundings::open, {}, test::roof_antenna().gear.height_m, outlook.frequency_mhz)
          .total_db();
  const double bullington_db =
      ridge.loss_db + (1.0 - std::exp(-ridge.loss_db / 6.0)) * (10.0 + 0.02 * 50.0);
  CHECK(*outlook.field_p1812_dbuvm == Approx(free_dbuvm - local_db - bullington_db).margin(1.0));
  CHECK(*outlook.field_itm_dbuvm < free_dbuvm - local_db - ridge.loss_db + 3.0);
  CHECK(*outlook.field_itm_dbuvm > free_dbuvm - local_db - bullington_db - 6.0);
  REQUIRE_FALSE(list[0].reasons.empty());
  CHECK(list[0].reasons[0].kind() == ReasonKind::obstacle);
  CHECK(std::get<fact::InTheWay>(list[0].reasons[0].fact).obstacle == ridge);
}

TEST_CASE("over smooth ground the curve of the earth is the obstacle") {
  const auto tiles = test::country(2, test::flat(100.0));
  const auto list =
      survey(test::roof_antenna(),
             {test::transmitter(test::north_of_stop(110e3), 20, 300.0, 100.0)}, tiles);
  const Outlook& outlook = list.at(0).outlook;
  REQUIRE_FALSE(outlook.obstacles.empty());
  CHECK(outlook.obstacles[0].earth_curve);
  CHECK(std::get<fact::InTheWay>(list[0].reasons.at(0).fact).obstacle.earth_curve);
}

}  // namespace mastwise::reception
