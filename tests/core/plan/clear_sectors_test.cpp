#include "core/plan/clear_sectors.hpp"

#include "core/reception/obstacles.hpp"
#include "tests/support/dice.hpp"

#include <array>
#include <cmath>

#include <catch2/catch.hpp>

namespace mastwise {
namespace {

HeadingArc arc(double from_deg, double length_deg) {
  return {Bearing<True>::degrees(from_deg), length_deg};
}

WantedWay way(double bearing_deg, double frequency_mhz) {
  return {Bearing<True>::degrees(bearing_deg), frequency_mhz};
}

void check_arcs(const std::vector<HeadingArc>& arcs, const std::vector<HeadingArc>& expected) {
  REQUIRE(arcs.size() == expected.size());
  for (std::size_t i = 0; i < arcs.size(); ++i) {
    CHECK(arcs[i].from.degrees() == Approx(expected[i].from.degrees()).margin(1e-9));
    CHECK(arcs[i].length_deg == Approx(expected[i].length_deg).margin(1e-9));
  }
}

// The oracle's own way to say where an angle is: whether `deg` lies clockwise after `from_deg`
// within `length_deg`.
bool covers(double from_deg, double length_deg, double deg) {
  double into_deg = deg - from_deg;
  while (into_deg < 0.0) into_deg += 360.0;
  while (into_deg >= 360.0) into_deg -= 360.0;
  return into_deg <= length_deg;
}

bool any_covers(const std::vector<HeadingArc>& arcs, double deg) {
  for (const HeadingArc& one : arcs) {
    if (covers(one.from.degrees(), one.length_deg, deg)) return true;
  }
  return false;
}

std::vector<HeadingArc> random_arcs(test::Dice& dice, double longest_deg) {
  std::vector<HeadingArc> arcs;
  for (std::size_t count = dice.below(7); count > 0; --count) {
    arcs.push_back(arc(dice.between(0.0, 360.0), dice.between(0.0, longest_deg)));
  }
  return arcs;
}

}  // namespace

// By hand: wavelengths of 0.5 and 4 m at 599.585 and 74.948 MHz, 10 m away: 0.78 sqrt(0.5 * 5) and
// 0.78 sqrt(4 * 5).
TEST_CASE("clear sectors: the clearance by hand") {
  CHECK(clearance_m(599.584916) == Approx(1.23329).margin(1e-4));
  CHECK(clearance_deg(599.584916) == Approx(7.0309).margin(1e-3));
  CHECK(clearance_m(74.9481145) == Approx(3.48827).margin(1e-4));
  CHECK(clearance_deg(74.9481145) == Approx(19.2303).margin(1e-3));
}

// Recommendation ITU-R P.526 (31): 6.0 dB with the edge on the line [trade table: J(0) 6.0], none
// from v = -0.78 down.
TEST_CASE("clear sectors: an edge at the clearance costs nothing, a nearer one does") {
  constexpr double kFar_m = 60'000.0;
  for (const double frequency_mhz : {57.0, 195.0, 545.0, 690.0}) {
    for (const double near_m : {5.0, 10.0, 25.0}) {
      const double free_m = clearance_m(frequency_mhz, near_m);
      CHECK(reception::edge_loss_db(-1.001 * free_m, near_m, kFar_m, frequency_mhz) == 0.0);
      CHECK(reception::edge_loss_db(-0.9 * free_m, near_m, kFar_m, frequency_mhz) > 0.3);
      CHECK(reception::edge_loss_db(0.0, near_m, kFar_m, frequency_mhz) == Approx(6.0).margin(0.1));
    }
  }
}

TEST_CASE("clear sectors: arcs by hand, over north and merged") {
  const double uhf_deg = clearance_deg(599.584916), vhf_deg = clearance_deg(74.9481145);
  const std::array ways{way(5.0, 599.584916), way(200.0, 74.9481145), way(340.0, 599.584916),
                        way(222.0, 599.584916)};
  const auto sectors = clear_sectors(ways, 6.0);
  REQUIRE(sectors.size() == 2);
  // 200 - 19.23 - 6 = 174.77 to 222 + 7.03 + 6 = 235.03: they overlap between 209 and 225.
  CHECK(sectors[0].arc.from.degrees() == Approx(200.0 - vhf_deg - 6.0));
  CHECK(sectors[0].arc.length_deg == Approx(22.0 + vhf_deg + uhf_deg + 12.0));
  CHECK(sectors[0].ways == std::vector<std::size_t>{1, 3});
  CHECK(sectors[0].clearance_m == Approx(3.48827).margin(1e-4));
  // 340 and 5 are 25 apart and reach 13.03 each: they touch by 1.06 degrees over north.
  CHECK(sectors[1].arc.from.degrees() == Approx(340.0 - uhf_deg - 6.0));
  CHECK(sectors[1].arc.length_deg == Approx(25.0 + 2.0 * uhf_deg + 12.0));
  CHECK(sectors[1].ways == std::vector<std::size_t>{2, 0});
  CHECK(sectors[1].clearance_m == Approx(1.23329).margin(1e-4));
  // With half a degree less they are three.
  CHECK(clear_sectors(ways, 5.4).size() == 3);
  CHECK(clear_sectors({}, 6.0).empty());
}

TEST_CASE("clear sectors: arcs join, and the widest gap comes first") {
  check_arcs(joined_arcs({arc(350.0, 20.0), arc(100.0, 10.0), arc(105.0, 2.0), arc(8.0, 5.0)}),
             {arc(100.0, 10.0), arc(350.0, 23.0)});
  check_arcs(joined_arcs({arc(10.0, 20.0), arc(30.0, 5.0)}), {arc(10.0, 25.0)});
  check_arcs(joined_arcs({arc(300.0, 200.0), arc(130.0, 175.0)}), {arc(0.0, 360.0)});
  check_arcs(joined_arcs({arc(300.0, 200.0), arc(20.0, 20.0), arc(120.0, 30.0)}),
             {arc(300.0, 210.0)});
  check_arcs(gaps_between({arc(100.0, 10.0), arc(350.0, 23.0)}),
             {arc(110.0, 240.0), arc(13.0, 87.0)});
  check_arcs(gaps_between({arc(350.0, 23.0)}), {arc(13.0, 337.0)});
  check_arcs(gaps_between({}), {arc(0.0, 360.0)});
  CHECK(gaps_between({arc(0.0, 360.0)}).empty());
}

TEST_CASE("clear sectors: nose headings by hand") {
  // One arc due north, 20 wide; a neighbor on the right, 60 wide, fills 60 to 120 of the rig: the
  // nose meets it from 350 - 120 = 230 to 10 - 60 = 310.
  const std::array right{RigSector{RigAngle::clockwise_deg(60.0), 60.0}};
  check_arcs(noses_that_clear({arc(350.0, 20.0)}, right), {arc(310.0, 280.0)});
  // With one on the left too, also from 350 - 300 = 50 to 10 - 240 = 130.
  const std::array both{right[0], RigSector{RigAngle::clockwise_deg(240.0), 60.0}};
  check_arcs(noses_that_clear({arc(350.0, 20.0)}, both), {arc(130.0, 100.0), arc(310.0, 100.0)});
  check_arcs(noses_that_clear({}, both), {arc(0.0, 360.0)});
  check_arcs(noses_that_clear({arc(350.0, 20.0)}, {}), {arc(0.0, 360.0)});
  CHECK(noses_that_clear({arc(0.0, 150.0), arc(180.0, 30.0)}, both).empty());
  // 4.5 m ahead and behind, 8 m to the side.
  CHECK(neighbor_sector(true).from.clockwise_deg() == Approx(90.0 - 29.3578));
  CHECK(neighbor_sector(false).from.clockwise_deg() == Approx(270.0 - 29.3578));
  CHECK(neighbor_sector(true).length_deg == Approx(58.7155));
}

// The oracle walks the circle in small steps and asks of each direction alone.
TEST_CASE("clear sectors: random arcs, gaps and noses agree with a walk around the circle") {
  test::Dice dice(9);
  for (int round = 0; round < 400; ++round) {
    const auto arcs = random_arcs(dice, round % 4 == 0 ? 300.0 : 80.0);
    const auto joined = joined_arcs(arcs);
    const auto gaps = gaps_between(joined);
    std::vector<RigSector> occupied;
    for (std::size_t count = dice.below(3); count > 0; --count) {
      occupied.push_back(
          {RigAngle::clockwise_deg(dice.between(0.0, 360.0)), dice.between(5.0, 90.0)});
    }
    const auto noses = noses_that_clear(joined, occupied);
    double sum_deg = 0.0;
    for (const HeadingArc& one : joined) sum_deg += one.length_deg;
    for (const HeadingArc& one : gaps) sum_deg += one.length_deg;
    CHECK(sum_deg == Approx(360.0));
    int wrong = 0;
    for (double deg = 0.0137; deg < 360.0; deg += 0.73) {
      const bool covered = any_covers(arcs, deg);
      wrong += any_covers(joined, deg) != covered || any_covers(gaps, deg) == covered ? 1 : 0;
      // With the nose at `deg`, does any bearing of an arc lie in an occupied sector?
      bool meets = false;
      for (const HeadingArc& one : arcs) {
        for (const RigSector& sector : occupied) {
          const double sector_deg = deg + sector.from.clockwise_deg();
          meets = meets || covers(sector_deg, sector.length_deg, one.from.degrees()) ||
                  covers(one.from.degrees(), one.length_deg, sector_deg);
        }
      }
      wrong += any_covers(noses, deg) == meets ? 1 : 0;
    }
    CHECK(wrong == 0);
  }
}

}  // namespace mastwise
