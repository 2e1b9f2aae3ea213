#include "app/service/route_file.hpp"

#include "app/ahead/way.hpp"
#include "tests/support/temporary_folder.hpp"

#include <fstream>

#include <catch2/catch.hpp>
#include <fmt/format.h>

using namespace mastwise;

namespace {

// A track along the equator, 0.01 degrees from point to point.
GpxLine track_of(int points) {
  GpxLine line{.name = "coast road"};
  for (int i = 0; i < points; ++i) line.places.push_back({*Position::at_deg(0.0, 0.01 * i)});
  return line;
}

}  // namespace

TEST_CASE("a short route stops at each of its places, by name") {
  GpxLine route{.name = "north"};
  route.places = {{*Position::at_deg(44.0, -100.0), "Dry Lake"}, {*Position::at_deg(45.0, -100.0)}};
  const RouteChoice choice = choice_of(route, RouteChoice::Kind::Route);
  REQUIRE(choice.stops.size() == 2);
  CHECK(choice.stops[0].name == "Dry Lake");
  CHECK(choice.stops[1].via.empty());
  // From 44 to 45 degrees the meridian is 111.12 km long [WGS84].
  CHECK(choice.length_km == Approx(111.12).margin(0.02));
}

TEST_CASE("a long track has six stops evenly along it, and keeps its way between them") {
  const RouteChoice choice = choice_of(track_of(3001), RouteChoice::Kind::Track);
  CHECK(choice.points == 3001);
  // A degree of the equator is 111.3195 km [WGS84].
  CHECK(choice.length_km == Approx(30.0 * 111.3195).margin(0.1));
  REQUIRE(choice.stops.size() == 6);
  std::size_t via = 0;
  for (std::size_t i = 0; i < choice.stops.size(); ++i) {
    CHECK(choice.stops[i].position.longitude_deg() ==
          Approx(5.0 * static_cast<double>(i + 1)).margin(0.011));
    via += choice.stops[i].via.size();
  }
  CHECK(via > 150);
  CHECK(via <= 240);
}

TEST_CASE("the way ahead follows the file between its stops, also past one that was removed") {
  const RouteChoice choice = choice_of(track_of(301), RouteChoice::Kind::Track);
  REQUIRE(choice.stops.size() == 6);
  AheadState state{.from_file = choice.stops};
  for (const AheadStop& stop : choice.stops) state.places.push_back(stop.position);
  const Position here = *Position::at_deg(1.0, 0.0);
  const WayAhead whole = way_ahead(state, here);
  REQUIRE(whole.places.size() == 6);
  for (std::size_t i = 0; i < 6; ++i) CHECK(whole.points[whole.places[i]] == state.places[i]);
  CHECK(whole.points.size() > 100);

  const Position removed = state.places[2];
  state.places.erase(state.places.begin() + 2);
  const WayAhead rest = way_ahead(state, here);
  CHECK(rest.points == whole.points);
  CHECK(rest.places.size() == 5);
  // A place that no file gave is reached in a straight line.
  state.places = {*Position::at_deg(2.0, 2.0), removed};
  CHECK(way_ahead(state, here).points.size() == 3);
}

TEST_CASE("GPX files and tables of places are looked into, others are refused") {
  const test::TemporaryFolder folder;
  std::ofstream(folder / "trip.gpx")
      << "<gpx version=\"1.1\"><wpt lat=\"1\" lon=\"2\"><name>Mesa</name></wpt><rte><name>north"
         "</name><rtept lat=\"44\" lon=\"-100\"/><rtept lat=\"45\" lon=\"-100\"/></rte></gpx>";
  const auto look = look_into_routes(folder.file("trip.gpx"));
  REQUIRE(look);
  REQUIRE(look->choices.size() == 2);
  CHECK(look->choices[0].kind == RouteChoice::Kind::Route);
  CHECK(look->choices[0].name == "north");
  CHECK(look->choices[1].kind == RouteChoice::Kind::Places);
  CHECK(look->choices[1].stops.front().name == "Mesa");

  std::ofstream table(folder / "stops.csv");
  table << "name,latitude,longitude\n";
  for (int i = 0; i < 30; ++i) table << fmt::format("stop {},44,{}\n", i, -100 - 0.1 * i);
  table.close();
  const auto stops = look_into_routes(folder.file("stops.csv"));
  REQUIRE(stops);
  CHECK(stops->choices.front().points == 30);
  CHECK(stops->choices.front().stops.size() == kMostStops);
  CHECK(stops->remarks.size() == 1);

  std::ofstream(folder / "none.gpx") << "<gpx version=\"1.1\"></gpx>";
  for (const char* name : {"none.gpx", "absent.gpx", "absent.csv"}) {
    CHECK_FALSE(look_into_routes(folder.file(name)));
  }
}
