#include "core/reception/area_scan.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/path_fields.hpp"
#include "tests/core/reception/invented_country.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <cmath>
#include <iostream>

#include <catch2/catch.hpp>

namespace mastwise::reception {
namespace {

AreaScan made(const AreaGrid& grid, const Receiver& receiver, const Station& station,
              const terrain::TileSource& tiles) {
  auto scan = AreaScan::of(grid, receiver, station, tiles);
  REQUIRE(scan);
  return *std::move(scan);
}

AreaScan completed(const AreaGrid& grid, const Receiver& receiver, const Station& station,
                   const terrain::TileSource& tiles) {
  AreaScan scan = made(grid, receiver, station, tiles);
  complete(scan);
  return scan;
}

Outlook single_path(const AreaScan& scan, Receiver receiver, Position position,
                    const terrain::TileSource& tiles) {
  receiver.position = position;
  Survey survey(receiver, {scan.station()}, tiles);
  Scratch scratch;
  survey.measure(0, 1, scratch);
  return *survey.outlook(0);
}

constexpr double kAside_m = 10.0;

// Differences of margins from single paths at every `stride`th cell.
struct Departure {
  std::vector<double> sorted_db;
  std::vector<double> aside_db;  // of a single path to a place 10 m aside, sorted
  double rms_db = 0.0;
  int known_to_one = 0;

  double within_db(double part) const { return quantile(sorted_db, part); }
  double aside_within_db(double part) const { return quantile(aside_db, part); }

 private:
  static double quantile(const std::vector<double>& sorted, double part) {
    return sorted[static_cast<std::size_t>(part * static_cast<double>(sorted.size() - 1))];
  }
};

Departure departure(const AreaScan& scan, const Receiver& receiver,
                    const terrain::TileSource& tiles, std::size_t stride) {
  Departure result;
  double squares = 0.0;
  for (std::size_t cell = 0; cell < scan.cells().size(); cell += stride) {
    const Position position = scan.grid().position(cell);
    const Outlook single = single_path(scan, receiver, position, tiles);
    const AreaCell& here = scan.cells()[cell];
    REQUIRE(here.state != CellState::pending);
    const bool on_profile = single.mode == PathMode::point_to_point;
    result.known_to_one += on_profile != here.known() ? 1 : 0;
    if (!on_profile || !here.known()) continue;
    const double error_db = here.margin_db - *single.margin_db;
    result.sorted_db.push_back(std::fabs(error_db));
    squares += error_db * error_db;
    const Bearing<True> across = single.bearing + Turn::clockwise_deg(90.0);
    const Outlook aside =
        single_path(scan, receiver, destination(position, across, kAside_m), tiles);
    if (aside.margin_db) {
      result.aside_db.push_back(std::fabs(*aside.margin_db - *single.margin_db));
    }
  }
  REQUIRE(!result.sorted_db.empty());
  std::sort(result.sorted_db.begin(), result.sorted_db.end());
  std::sort(result.aside_db.begin(), result.aside_db.end());
  result.rms_db = std::sqrt(squares / static_cast<double>(result.sorted_db.size()));
  return result;
}

std::size_t count(const AreaScan& scan, CellState state) {
  return static_cast<std::size_t>(
      std::count_if(scan.cells().begin(), scan.cells().end(),
                    [&](const AreaCell& cell) { return cell.state == state; }));
}

Position middle_of_country() {
  return *Position::at_deg(44.5, -100.5);
}

Receiver in_a_wood() {
  Receiver receiver = test::roof_antenna();
  receiver.surroundings = Surroundings::forest;
  receiver.heading_error_deg = 12.0;
  return receiver;
}

}  // namespace

TEST_CASE("an area's cells are at their geodesic positions", "[area]") {
  const auto grid = AreaGrid::around(*Position::at_deg(60.0, 179.9), 50e3, 400);
  REQUIRE(grid);
  const Position transmitter = *Position::at_deg(60.5, -178.5);
  const CellPlaces places(*grid, transmitter);
  for (std::size_t cell = 0; cell < grid->size(); cell += 1237) {
    const CellPlace place = places.at(cell);
    const Position exact = grid->position(cell);
    CHECK(path_between(grid->stop(), exact).distance_m ==
          Approx(grid->distance_m(cell)).margin(1e-6));
    const auto netted = Position::at_deg(place.latitude_deg, place.longitude_deg);
    REQUIRE(netted);
    CHECK(path_between(exact, *netted).distance_m < 0.5);
    const PathBetween way = path_between(transmitter, exact);
    CHECK(std::hypot(place.east_m, place.north_m) == Approx(way.distance_m).margin(0.5));
    const auto bearing = Bearing<True>::degrees(std::atan2(place.east_m, place.north_m) * 57.29578);
    CHECK(std::fabs((bearing - way.bearing).clockwise_deg()) < 0.001);
  }
}

TEST_CASE("an area refuses impossible sizes", "[area]") {
  const Position stop = middle_of_country();
  CHECK_FALSE(AreaGrid::around(stop, 99.0, 10));
  CHECK_FALSE(AreaGrid::around(stop, 100'001.0, 10));
  CHECK_FALSE(AreaGrid::around(stop, std::nan(""), 10));
  CHECK_FALSE(AreaGrid::around(stop, 1e3, 1));
  CHECK_FALSE(AreaGrid::around(stop, 1e3, 1001));
  CHECK_FALSE(AreaGrid::around(*Position::at_deg(85.1, 0.0), 1e3, 10));
  CHECK(AreaGrid::around(stop, 100.0, 2));
}

TEST_CASE("the nearest point of a ray is at most an eighth of a spacing off", "[area]") {
  for (double distance_m = 300.0; distance_m < 100e3; distance_m += 7.3) {
    const RayPoint at = RayPoint::nearest(distance_m);
    REQUIRE(at.set < RayPoint::kSets);
    const double offset = (static_cast<double>(at.set) + 0.5) / 4.0 - 0.5;
    const double found_m = (static_cast<double>(at.point) + offset) * RayPoint::kSpacing_m;
    REQUIRE(std::fabs(found_m - distance_m) <= 90.0 / 8.0 + 1e-3);
  }
}

// The bounds come from area_scan.hpp; a scan differs from single paths by less than these differ
// over 10 m.
TEST_CASE("over real mountains a scan matches single paths", "[area]") {
  const auto tile_path = test::reference("terrain/N44W072.hgt");
  if (!tile_path) return;
  terrain::TileSet tiles;
  tiles.add(test::read_tile(*tile_path, {44, -72}));
  // Reference data, README: the regulator's table and the place of the receiver's log.
  const Position stop = *Position::at_deg(44.435217, -71.675993);
  const Station far = test::transmitter(*Position::at_deg(44.571111, -71.893611), 28, 1022.4, 84.1);
  const Station inside =
      test::transmitter(*Position::at_deg(44.352778, -71.736944), 23, 744.2, 65.4);
  for (const Station& station : {far, inside}) {
    for (const double radius_m : {4e3, 14e3}) {
      const auto grid = AreaGrid::around(stop, radius_m, 150);
      const AreaScan scan = completed(*grid, in_a_wood(), station, tiles);
      const Departure error = departure(scan, in_a_wood(), tiles, 7);
      CAPTURE(radius_m, station.rf_channel.number, error.rms_db, error.sorted_db.back());
      CHECK(error.known_to_one == 0);
      CHECK(error.rms_db < 0.8);
      CHECK(error.within_db(0.5) < 0.1);
      CHECK(error.within_db(0.95) < 0.6);
      CHECK(error.within_db(0.99) < 1.5);
      CHECK(error.within_db(0.95) <= error.aside_within_db(0.95));
      CHECK(error.within_db(0.99) <= error.aside_within_db(0.99));
      if (radius_m < 5e3) CHECK(count(scan, CellState::between) > grid->size() / 20);
      if (test::kSanitized) return;
    }
  }
}

TEST_CASE("over invented hills a scan matches single paths", "[area]") {
  const terrain::TileSet tiles = test::country(1, test::hills());
  const auto grid = AreaGrid::around(middle_of_country(), 6e3, 120);
  const Station station = test::transmitter(*Position::at_deg(44.8, -100.6), 30, 420.0, 50.0);
  const AreaScan scan = completed(*grid, test::roof_antenna(), station, tiles);
  const Departure error = departure(scan, test::roof_antenna(), tiles, 5);
  CAPTURE(error.rms_db, error.sorted_db.back());
  CHECK(error.known_to_one == 0);
  CHECK(error.rms_db < 0.8);
  CHECK(error.within_db(0.95) < 0.6);
  CHECK(error.within_db(0.99) < 1.5);
}

TEST_CASE("cells of unknown ground are unknown, and those behind it are guessed", "[area]") {
  terrain::TileSet tiles;
  // A hole in the ground north of the stop, 0.01 degrees high.
  auto bytes =
      test::made_tile_bytes({44, -101}, terrain::Tile::kSide3ArcSeconds, test::flat(300.0));
  const auto hole = [&](int row, int column) {
    const auto at = 2 * static_cast<std::size_t>(row * 1201 + column);
    bytes[at] = std::byte{0x80};
    bytes[at + 1] = std::byte{0x00};
  };
  for (int row = 570; row < 582; ++row) {
    for (int column = 0; column < 1201; ++column) hole(row, column);
  }
  tiles.add(test::tile_of_bytes({44, -101}, std::move(bytes)));
  const auto grid = AreaGrid::around(middle_of_country(), 5e3, 40);
  const Station station = test::transmitter(*Position::at_deg(44.2, -100.5), 30, 500.0, 50.0);
  const AreaScan scan = completed(*grid, test::roof_antenna(), station, tiles);
  int unknown = 0, behind = 0;
  for (std::size_t cell = 0; cell < grid->size(); ++cell) {
    const double row = (45.0 - grid->position(cell).latitude_deg()) * 1200.0;
    CAPTURE(row);
    if (row > 583.0) CHECK(scan.cells()[cell].known());
    const bool in_hole = row > 571.0 && row < 580.0;
    if (in_hole) CHECK(scan.cells()[cell].state == CellState::unknown);
    if (in_hole) CHECK_FALSE(scan.chance_percent(scan.cells()[cell]));
    unknown += scan.cells()[cell].known() ? 0 : 1;
    if (row > 568.0) continue;
    // Behind it as a survey at the cell, whose path has the same hole; some of them.
    REQUIRE(scan.cells()[cell].known());
    ++behind;
    if (behind % 7 != 0) continue;
    Receiver there = test::roof_antenna();
    there.position = grid->position(cell);
    Survey single(there, {station}, tiles);
    Scratch scratch;
    single.measure(0, 1, scratch);
    REQUIRE(single.outlook(0)->mode == PathMode::partial);
    if (scan.cells()[cell].state != CellState::computed) continue;
    CHECK(scan.cells()[cell].margin_db == Approx(*single.outlook(0)->margin_db).margin(0.3));
    CHECK(*scan.chance_percent(scan.cells()[cell]) ==
          Approx(*single.outlook(0)->chance_percent).margin(1.0));
  }
  CHECK(unknown > 100);
  CHECK(behind > 100);

  // A station whose own ground is unknown stands on its site's height.
  Station beyond = test::transmitter(*Position::at_deg(43.8, -100.5), 30, 500.0, 50.0);
  beyond.site_amsl_m = 300.0;
  const AreaScan from_beyond = completed(*grid, test::roof_antenna(), beyond, tiles);
  const std::size_t south = (grid->side() - 1) * grid->side();
  CHECK(from_beyond.cells()[south].known());

  // Beyond the only tile the ground is unknown too, never sea level.
  const auto edge = AreaGrid::around(*Position::at_deg(44.3, -100.0), 5e3, 20);
  const AreaScan over = completed(*edge, test::roof_antenna(), station, tiles);
  for (std::size_t cell = 0; cell < edge->size(); ++cell) {
    CHECK(over.cells()[cell].known() == (edge->east_m(cell) < 0.0));
  }
}

TEST_CASE("a station may be inside the area", "[area]") {
  const terrain::TileSet tiles = test::country(1, test::hills());
  const auto grid = AreaGrid::around(middle_of_country(), 5e3, 60);
  const Station station = test::transmitter(
      destination(middle_of_country(), Bearing<True>::degrees(40.0), 2e3), 30, 450.0, 1.0);
  const AreaScan scan = completed(*grid, test::roof_antenna(), station, tiles);
  for (std::size_t cell = 0; cell < grid->size(); ++cell) {
    const double away_m = path_between(station.position, grid->position(cell)).distance_m;
    CHECK(scan.cells()[cell].known() == (away_m >= 250.0));  // P.1812 section 1
  }
  const Departure error = departure(scan, test::roof_antenna(), tiles, 3);
  CHECK(error.known_to_one == 0);
  CHECK(error.rms_db < 1.0);
}

TEST_CASE("slices may run in any order and stop between any two", "[area]") {
  const terrain::TileSet tiles = test::country(1, test::hills());
  const auto grid = AreaGrid::around(middle_of_country(), 3e3, 100);
  const Station station = test::transmitter(*Position::at_deg(44.8, -100.6), 30, 420.0, 50.0);
  const AreaScan whole = completed(*grid, test::roof_antenna(), station, tiles);
  CHECK(count(whole, CellState::between) > 0);

  AreaScan backward = made(*grid, test::roof_antenna(), station, tiles);
  std::vector<AreaScratch> scratches(3);
  std::size_t passes = 0;
  for (; backward.next_pass(); ++passes) {
    REQUIRE(backward.slices() > 1);
    for (std::size_t slice = backward.slices(); slice-- > 0;) {
      backward.measure(slice, scratches[slice % scratches.size()]);
    }
  }
  CHECK(passes == 2);  // each second cell, 120 m apart, then the rest
  CHECK(backward.covered() == grid->size());
  CHECK(backward.cells() == whole.cells());

  AreaScan left = made(*grid, test::roof_antenna(), station, tiles);
  REQUIRE(left.next_pass());
  CHECK(left.covered() == grid->size() / 4);
  CHECK(count(left, CellState::pending) == grid->size());
  left.measure(0, scratches[0]);
  CHECK(count(left, CellState::pending) < grid->size());
  CHECK(count(left, CellState::pending) > grid->size() / 2);
  for (std::size_t cell = 0; cell < grid->size(); ++cell) {
    if (left.cells()[cell].state != CellState::pending) {
      CHECK(left.cells()[cell] == whole.cells()[cell]);
    }
  }
}

TEST_CASE("an impossible scan reports why", "[area]") {
  const terrain::TileSet tiles = test::country(1, test::flat(300.0));
  const auto grid = AreaGrid::around(middle_of_country(), 3e3, 10);
  const Station good = test::transmitter(*Position::at_deg(44.8, -100.6), 30, 420.0, 50.0);
  const auto reason = [&](const Station& station) {
    const auto scan = AreaScan::of(*grid, test::roof_antenna(), station, tiles);
    REQUIRE_FALSE(scan);
    return scan.error().message();
  };
  Station station = good;
  station.erp_kw.reset();
  CHECK_THAT(reason(station), Catch::Contains("power"));
  station = good;
  station.antenna_amsl_m.reset();
  CHECK_THAT(reason(station), Catch::Contains("height"));
  station = good;
  station.rf_channel = {99};
  CHECK_THAT(reason(station), Catch::Contains("channel"));
  station = good;
  station.position = *Position::at_deg(46.8, -100.6);
  CHECK_THAT(reason(station), Catch::Contains("terrain"));
}

TEST_CASE("the weakest of several wanted stations counts", "[area]") {
  const ChanceMap one{90.0, 20.0, std::nullopt, 50.0};
  const ChanceMap other{80.0, 70.0, 99.0, std::nullopt};
  CHECK(weakest({one, other}) == ChanceMap{80.0, 20.0, std::nullopt, std::nullopt});
  CHECK(weakest({one}) == one);
}

}  // namespace mastwise::reception
