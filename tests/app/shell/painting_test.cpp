#include "app/parking/sight.hpp"
#include "app/session/working_state.hpp"
#include "app/shared/json.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include <catch2/catch.hpp>

// What stands around the rig, painted by thumb on Here, and which way to park.
using namespace mastwise;
using reception::Side;
using reception::SideKind;
using test::Stage;

namespace {

const reception::ObstacleRing& ring_of(const Stage& stage) {
  return stage.model().findings.ring;
}

// The wanted station's side in a ring whose first side has the nose in its middle.
std::size_t side_of(const Stage& stage, const WantedSight& wanted) {
  reception::ObstacleRing ring = ring_of(stage);
  if (ring.blank() && stage.model().findings.nose) ring.first = stage.model().findings.nose->nose();
  return ring.side_toward(wanted.bearing);
}

void tap_side(Stage& stage, std::size_t side) {
  stage.tap("side " + std::to_string(side));
}

double chance_of(const Stage& stage, const std::string& title) {
  for (const StationRow& row : stage.model().stations->rows) {
    if (title.starts_with(row.station.call_sign)) return row.outlook->chance_percent.value_or(0.0);
  }
  FAIL("no station " << title);
  return 0.0;
}

WantedSight wanted(double bearing_deg, std::vector<std::string> networks, double side_db = 0.0) {
  return {.title = "QAAA 1.1",
          .networks = std::move(networks),
          .bearing = Bearing<True>::degrees(bearing_deg),
          .arc = {Bearing<True>::degrees(bearing_deg - 13.0), 26.0},
          .side_db = side_db};
}

}  // namespace

TEST_CASE("a tap paints a side of the rig, a second one clears it, and Undo brings it back",
          "[painting]") {
  Stage stage;
  stage.settle();
  const Bearing<True> nose = stage.model().findings.nose->nose();
  tap_side(stage, 2);
  CHECK(ring_of(stage).first == nose);
  CHECK(ring_of(stage).sides[2] == reception::usual_side(SideKind::trees, false, true));
  CHECK(stage.model().stop.ring_at == stage.model().findings.position);
  stage.tap("paint hill");
  tap_side(stage, 2);
  CHECK(ring_of(stage).sides[2].kind == SideKind::hill);
  tap_side(stage, 2);
  CHECK(ring_of(stage).blank());
  stage.tap("take back");
  CHECK(ring_of(stage).sides[2].kind == SideKind::hill);
  stage.tap("take back");
  CHECK(ring_of(stage).sides[2].kind == SideKind::trees);
  stage.tap("take back");
  CHECK(ring_of(stage).blank());
}

TEST_CASE("a wipe paints the sides it crosses, as one change", "[painting]") {
  for (const auto& screen : {test::kTablet, test::kHeadUnit}) {
    Stage stage(screen);
    stage.settle();
    const touch::Point ahead = stage.middle_of("side 0"), right = stage.middle_of("side 2");
    const touch::Point corner = stage.middle_of("side 1");
    stage.tap("paint open");
    const std::size_t steps = stage.model().undo.size();
    stage.drag(ahead, corner, milliseconds(150));
    CHECK(ring_of(stage).sides[0].kind == SideKind::open);
    CHECK(ring_of(stage).sides[1].kind == SideKind::open);
    CHECK(ring_of(stage).sides[2].kind == SideKind::unmarked);
    CHECK(stage.model().undo.size() == steps + 1);
    CHECK_FALSE(stage.model().parking.wiping);
    // Over painted ones it goes on painting.
    stage.tap("paint rig");
    stage.drag(corner, right, milliseconds(150));
    CHECK(ring_of(stage).sides[1].kind == SideKind::rig);
    CHECK(ring_of(stage).sides[2].kind == SideKind::rig);
    CHECK(stage.model().undo.size() == steps + 2);
    stage.tap("take back");
    CHECK(ring_of(stage).sides[1].kind == SideKind::open);
  }
}

TEST_CASE("near or far, low or high: the last stroke follows, and the next one", "[painting]") {
  Stage stage;
  stage.settle();
  CHECK(stage.targets().find("reach near") == nullptr);
  tap_side(stage, 4);
  stage.tap("reach far");
  CHECK(ring_of(stage).sides[4] == reception::usual_side(SideKind::trees, true, true));
  stage.tap("height low");
  CHECK(ring_of(stage).sides[4] == reception::usual_side(SideKind::trees, true, false));
  tap_side(stage, 5);
  CHECK(ring_of(stage).sides[5] == reception::usual_side(SideKind::trees, true, false));
  stage.tap("reach near");
  CHECK(ring_of(stage).sides[5].distance_m < ring_of(stage).sides[4].distance_m);
  stage.tap("paint open");
  CHECK(stage.targets().find("reach near") == nullptr);
}

TEST_CASE("trees painted across a wanted station lower its chance and are named", "[painting]") {
  Stage stage;
  stage.settle();
  REQUIRE_FALSE(stage.model().parking.wanted.empty());
  const WantedSight aim = stage.model().parking.wanted.front();
  const double before = chance_of(stage, aim.title);
  const std::size_t networks = stage.model().parking.verdict.wanted;
  tap_side(stage, side_of(stage, aim));
  stage.settle();
  const ParkingState& parking = stage.model().parking;
  CHECK(chance_of(stage, aim.title) < before);
  REQUIRE_FALSE(parking.wanted.empty());
  const auto now = std::find_if(parking.wanted.begin(), parking.wanted.end(),
                                [&](const WantedSight& one) { return one.title == aim.title; });
  REQUIRE(now != parking.wanted.end());
  CHECK(now->sight == Sight::blocked);
  CHECK(now->side_db > kStillClear_db);
  // What is painted does not change what is wanted.
  CHECK(parking.verdict.wanted == networks);
  const StationRow* row = nullptr;
  for (const StationRow& one : stage.model().stations->rows) {
    if (aim.title.starts_with(one.station.call_sign)) row = &one;
  }
  REQUIRE(row != nullptr);
  CHECK(std::any_of(row->reasons.begin(), row->reasons.end(), [](const reception::Reason& reason) {
    return reason.kind() == reception::ReasonKind::on_its_side;
  }));
  CHECK(stage.shows_within("Trees on 1 side"));
}

TEST_CASE("with every side seen Here says to stay, and how many networks are clear", "[painting]") {
  Stage stage;
  stage.settle();
  stage.tap("paint open");
  for (std::size_t side = 0; side < reception::kSides; ++side) tap_side(stage, side);
  stage.settle();
  const ParkVerdict& verdict = stage.model().parking.verdict;
  CHECK(verdict.clear == verdict.wanted);
  CHECK(stage.shows("Stay: " + std::to_string(verdict.wanted) + " of " +
                    std::to_string(verdict.wanted) + " clear"));
  stage.tap("see stations");
  CHECK(stage.model().place == Place::Stations);
}

// By hand: the nose north, a neighbor on the right fills 60.6 to 119.4 degrees of the rig, and its
// arc 13 more to each side of the station.
TEST_CASE("a neighbor expected beside the rig is avoided by another nose", "[painting]") {
  const auto north = RigHeading::nose_at(Bearing<True>::degrees(0.0));
  std::vector<WantedSight> stations{wanted(90.0, {"A", "B"}), wanted(200.0, {"C"})};
  const ParkVerdict both = judge(stations, {}, Neighbors::both, north);
  CHECK(both.wanted == 3);
  CHECK(both.blocked() == 2);
  CHECK(both.unseen == 1);
  REQUIRE(both.better);
  CHECK(both.better_blocked == 0);
  // The nearest nose that clears 77 to 103 of 60.6 to 119.4 is 42.4 to the right or left, in steps
  // of 5; to the right the arc of 187 to 213 stays behind the neighbor on the left, which fills
  // 285.6 to 344.4.
  const double turn_deg = (both.better->nose() - north.nose()).clockwise_deg();
  CHECK(std::fabs(turn_deg) == 45.0);
  // Painted open there is no neighbor, and no better nose.
  reception::ObstacleRing ring;
  ring.sides[2].kind = SideKind::open;
  const ParkVerdict open = judge(stations, ring, Neighbors::both, north);
  CHECK(open.clear == 2);
  CHECK_FALSE(open.better);
  // What is painted does not move with the nose.
  ring.sides[2] = reception::usual_side(SideKind::rig, false, true);
  stations[0].side_db = 8.0;
  const ParkVerdict rig = judge(stations, ring, Neighbors::both, north);
  CHECK(rig.blocked() == 2);
  CHECK_FALSE(rig.better);
  // Without a known nose nobody stands beside it.
  stations[0].side_db = 0.0;
  CHECK(judge(stations, {}, Neighbors::both, std::nullopt).unseen == 3);
}

TEST_CASE("what is painted stays with the place where it was painted", "[painting]") {
  Stage stage;
  stage.settle();
  tap_side(stage, 1);
  Stop stop = stage.model().stop;
  // A few steps on the trees still stand there; a mile on they do not.
  stop.by_hand =
      *Position::at_deg(stop.by_hand->latitude_deg() + 0.0005, stop.by_hand->longitude_deg());
  stage.set(act::SetStop{stop});
  CHECK_FALSE(ring_of(stage).blank());
  stop.by_hand =
      *Position::at_deg(stop.by_hand->latitude_deg() + 0.02, stop.by_hand->longitude_deg());
  stage.set(act::SetStop{stop});
  stage.settle();
  CHECK(ring_of(stage).blank());
  CHECK(stage.model().stations->question.ring.blank());
  // Painting there begins anew.
  tap_side(stage, 3);
  CHECK(ring_of(stage).sides[1].kind == SideKind::unmarked);
  CHECK(ring_of(stage).sides[3].kind == SideKind::trees);
  // Other places ahead have no marks of this one.
  const StationsQuestion there =
      elsewhere(stage.model().stations->question, *Position::at_deg(43.0, -118.0));
  CHECK(there.ring.blank());
}

TEST_CASE("painted sides come back after a restart, and older files open without them",
          "[painting]") {
  Stop stop;
  stop.ring.first = Bearing<True>::degrees(300.0);
  stop.ring.sides[3] = {SideKind::hill, 410.0, 35.5};
  stop.ring_at = *Position::at_deg(42.5, -118.5);
  nlohmann::json json = stop;
  CHECK(json.get<Stop>() == stop);
  json.erase("ring");
  json.erase("ring_at");
  const Stop old = json.get<Stop>();
  CHECK(old.ring.blank());
  CHECK_FALSE(old.ring_at);
  nlohmann::json bad = stop;
  bad["ring"]["sides"][3]["height_m"] = -1.0;
  CHECK_THROWS(bad.get<Stop>());
  const test::TemporaryFolder folder;
  {
    Stage stage(test::kTablet, folder.path());
    stage.settle();
    tap_side(stage, 6);
    stage.wait(milliseconds(2'000));
  }
  Stage again(test::kTablet, folder.path());
  CHECK(again.model().stop.ring.sides[6].kind == SideKind::trees);
}
