#include "core/geo/weak_field.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

MagneticModel load_wmm() {
  auto model = MagneticModel::load(test::build_folder() + "/assets/magnetic");
  REQUIRE(model);
  return std::move(model).value();
}

UtcTime at_start_of(int in_year) {
  return std::chrono::sys_days{std::chrono::year{in_year} / 1 / 1};
}

// Whether a position is inside the outline, whose corners are joined by straight lines of distance
// over bearing.
bool is_inside(const WeakField& zone, const std::vector<Position>& outline,
               const Position& position) {
  const PathBetween path = path_between(zone.pole, position);
  const double ray = path.bearing.degrees() / 360.0 * kOutlineBearings;
  const auto first = static_cast<std::size_t>(ray) % outline.size();
  const double share = ray - std::floor(ray);
  const double from_m = path_between(zone.pole, outline[first]).distance_m;
  const double to_m = path_between(zone.pole, outline[(first + 1) % outline.size()]).distance_m;
  return path.distance_m < from_m + share * (to_m - from_m);
}

}  // namespace

// The dip poles of the World Magnetic Model 2025 at 2025.0 [NOAA NCEI, Wandering of the Geomagnetic
// Poles, from memory].
TEST_CASE("the middles of the zones are the published magnetic poles", "[aim]") {
  const auto weak = weak_fields(load_wmm(), at_start_of(2025));
  CHECK(path_between(weak[0].pole, *Position::at_deg(85.762, 139.298)).distance_m < 1000.0);
  CHECK(path_between(weak[1].pole, *Position::at_deg(-63.851, 135.078)).distance_m < 1000.0);
}

TEST_CASE("the outlines part the weak field from the rest all over the earth", "[aim]") {
  const MagneticModel model = load_wmm();
  const UtcTime date = at_start_of(2027);
  const auto weak = weak_fields(model, date);
  int inside = 0;
  for (int latitude_deg = -88; latitude_deg <= 88; latitude_deg += 2) {
    for (int longitude_deg = -180; longitude_deg < 180; longitude_deg += 6) {
      const Position here = *Position::at_deg(latitude_deg, longitude_deg);
      const double nt = model.at(here, date).horizontal_nt;
      const auto in = [&](auto outline) {
        return std::any_of(weak.begin(), weak.end(), [&](const WeakField& one) {
          return is_inside(one, one.*outline, here);
        });
      };
      INFO(latitude_deg << ", " << longitude_deg << ": " << nt << " nT");
      // Between two corners the outline is not straight.
      constexpr double kChord_nt = 60.0;
      if (std::fabs(nt - kCautionBelow_nt) > kChord_nt) {
        CHECK(in(&WeakField::caution) == (nt < kCautionBelow_nt));
      }
      if (std::fabs(nt - kBlackoutBelow_nt) > kChord_nt) {
        CHECK(in(&WeakField::blackout) == (nt < kBlackoutBelow_nt));
      }
      inside += nt < kCautionBelow_nt ? 1 : 0;
    }
  }
  CHECK(inside > 50);
}

// The horizontal fields that the publishers of the model computed themselves.
TEST_CASE("the published test values of the model are on their side of the outlines", "[aim]") {
  const auto file = test::reference("wmm/WMM2025_FINAL_TEST_VALUES_HIGHPREC.txt");
  if (!file) return;
  const MagneticModel model = load_wmm();
  int weak_rows = 0;
  for (const std::string& line : test::read_lines(*file)) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream text(line);
    double year = 0.0, height_km = 0.0, latitude_deg = 0.0, longitude_deg = 0.0, d = 0.0, i = 0.0,
           horizontal_nt = 0.0;
    text >> year >> height_km >> latitude_deg >> longitude_deg >> d >> i >> horizontal_nt;
    if (std::fabs(latitude_deg) < 55.0) continue;
    const auto days = std::chrono::days(static_cast<int>((year - std::floor(year)) * 365.25));
    const auto weak =
        weak_fields(model, at_start_of(static_cast<int>(year)) + days, 1000.0 * height_km);
    const WeakField& zone = weak[latitude_deg > 0.0 ? 0 : 1];
    const Position here = *Position::at_deg(latitude_deg, longitude_deg);
    INFO(line);
    CHECK(is_inside(zone, zone.caution, here) == (horizontal_nt < kCautionBelow_nt));
    CHECK(is_inside(zone, zone.blackout, here) == (horizontal_nt < kBlackoutBelow_nt));
    weak_rows += horizontal_nt < kCautionBelow_nt ? 1 : 0;
  }
  CHECK(weak_rows >= 9);
}
