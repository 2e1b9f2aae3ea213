#include "core/geo/geodesic.hpp"
#include "tests/support/stage.hpp"

#include <catch2/catch.hpp>

// The route to the places ahead, by touch, in the practice area.
using namespace mastwise;
using test::Stage;

namespace {

void add_place(Stage& stage, const char* text) {
  stage.set(act::OpenField{Field::AheadPlace});
  stage.set(act::KeypadType{text});
  stage.set(act::KeypadAccept{});
}

}  // namespace

TEST_CASE("along the way each network's chance matches the lists at both ends") {
  Stage stage;
  stage.tap("place Ahead");
  CHECK_FALSE(stage.targets().find("along")->enabled);  // nowhere to go yet
  add_place(stage, "43.1,-118.2");
  stage.tap("along");
  REQUIRE(stage.model().ahead.route);
  const RouteSheet& sheet = *stage.model().ahead.route;
  CHECK(sheet.trouble == "");
  CHECK(sheet.done == 1.0);
  const Position there = *Position::at_deg(43.1, -118.2);
  CHECK(sheet.length_km ==
        Approx(path_between(*stage.model().findings.position, there).distance_m / 1000.0));
  const AheadTable& table = *stage.model().stations->ahead;
  REQUIRE(sheet.rows.size() == table.networks.size());
  for (std::size_t i = 0; i < sheet.rows.size(); ++i) {
    const RouteRow& row = sheet.rows[i];
    INFO(row.network);
    CHECK(row.network == table.networks[i]);
    REQUIRE(row.chances.size() >= 2);
    for (const AheadPlace& place : table.places) {
      const auto& end = place.here ? row.chances.front() : row.chances.back();
      REQUIRE(place.offers[i]);
      CHECK(end.chance_percent == Approx(place.offers[i]->chance_percent));
    }
    for (const reception::RouteChance& chance : row.chances) {
      const bool holds = chance.chance_percent.value_or(0.0) >= sheet.question.floor_percent;
      bool told = false;
      for (const reception::Stretch& stretch : row.stretches) {
        told = told || (chance.at_km >= stretch.from_km && chance.at_km <= stretch.to_km);
      }
      CHECK(told == holds);
    }
  }
  CHECK(stage.shows_within(sheet.rows.front().network));
}

TEST_CASE("without places ahead no route is surveyed") {
  Stage stage;
  stage.tap("place Ahead");
  stage.set(act::SwitchAlong{});
  CHECK_FALSE(stage.model().ahead.route);
  CHECK(stage.shows_within("Add a place"));
}
