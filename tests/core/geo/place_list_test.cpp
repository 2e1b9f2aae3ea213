#include "core/geo/place_list.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

TEST_CASE("a table of places is read in any notation, and bad rows are told") {
  const auto list = read_place_list(
      "Name;Lat;Lon\nDry Lake;42.5;-118.5\nAlkali Wells;43 06 00 N;118 12 00 W\nNowhere;north;1\n");
  REQUIRE(list);
  REQUIRE(list->places.size() == 2);
  CHECK(list->places[0].name == "Dry Lake");
  CHECK(list->places[0].position.latitude_deg() == Approx(42.5));
  CHECK(list->places[0].position.longitude_deg() == Approx(-118.5));
  CHECK(list->places[1].position.latitude_deg() == Approx(43.1));
  CHECK(list->places[1].position.longitude_deg() == Approx(-118.2));
  REQUIRE(list->remarks.size() == 1);
  CHECK(list->remarks[0].starts_with("line 4: "));
}

TEST_CASE("one column of positions is enough, and a name is not needed") {
  const auto list = read_place_list("position\n\"42.5, -118.5\"\n");
  REQUIRE(list);
  REQUIRE(list->places.size() == 1);
  CHECK(list->places[0].name.empty());
  CHECK(list->places[0].position.longitude_deg() == Approx(-118.5));
}

TEST_CASE("a table that lists no places is refused with what to do") {
  for (const char* text : {"", "name,latitude\nx,1\n", "latitude,longitude\n",
                           "latitude,longitude\n91,0\nnorth,east\n"}) {
    INFO(text);
    const auto list = read_place_list(text);
    REQUIRE_FALSE(list);
    CHECK_FALSE(list.error().remedy.empty());
  }
}
