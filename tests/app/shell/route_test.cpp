#include "app/service/startup.hpp"
#include "app/words/units.hpp"
#include "core/geo/geodesic.hpp"
#include "tests/support/stage.hpp"
#include "tests/support/temporary_folder.hpp"

#include <array>
#include <fstream>
#include <set>
#include <string>

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

TEST_CASE("along the way each network's chance matches the columns at both ends") {
  Stage stage;
  stage.tap("place Ahead");
  CHECK_FALSE(stage.targets().find("next stop")->enabled);  // nowhere to go yet
  add_place(stage, "43.1,-118.2");
  REQUIRE(stage.model().ahead.route);
  const RouteSheet& sheet = *stage.model().ahead.route;
  CHECK(sheet.trouble == "");
  CHECK(sheet.done == 1.0);
  const Position there = *Position::at_deg(43.1, -118.2);
  CHECK(sheet.length_km ==
        Approx(path_between(*stage.model().findings.position, there).distance_m / 1000.0));
  const AheadFound& found = stage.model().ahead.found;
  REQUIRE(found.columns.size() == 2);
  CHECK(found.columns[1].at_km == Approx(sheet.length_km));
  REQUIRE(sheet.rows.size() == found.rows.size());
  REQUIRE_FALSE(sheet.rows.empty());
  for (std::size_t i = 0; i < sheet.rows.size(); ++i) {
    const RouteRow& row = sheet.rows[i];
    INFO(row.network);
    CHECK(row.network == found.rows[i].network);
    REQUIRE(row.chances.size() >= 2);
    const std::array ends{row.chances.front(), row.chances.back()};
    for (std::size_t end = 0; end < ends.size(); ++end) {
      REQUIRE(found.columns[end].computed);
      REQUIRE(found.columns[end].offers[i]);
      CHECK(ends[end].chance_percent == Approx(found.columns[end].offers[i]->chance_percent));
    }
    for (const reception::RouteChance& chance : row.chances) {
      const bool holds = chance.chance_percent.value_or(0.0) >= found.floor_percent;
      bool told = false;
      for (const reception::Stretch& stretch : found.rows[i].stretches) {
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
  CHECK_FALSE(stage.model().ahead.route);
  CHECK(stage.shows_within("Add the places"));
}

// A compass set to a bare true bearing would be off by the declination of that place.
TEST_CASE("headings at a place ahead are those of a compass there") {
  Stage stage(test::kLargeTablet);
  stage.tap("place Ahead");
  add_place(stage, "43.1,-118.2");
  const Model& model = stage.model();
  const AheadColumn& column = model.ahead.found.columns.at(1);
  REQUIRE(column.declination);
  const auto magnetic_model = service::load_magnetic_model();
  REQUIRE(magnetic_model);
  const MagneticField field = magnetic_model->at(column.position, model.findings.date);
  CHECK(column.declination->east_deg() == Approx(field.declination.east_deg()));
  CHECK(column.declination->east_deg() > 12.0);  // Oregon: some 14 degrees east
  REQUIRE(column.offers.front());
  const std::string magnetic =
      words::whole_degrees(to_magnetic(column.offers.front()->bearing, *column.declination));
  CHECK(stage.shows(magnetic));
}

TEST_CASE("the floor decides what holds without another survey, and how far all hold") {
  Stage stage;
  stage.tap("place Ahead");
  add_place(stage, "43.6,-119.4");
  const AheadFound& found = stage.model().ahead.found;
  CHECK(found.floor_percent == kUsualFloor_percent);
  const RouteSheet before = *stage.model().ahead.route;
  std::set<std::size_t> holding;
  for (std::size_t i = 0; i < kPlanFloors.size(); ++i) {
    std::size_t count = 0;
    for (const auto& offer : found.columns[1].offers) {
      count += offer && offer->chance_percent >= found.floor_percent ? 1 : 0;
    }
    CHECK(found.columns[1].holding == count);
    REQUIRE(found.hold_to_km);
    double least_km = found.length_km;
    for (std::size_t row = 0; row < found.rows.size(); ++row) {
      const auto& here = found.columns[0].offers[row];
      if (!here || here->chance_percent < found.floor_percent) continue;
      REQUIRE_FALSE(found.rows[row].stretches.empty());
      least_km = std::min(least_km, found.rows[row].stretches.front().to_km);
    }
    CHECK(*found.hold_to_km == Approx(least_km));
    holding.insert(found.columns[1].holding);
    stage.tap("ahead floor");
  }
  CHECK(found.floor_percent == kUsualFloor_percent);
  CHECK(holding.size() > 1);  // the floors differ in what they let through
  CHECK(*stage.model().ahead.route == before);
}

TEST_CASE("a place ahead becomes the next stop with a touch, and Undo brings all back") {
  Stage stage;
  stage.tap("place Ahead");
  add_place(stage, "43.1,-118.2");
  add_place(stage, "42.2,-121.7");
  const Position here = *stage.model().findings.position;
  stage.tap("place ahead 0");
  stage.tap("next stop");
  const Position there = *Position::at_deg(43.1, -118.2);
  CHECK(*stage.model().findings.position == there);
  REQUIRE(stage.model().ahead.places.size() == 1);
  CHECK(stage.model().ahead.found.columns.size() == 2);
  stage.tap("take back");
  CHECK(*stage.model().findings.position == here);
  CHECK(stage.model().ahead.places.size() == 2);
  stage.tap("drop places");
  CHECK(stage.model().ahead.places.empty());
  stage.tap("take back");
  CHECK(stage.model().ahead.places.size() == 2);
}

TEST_CASE("places are compared by what is pinned, or by all networks in reach") {
  Stage stage;
  stage.tap("place Ahead");
  add_place(stage, "43.1,-118.2");
  const AheadFound& found = stage.model().ahead.found;
  CHECK(found.wants == AheadWants::Networks);
  CHECK(found.rows.size() == 6);  // the invented networks
  stage.tap("compare by pinned");
  CHECK(found.rows.empty());
  CHECK(stage.shows_within("Nothing is pinned"));
  stage.set(act::PinNetwork{"Basin Public"});
  stage.settle();
  REQUIRE(found.rows.size() == 1);
  CHECK(found.rows.front().network == "Basin Public");
  stage.tap("compare by networks");
  CHECK(found.rows.size() == 6);
}

// The practice area's tiles end at 44 degrees north.
TEST_CASE("the way says where heights are missing, and leads to the data") {
  Stage stage;
  stage.tap("place Ahead");
  add_place(stage, "46.5,-118.5");
  const AheadFound& found = stage.model().ahead.found;
  REQUIRE_FALSE(found.without_terrain.empty());
  const RoutePart& last = found.without_terrain.back();
  CHECK(last.from_km > 0.0);
  CHECK(last.to_km == Approx(found.length_km));
  CHECK(stage.shows_within("No heights"));
  stage.tap("ground ahead");
  CHECK(stage.model().sheet == Sheet::Import);
}

TEST_CASE("a route is chosen from a stick, and its stops become those ahead") {
  const test::TemporaryFolder data;
  std::ofstream(data / "trip.gpx")
      << "<gpx version=\"1.1\"><rte><name>Lake loop</name><rtept lat=\"42.8\" lon=\"-118.4\"/>"
         "<rtept lat=\"43.1\" lon=\"-118.2\"><name>Mesa</name></rtept></rte></gpx>";
  Stage stage(test::kTablet, data.path().string());
  stage.set(act::Show{Place::Ahead});
  stage.tap("places from file");
  CHECK(stage.model().sheet == Sheet::Import);
  CHECK(stage.shows_within("A way from"));
  stage.tap("look in " + data.path().string());
  stage.tap("table trip.gpx");
  REQUIRE(stage.model().data.answer->route);
  CHECK(stage.shows_within("Lake loop"));
  CHECK(stage.shows_within("Route: 2 stops"));
  stage.tap("route 0");
  CHECK(stage.model().sheet == Sheet::None);
  CHECK(stage.model().place == Place::Ahead);
  REQUIRE(stage.model().ahead.places.size() == 2);
  CHECK(stage.model().ahead.found.columns.at(2).name == "Mesa");
  REQUIRE(stage.model().ahead.route);
  CHECK(stage.model().ahead.route->done == 1.0);
  CHECK(stage.shows_within("Mesa"));
  stage.set(act::TakeBack{});
  CHECK(stage.model().ahead.places.empty());
}
