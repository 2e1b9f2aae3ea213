#include "core/gear/near_towers.hpp"

#include "core/gear/receive_chain.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

// The field of a half-wave dipole in free space by Recommendation ITU-R P.525, from memory:
// e = sqrt(30 g p) / d V/m with g = 1.64, its gain over an isotropic antenna.
using namespace mastwise;
using gear::TowerRange;
using gear::TowerService;

namespace {

double expected_dbm(double erp_w, double distance_m, double gain_dbd, double frequency_mhz) {
  const double field_vm = std::sqrt(30.0 * 1.64 * erp_w) / distance_m;
  return gear::received_power_dbm(20.0 * std::log10(field_vm * 1e6), gain_dbd, frequency_mhz);
}

}  // namespace

TEST_CASE("a tower brings the power of free space to the antenna", "[gear]") {
  const gear::Antenna antenna = gear::presets().front().antenna;
  CHECK_FALSE(gear::near_towers_dbm(antenna, {}));
  for (const TowerRange range : {TowerRange::in_sight, TowerRange::near, TowerRange::beside}) {
    const double radio = expected_dbm(100e3, gear::tower_distance_m(TowerService::radio, range),
                                      antenna.low_vhf.gain_dbd, 98.0);
    CHECK(*gear::near_towers_dbm(antenna, {.radio = range}) == Approx(radio).margin(0.05));
    const double cell = expected_dbm(1e3, gear::tower_distance_m(TowerService::cell, range),
                                     antenna.uhf.gain_dbd, 635.0);
    CHECK(*gear::near_towers_dbm(antenna, {.cell = range}) == Approx(cell).margin(0.05));
  }
}

TEST_CASE("two towers add up", "[gear]") {
  const gear::Antenna antenna = gear::presets().front().antenna;
  const gear::NearTowers both{TowerRange::near, TowerRange::near};
  const double sum = *gear::near_towers_dbm(antenna, both);
  CHECK(sum > *gear::near_towers_dbm(antenna, {.radio = TowerRange::near}));
  CHECK(sum > *gear::near_towers_dbm(antenna, {.cell = TowerRange::near}));
  CHECK(sum < *gear::near_towers_dbm(antenna, {.radio = TowerRange::near}) + 3.02 +
                  std::max(0.0, *gear::near_towers_dbm(antenna, {.cell = TowerRange::near}) -
                                    *gear::near_towers_dbm(antenna, {.radio = TowerRange::near})));
}

TEST_CASE("the names of the ranges are read back, and others are refused", "[gear]") {
  for (const TowerRange range : gear::kTowerRanges) {
    CHECK(*gear::parse_tower_range(to_text(range)) == range);
  }
  CHECK(*gear::parse_tower_range(" In Sight ") == TowerRange::in_sight);
  const auto far = gear::parse_tower_range("far");
  REQUIRE_FALSE(far);
  CHECK(far.error().remedy == "use none, in sight, near or beside");
}
