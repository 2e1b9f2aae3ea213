#include "core/headings/aim_card.hpp"

#include "tests/support/folders.hpp"

#include <utility>

#include <catch2/catch.hpp>

using namespace mastwise;
using std::chrono::hours;
using std::chrono::sys_days;
using std::chrono::year;

namespace {

MagneticModel load_model() {
  auto model = MagneticModel::load(test::build_folder() + "/assets/magnetic");
  REQUIRE(model);
  return std::move(model).value();
}

const UtcTime kMiddleOf2026 = sys_days{year{2026} / 7 / 2} + hours{12};

}  // namespace

// Source: the reference data's README (bearing, distance, declination at 2026.5) and
// utm_mgrs_geoconvert.csv (zone); magnetic = true - declination; convergence by
// atan(tan(lon - lon0) sin lat) with lon0 = 69 W, worked by hand: -1.8740 degrees.
TEST_CASE("the aim card has the recorded stop's heading in every form") {
  const MagneticModel model = load_model();
  const Position stop = Position::at_deg(44.435217, -71.675993).value();
  const Position mast = Position::at_deg(44.352778, -71.736944).value();
  const auto nose = RigHeading::nose_at(Bearing<True>::degrees(300.0));
  const AimCard card = aim_card(stop, mast, kMiddleOf2026, model, nose);

  CHECK(card.distance_m == Approx(10368.18).margin(0.005));
  CHECK(card.bearing_true.degrees() == Approx(207.950).margin(0.0005));
  CHECK(card.field.declination.east_deg() == Approx(-14.14).margin(0.005));
  CHECK(card.bearing_magnetic.degrees() == Approx(222.09).margin(0.006));
  CHECK(card.grid.name == "19N");
  CHECK(card.grid.convergence.east_deg() == Approx(-1.8740).margin(0.0002));
  CHECK(card.bearing_grid.degrees() == Approx(207.950 + 1.8740).margin(0.0007));
  REQUIRE(card.rig_angle);
  CHECK(card.rig_angle->clockwise_deg() == Approx(267.950).margin(0.0005));
}

TEST_CASE("without a rig heading the rig angle is empty") {
  const MagneticModel model = load_model();
  const Position stop = Position::at_deg(44.435217, -71.675993).value();
  const Position mast = Position::at_deg(44.352778, -71.736944).value();
  CHECK_FALSE(aim_card(stop, mast, kMiddleOf2026, model, std::nullopt).rig_angle);
}
