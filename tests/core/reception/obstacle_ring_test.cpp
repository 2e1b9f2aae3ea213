#include "core/reception/obstacle_ring.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/area_scan.hpp"
#include "core/reception/chance_curve.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"
#include "tests/support/dice.hpp"
#include "tests/support/sanitized.hpp"

#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::reception {
namespace {

// A wavelength of half a meter.
constexpr double kHalfMeter_mhz = 599.584916;

Bearing<True> toward(double degrees) {
  return Bearing<True>::degrees(degrees);
}

ObstacleRing all_round(const Side& side) {
  ObstacleRing ring;
  ring.sides.fill(side);
  return ring;
}

ObstacleRing lone(const Side& side) {
  ObstacleRing ring;
  ring.sides[0] = side;
  return ring;
}

double level_loss_db(const ObstacleRing& ring, double bearing_deg, double antenna_m = 3.0,
                     double frequency_mhz = kHalfMeter_mhz, bool in_leaf = true) {
  return ring_loss(ring, toward(bearing_deg), {}, antenna_m, frequency_mhz, in_leaf).loss_db;
}

Side random_side(test::Dice& dice) {
  const auto kind = static_cast<SideKind>(dice.below(kSideKinds));
  Side side{.kind = kind};
  if (!side.blocks()) return side;
  side.distance_m = dice.between(2.0, kind == SideKind::hill ? 600.0 : 60.0);
  side.height_m = dice.between(0.5, kind == SideKind::hill ? 80.0 : 25.0);
  return side;
}

ObstacleRing random_ring(test::Dice& dice) {
  ObstacleRing ring{.first = toward(dice.between(0.0, 360.0))};
  for (Side& side : ring.sides) side = random_side(dice);
  return ring;
}

Survey surveyed(const Receiver& receiver, const std::vector<Station>& stations,
                const terrain::TileSource& tiles) {
  Survey survey(receiver, stations, tiles);
  Scratch scratch;
  survey.measure(0, survey.size(), scratch);
  survey.weigh();
  return survey;
}

// Stations to all northern sides, many of them on the same and on neighboring channels, and some
// strong enough to overload an amplifier.
std::vector<Station> crowd() {
  std::vector<Station> stations;
  for (int i = 0; i < 45; ++i) {
    stations.push_back(test::transmitter(
        destination(test::stop_position(), toward(-80.0 + 20.0 * (i % 9)), 6e3 + 1'500.0 * i),
        i % 4 == 0 ? 7 + i % 3 : 20 + i % 7, 500.0, 5.0 + 10.0 * (i % 5)));
    stations.back().call_sign = "Q" + std::to_string(100 + i);
  }
  return stations;
}

}  // namespace

TEST_CASE("ring: sides lie around the first one, and each direction has one") {
  const ObstacleRing ring{.first = toward(300.0)};
  CHECK(ring.middle_of(2).degrees() == Approx(30.0));
  CHECK(ring.side_toward(toward(277.6)) == 0);
  CHECK(ring.side_toward(toward(322.4)) == 0);
  CHECK(ring.side_toward(toward(322.6)) == 1);
  CHECK(ring.side_toward(toward(277.4)) == 7);
  for (std::size_t side = 0; side < kSides; ++side) {
    CHECK(ring.side_toward(ring.middle_of(side)) == side);
  }
  CHECK(ring.blank());
  CHECK(lone({.kind = SideKind::open}).clear());
  CHECK_FALSE(lone({.kind = SideKind::open}).blank());
  CHECK_FALSE(lone(usual_side(SideKind::trees, true, false)).clear());
}

// Recommendation ITU-R P.526 section 4.1 (31): J(0) 6.0, J(1) 13.9, J(2.4) 20.5 dB, nothing below v
// = -0.78. With the station far away v = h sqrt(2 / (wavelength d)) (26).
TEST_CASE("ring: a rig or hill all round has the loss of a knife edge") {
  for (const SideKind kind : {SideKind::rig, SideKind::hill}) {
    for (const double distance_m : {8.0, 40.0, 300.0}) {
      const auto loss_db = [&](double v) {
        const double above_m = v / std::sqrt(2.0 / (0.5 * distance_m));
        return level_loss_db(all_round({kind, distance_m, 50.0 + above_m}), 17.0, 50.0);
      };
      CHECK(loss_db(0.0) == Approx(6.03).margin(0.01));
      CHECK(loss_db(1.0) == Approx(13.9).margin(0.05));
      CHECK(loss_db(2.4) == Approx(20.5).margin(0.05));
      CHECK(loss_db(-0.79) == Approx(0.0).margin(1e-9));
    }
  }
}

// By hand, P.526 section 5.1: 8 m away, top 1 m over the ray: v 0.7071, J 11.89 dB; each end 22.5
// degrees aside: 3.061 m at 7.391 m along the ray: v 2.252, J 20.01 dB. 10^-1.189 + 2 * 10^-2.001
// is -10.72 dB.
TEST_CASE("ring: a lone rig lets some signal past its ends") {
  CHECK(level_loss_db(lone({SideKind::rig, 8.0, 4.0}), 0.0) == Approx(10.72).margin(0.02));
  // At its end half of the wave passes: 6.0 dB if it is high; beside it nothing is lost from v =
  // -0.78 on, 7.9 degrees away: 8 sin(7.9) = 1.10 m = 0.78 sqrt(0.5 * 8 cos(7.9) / 2).
  const ObstacleRing wall = lone({SideKind::rig, 8.0, 400.0});
  CHECK(level_loss_db(wall, 22.5) == Approx(6.0).margin(0.2));
  CHECK(level_loss_db(wall, 25.0) > 1.0);
  CHECK(level_loss_db(wall, 22.5 + 8.0) == Approx(0.0).margin(1e-9));
  CHECK(level_loss_db(wall, 180.0) == 0.0);
  for (double bearing_deg = -60.0; bearing_deg < 60.0; bearing_deg += 0.1) {
    CHECK(std::fabs(level_loss_db(wall, bearing_deg + 0.1) - level_loss_db(wall, bearing_deg)) <
          0.3);
  }
}

// Recommendation ITU-R P.833 section 2.1 (1) at 466 MHz: 30 m of trees cost 3.26 dB, and bare ones
// have gamma / 1.2.
TEST_CASE("ring: tall trees have the loss of P.833, with leaves or bare") {
  const ObstacleRing wood = all_round({SideKind::trees, 15.0, 500.0});
  CHECK(level_loss_db(wood, 0.0, 3.0, 466.0) == Approx(3.26).margin(0.01));
  CHECK(level_loss_db(wood, 0.0, 3.0, 466.0, false) ==
        Approx(18.0 * (1.0 - std::exp(-30.0 * 0.1 / 18.0))).margin(0.01));
  CHECK(level_loss_db(all_round({SideKind::trees, 15.0, 1.0}), 0.0) == Approx(0.0).margin(1e-9));
  // Half of the wave is cut at their tops: the share 1/4 of the power goes over them.
  const double through = std::pow(10.0, -leaves_loss_db(kTreesDepth_m, kHalfMeter_mhz) / 10.0);
  const double over = std::pow(10.0, -0.603);
  CHECK(level_loss_db(all_round({SideKind::trees, 15.0, 3.0}), 0.0) ==
        Approx(-10.0 * std::log10(through + (1.0 - through) * over)).margin(0.01));
}

TEST_CASE("ring: the steeper a signal arrives, the less an obstacle costs") {
  // The station 2,000 m up at 20 km, on flat ground at 200 m; the antenna 3 m up. The ray rises
  // (1,797 - 20,000^2 / 2 R) / 20,000 = 0.0887 of the way, R 4/3 of 6,371 km.
  std::vector<double> heights_m(201, 200.0);
  const GroundAhead high(heights_m, 100.0, 2'000.0, 203.0);
  CHECK(high.slope_beyond(0.0) == Approx((1'797.0 - 23.55) / 20'000.0).margin(1e-5));
  const ObstacleRing ring = all_round({SideKind::hill, 100.0, 12.0});
  const double steep_db = ring_loss(ring, toward(0.0), high, 3.0, kHalfMeter_mhz, true).loss_db;
  // 9 m over the antenna, 0.13 m over the ray: v 0.026.
  CHECK(steep_db == Approx(6.25).margin(0.1));
  CHECK(level_loss_db(ring, 0.0) > steep_db + 5.0);
  // A ridge 150 m high at 2 km lifts the ray of a low station.
  heights_m[180] = 350.0;
  const GroundAhead behind(heights_m, 100.0, 300.0, 203.0);
  CHECK(behind.slope_beyond(400.0) == Approx((147.0 - 0.24) / 2'000.0).margin(1e-4));
  CHECK(behind.slope_beyond(2'500.0) < 0.01);
}

TEST_CASE("ring: a hill that the tiles have does not count twice") {
  std::vector<double> heights_m(601, 200.0);
  const ObstacleRing ring = all_round({SideKind::hill, 300.0, 40.0});
  const auto loss_db = [&] {
    const GroundAhead ground(heights_m, 30.0, 400.0, 203.0);
    return ring_loss(ring, toward(0.0), ground, 3.0, kHalfMeter_mhz, true).loss_db;
  };
  const double unknown_db = loss_db();
  CHECK(unknown_db > 15.0);
  heights_m[590] = 240.0 + 300.0 * 300.0 / (2.0 * 4.0 / 3.0 * 6'371'000.0);
  CHECK(loss_db() == Approx(0.0).margin(1e-6));
  // Half as high in the tiles: the rest counts.
  heights_m[590] = 220.0;
  CHECK(loss_db() > 1.0);
  CHECK(loss_db() < unknown_db);
}

TEST_CASE("ring: one more obstacle or a higher one never lowers a loss") {
  test::Dice dice(20'261'129);
  int raised = 0;
  for (int i = 0; i < 20'000; ++i) {
    const ObstacleRing before = random_ring(dice);
    ObstacleRing after = before;
    const std::size_t side = dice.below(kSides);
    if (after.sides[side].blocks()) {
      after.sides[side].height_m += dice.between(0.0, 10.0);
    } else {
      after.sides[side] = random_side(dice);
    }
    const double bearing_deg = dice.between(0.0, 360.0), antenna_m = dice.between(1.0, 12.0);
    const double frequency_mhz = dice.between(54.0, 698.0);
    const bool in_leaf = dice.below(2) == 0;
    const double one_db = level_loss_db(before, bearing_deg, antenna_m, frequency_mhz, in_leaf);
    const double other_db = level_loss_db(after, bearing_deg, antenna_m, frequency_mhz, in_leaf);
    CHECK(one_db >= 0.0);
    CHECK(other_db >= one_db - 1e-9);
    raised += other_db > one_db + 0.1 ? 1 : 0;
  }
  CHECK(raised > 1'000);
}

TEST_CASE("ring: obstacles never raise a chance, not even by sheltering from interference") {
  const auto tiles = test::country(2, test::hills());
  const std::vector<Station> stations = crowd();
  test::Dice dice(7);
  const int kRings = test::kSanitized ? 3 : 12;
  int lower = 0, interfered = 0;
  for (const auto around : {Surroundings::open, Surroundings::forest, Surroundings::town}) {
    Receiver receiver = test::roof_antenna();
    receiver.surroundings = around;
    const Survey free = surveyed(receiver, stations, tiles);
    const auto free_curves = chance_curves(free);
    for (int i = 0; i < kRings; ++i) {
      receiver.ring = random_ring(dice);
      const Survey marked = surveyed(receiver, stations, tiles);
      const auto marked_curves = chance_curves(marked);
      for (std::size_t s = 0; s < free.size(); ++s) {
        const Outlook &before = *free.outlook(s), &after = *marked.outlook(s);
        REQUIRE(before.chance_percent);
        CHECK(*after.chance_percent <= *before.chance_percent + 1e-9);
        CHECK(*after.field_dbuvm <= *before.field_dbuvm + 1e-9);
        CHECK(after.obstacles == before.obstacles);
        CHECK(after.amplifier_off == before.amplifier_off);
        lower += *after.chance_percent < *before.chance_percent - 1.0 ? 1 : 0;
        interfered += before.deviations.interference_db > 1.0 ? 1 : 0;
        for (std::size_t h = 0; h < ChanceCurve::kHeadings; h += 15) {
          CHECK(marked_curves[s]->percent()[h] <= free_curves[s]->percent()[h] + 1e-6);
        }
      }
    }
  }
  CHECK(lower > 9 * kRings);
  CHECK(interfered > 9 * kRings);
}

TEST_CASE("ring: surroundings and an obstacle are one shield, and the stronger counts") {
  const auto tiles = test::country(1, test::flat(200.0));
  const std::vector<Station> stations{
      test::transmitter(test::north_of_stop(40e3), 30, 500.0, 100.0)};
  const auto field_dbuvm = [&](Surroundings around, const ObstacleRing& ring) {
    Receiver receiver = test::roof_antenna();
    receiver.surroundings = around;
    receiver.ring = ring;
    return *surveyed(receiver, stations, tiles).outlook(0)->field_dbuvm;
  };
  const ObstacleRing trees = all_round(usual_side(SideKind::trees, false, true));
  const ObstacleRing wall = all_round({SideKind::rig, 8.0, 30.0});
  const auto cost_db = [&](Surroundings around, const ObstacleRing& ring) {
    return field_dbuvm(around, {}) - field_dbuvm(around, ring);
  };
  CHECK(cost_db(Surroundings::open, trees) > 2.0);
  CHECK(cost_db(Surroundings::forest, trees) < 0.5 * cost_db(Surroundings::open, trees));
  const double forest_shield_db =
      local_loss(Surroundings::forest, {}, test::roof_antenna().gear.height_m, 569.0).blocked_db;
  CHECK(cost_db(Surroundings::forest, wall) ==
        Approx(cost_db(Surroundings::open, wall) - forest_shield_db).margin(0.1));
}

TEST_CASE("ring: the reason names the obstacle and its decibels") {
  const auto tiles = test::country(1, test::flat(200.0));
  const std::vector<Station> stations{test::transmitter(test::north_of_stop(40e3), 30, 500.0, 1.0)};
  Receiver receiver = test::roof_antenna();
  const Side trees = usual_side(SideKind::trees, false, true);
  receiver.ring = lone(trees);
  receiver.in_leaf = false;
  const auto reasons_of = [&] {
    std::vector<Reason> found;
    const auto list = survey(receiver, stations, tiles);
    for (const Reason& reason : list.at(0).reasons) {
      if (reason.kind() == ReasonKind::on_its_side) found.push_back(reason);
    }
    return found;
  };
  const auto found = reasons_of();
  REQUIRE(found.size() == 1);
  CHECK(std::get<fact::OnItsSide>(found[0].fact) == fact::OnItsSide{trees, true});
  CHECK(found[0].decibel ==
        Approx(
            ring_loss(receiver.ring, toward(0.0), {}, receiver.gear.height_m, 569.0, false).loss_db)
            .margin(0.1));
  CHECK(found[0].gain_percent > 0.0);
  // On the far side it is no reason.
  receiver.ring = {.first = toward(180.0), .sides = receiver.ring.sides};
  CHECK(reasons_of().empty());
}

TEST_CASE("ring: a scan counts it at the stop, and nowhere else") {
  const auto tiles = test::country(1, test::hills());
  const Station station = test::transmitter(test::north_of_stop(30e3), 30, 500.0, 100.0);
  const auto grid = AreaGrid::around(test::north_of_stop(5e3), 500.0, 51);
  REQUIRE(grid);
  Receiver receiver = test::roof_antenna();
  receiver.position = grid->stop();
  const auto scanned = [&] {
    auto scan = AreaScan::of(*grid, receiver, station, tiles);
    REQUIRE(scan);
    complete(*scan);
    return scan->cells();
  };
  const auto before = scanned();
  receiver.ring = all_round(usual_side(SideKind::trees, false, true));
  receiver.ring.sides[4] = {.kind = SideKind::open};
  const auto after = scanned();
  int ringed = 0, changed = 0;
  for (std::size_t cell = 0; cell < before.size(); ++cell) {
    const float loss_db = before[cell].margin_db - after[cell].margin_db;
    if (grid->distance_m(cell) <= 30.0) {
      CHECK(loss_db > 2.0f);
      ++ringed;
    } else {
      // Which cells are means of their neighbors may change: the scan's own error.
      CHECK(std::fabs(loss_db) < 1.5f);
      changed += std::fabs(loss_db) > 0.05f ? 1 : 0;
    }
  }
  CHECK(changed < static_cast<int>(before.size()) / 10);
  CHECK(ringed == 9);
  const std::size_t middle = before.size() / 2;
  CHECK(grid->distance_m(middle) < 0.1);
  CHECK(after[middle].margin_db ==
        Approx(*surveyed(receiver, {station}, tiles).outlook(0)->margin_db).margin(0.6));
}

TEST_CASE("ring: obstacles are read from a command line, and impossible ones refused") {
  const auto trees = parse_side("NE:trees:20m:12m");
  REQUIRE(trees);
  CHECK(trees->side == 1);
  CHECK(trees->what == Side{SideKind::trees, 20.0, 12.0});
  CHECK(parse_side("w:RIG")->what == usual_side(SideKind::rig, false, true));
  CHECK(parse_side("w:rig")->side == 6);
  CHECK(parse_side(" 200 : hill : 300 : 40 m ")->side == 4);
  CHECK(parse_side("N:open")->what == Side{.kind = SideKind::open});
  for (const char* bad : {"", "NE", "NE:", "NNE:trees", "NE:swamp", "NE:trees:20m", "NE:trees:x:12",
                          "NE:trees:20:0", "NE:trees:0.5:3", "NE:trees:nan:3", "NE:trees:inf:3",
                          "NE:trees:20:12:1", "NE:open:20:12", "NE:not marked", "1e999:trees"}) {
    INFO(bad);
    const auto refused = parse_side(bad);
    REQUIRE_FALSE(refused);
    CHECK_FALSE(refused.error().remedy.empty());
  }
  for (const SideKind kind : {SideKind::open, SideKind::trees, SideKind::rig, SideKind::hill}) {
    for (const bool far : {false, true}) {
      for (const bool high : {false, true}) CHECK_FALSE(fault(usual_side(kind, far, high)));
    }
  }
}

}  // namespace mastwise::reception
