#include "core/geo/os_grid.hpp"

#include "core/geo/geodesic.hpp"

#include <string>

#include <catch2/catch.hpp>

namespace mastwise {

// Ordnance Survey, "A guide to coordinate systems in Great Britain": TG 51409 13177 is E 651409 N
// 313177. The Survey's own head office is SU 387 148 [its beginner's guide to grid references, from
// memory], E 4387 N 1148 in units of 100 m.
TEST_CASE("grid references: the Survey's published examples") {
  const auto tower = parse_os_grid("TG 51409 13177");
  REQUIRE(tower);
  CHECK(tower->easting_m == 651'409.0);
  CHECK(tower->northing_m == 313'177.0);
  CHECK(tower->size_m == 1.0);
  for (const char* text : {"SU 387 148", "su387148", " SU387 148 "}) {
    const auto office = parse_os_grid(text);
    REQUIRE(office);
    CHECK(office->easting_m == 438'700.0);
    CHECK(office->northing_m == 114'800.0);
    CHECK(office->size_m == 100.0);
  }
}

// The squares of 100 km as the Survey's chart has them: the false origin is SV's southwest corner;
// HP, Shetland's, is the northernmost one with land.
TEST_CASE("grid references: the letters of the corners") {
  struct Corner {
    const char* letters;
    double easting_km, northing_km;
  };
  for (const Corner& corner :
       {Corner{"SV", 0, 0}, Corner{"SW", 100, 0}, Corner{"TQ", 500, 100}, Corner{"NN", 200, 700},
        Corner{"HP", 400, 1200}, Corner{"HY", 300, 1000}, Corner{"OV", 500, 500}}) {
    INFO(corner.letters);
    const auto square = parse_os_grid(corner.letters);
    REQUIRE(square);
    CHECK(square->easting_m == corner.easting_km * 1000.0);
    CHECK(square->northing_m == corner.northing_km * 1000.0);
    CHECK(square->size_m == 100'000.0);
  }
}

TEST_CASE("anything but a grid reference is refused with a remedy") {
  for (const char* text : {"", "S", "SI 10 10", "AA 10 10", "SU 387 14", "SU 3a7 148", "438700",
                           "SU 123456 123456", "TZ 1 1", "51.5 -0.1", "SU-38-14"}) {
    INFO(text);
    const auto square = parse_os_grid(text);
    REQUIRE_FALSE(square);
    CHECK_FALSE(square.error().remedy.empty());
  }
}

// Three of the test points that the Survey publishes with OSTN15, as ETRS89 and grid coordinates
// [from memory], in Scilly, Cornwall and Devon, and the tower above: 52 39 28.72 N 1 42 57.79 E
// [the guide]. ETRS89 and WGS84 are within a meter.
TEST_CASE("grid references: positions are within the stated accuracy without OSTN15") {
  struct Point {
    double easting_m, northing_m, latitude_deg, longitude_deg;
  };
  const auto grid = OsGrid::open();
  REQUIRE(grid);
  for (const Point& point : {Point{91'492.146, 11'318.804, 49.92226393730, -6.29977752014},
                             Point{170'370.718, 11'572.405, 49.96006137820, -5.20304609998},
                             Point{250'359.811, 62'016.569, 50.43885825610, -4.10864563561},
                             Point{651'409.792, 313'177.448, 52.0 + 39.0 / 60.0 + 28.723 / 3600.0,
                                   1.0 + 42.0 / 60.0 + 57.787 / 3600.0}}) {
    INFO(point.easting_m);
    const auto found = grid->position({point.easting_m, point.northing_m, 0.0});
    REQUIRE(found);
    const auto published = Position::at_deg(point.latitude_deg, point.longitude_deg);
    CHECK(path_between(*published, *found).distance_m < 5.0);
  }
}

TEST_CASE("grid references: a square counts by its middle") {
  const auto grid = OsGrid::open();
  REQUIRE(grid);
  const auto coarse = grid->position(*parse_os_grid("SU 387 148"));
  const auto fine = grid->position(*parse_os_grid("SU 38750 14850"));
  REQUIRE(coarse);
  REQUIRE(fine);
  CHECK(path_between(*coarse, *fine).distance_m < 1.0);
}

}  // namespace mastwise
