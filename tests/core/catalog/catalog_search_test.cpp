#include "core/catalog/catalog_search.hpp"

#include "core/catalog/catalog.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include <GeographicLib/Geodesic.hpp>
#include <catch2/catch.hpp>
#include <fmt/format.h>

using namespace mastwise;

namespace {

Position at(double latitude_deg, double longitude_deg) {
  return *Position::at_deg(latitude_deg, longitude_deg);
}

double distance_m(const Position& a, const Position& b) {
  double meters = 0.0;
  GeographicLib::Geodesic::WGS84().Inverse(a.latitude_deg(), a.longitude_deg(), b.latitude_deg(),
                                           b.longitude_deg(), meters);
  return meters;
}

StationTable scattered(std::size_t count) {
  std::mt19937 random(20260501);
  std::uniform_real_distribution<double> unit(-1.0, 1.0);
  StationTable table{.source = {"scattered", ""}};
  for (std::size_t i = 0; i < count; ++i) {
    table.stations.push_back(
        {.id = std::to_string(i),
         .call_sign = fmt::format("Q{}", i),
         .rf_channel = {2 + static_cast<int>(i % 35)},
         .position = at(std::asin(unit(random)) * 57.2957795130823, 180.0 * unit(random))});
  }
  return table;
}

Catalog catalog_of(const StationTable& table) {
  auto catalog = Catalog::open(":memory:");
  REQUIRE(catalog);
  REQUIRE(catalog->replace_source(table));
  return std::move(catalog).value();
}

// The nearest by measuring every station, which nearest() must find without that.
std::vector<double> all_within(const StationTable& table, const Position& from, double meters) {
  std::vector<double> distances;
  for (const Station& station : table.stations) {
    const double distance = distance_m(from, station.position);
    if (distance <= meters) distances.push_back(distance);
  }
  std::sort(distances.begin(), distances.end());
  return distances;
}

StationTable basin() {
  StationTable table{.source = {"basin", ""}};
  table.stations = {
      {.id = "1",
       .call_sign = "QAAB",
       .name = "Sage Sunrise",
       .network = "Basin Public",
       .programs = {{"6.1", "Basin Public", "", ""}, {"6.2", "Basin Kids", "Sprout", ""}},
       .rf_channel = {23},
       .position = at(42.0, -118.0),
       .city = "Alder",
       .state = "OR"},
      {.id = "2",
       .call_sign = "QAAB-TV",
       .network = "Rimrock",
       .programs = {{"23.1", "Rimrock", "", ""}},
       .rf_channel = {6},
       .position = at(43.0, -118.0),
       .city = "San Ju\xC3\xA1n"},
      {.id = "3",
       .call_sign = "QXAB",
       .network = "Rimrock",
       .programs = {{"16.1", "Rimrock", "", ""}},
       .rf_channel = {30},
       .position = at(44.0, -118.0)}};
  return table;
}

std::string found(Catalog& catalog, const std::string& text) {
  INFO(text);
  const auto near = catalog.search(text, at(44.0, -118.0), 10);
  REQUIRE(near);
  const auto anywhere = catalog.search(text, 10);
  REQUIRE(anywhere);
  CHECK(anywhere->size() == near->size());
  std::string ids;
  for (const NearStation& one : *near) ids += one.station.id;
  return ids;
}

}  // namespace

TEST_CASE("search finds stations by words, channels and place, the nearest first") {
  Catalog catalog = catalog_of(basin());
  CHECK(found(catalog, "q") == "321");
  CHECK(found(catalog, "qaab") == "12");  // the call sign itself, though farther away
  CHECK(found(catalog, "rim") == "32");
  CHECK(found(catalog, "sprout") == "1");
  CHECK(found(catalog, "basin ki") == "1");
  CHECK(found(catalog, "ald or") == "1");
  CHECK(found(catalog, "san juan") == "2");
  CHECK(found(catalog, "6") == "21");
  CHECK(found(catalog, "23") == "21");
  CHECK(found(catalog, "6.1") == "1");
  CHECK(found(catalog, "6-2") == "1");
  CHECK(found(catalog, "6.") == "21");
  CHECK(found(catalog, "RF 23") == "1");
  CHECK(found(catalog, "rf23") == "1");
  CHECK(found(catalog, "ch 23") == "21");
  CHECK(found(catalog, "channel 23.1") == "2");
  CHECK(found(catalog, "rimrock rf 30") == "3");
  CHECK(found(catalog, "rimrock sprout").empty());
  CHECK(found(catalog, "").empty());
}

TEST_CASE("search never runs typed text as a command") {
  Catalog catalog = catalog_of(basin());
  for (const std::string text : {"\"",
                                 "\"\"",
                                 "*",
                                 "qaab*",
                                 "\" OR \"",
                                 "NEAR(",
                                 "call_sign:",
                                 "-q",
                                 "^q",
                                 "(",
                                 "a AND",
                                 "NOT",
                                 "'; DROP TABLE stations; --",
                                 "{",
                                 "}:",
                                 "\\",
                                 "%",
                                 "rf",
                                 "rf \"",
                                 "6\"",
                                 ".",
                                 "6..1",
                                 "\xE2\x80\x94",
                                 "\xFF\xFE",
                                 "+",
                                 "q + q",
                                 "\xC3",
                                 "9\"a",
                                 "rf9\"a"}) {
    INFO(text);
    CHECK(catalog.search(text, 10));
    CHECK(catalog.search(text, at(0, 0), 10));
  }
  CHECK(catalog.search(std::string("q\0\"x", 4), 10));
  std::string book;
  for (int i = 0; i < 5000; ++i) book += "basin ";
  CHECK(catalog.search(book, 10)->size() == 1);
  CHECK(*catalog.count() == 3);
  CHECK(catalog.search("qaab \" OR \"", 10)->size() <= 2);
}

TEST_CASE("nearest finds the same stations as measuring every one") {
  const StationTable table = scattered(test::kSanitized ? 600 : 3000);
  Catalog catalog = catalog_of(table);
  const Position centers[] = {at(42.5, -118.5), at(0.0, 0.0),   at(10.0, 179.9), at(-20.0, -179.9),
                              at(89.9, 30.0),   at(-90.0, 0.0), at(90.0, 0.0),   at(60.0, 180.0)};
  for (const Position& center : centers) {
    for (const double meters : {200e3, 1500e3, 9000e3, 20.1e6}) {
      INFO(center.latitude_deg() << " " << center.longitude_deg() << " " << meters);
      const auto expected = all_within(table, center, meters);
      const auto got = catalog.nearest(center, meters, table.stations.size());
      REQUIRE(got);
      REQUIRE(got->size() == expected.size());
      for (std::size_t i = 0; i < expected.size(); ++i) {
        CHECK((*got)[i].distance_m == expected[i]);
      }
    }
    const auto expected = all_within(table, center, 20.1e6);
    const auto seven = catalog.nearest(center, 20.1e6, 7);
    REQUIRE(seven);
    REQUIRE(seven->size() == 7);
    CHECK(seven->back().distance_m == expected[6]);
    const auto by_text = catalog.search("q", center, 7);
    REQUIRE(by_text);
    REQUIRE(by_text->size() == 7);
    for (std::size_t i = 0; i < 7; ++i) CHECK((*by_text)[i].distance_m == expected[i]);
  }
  CHECK(catalog.nearest(at(0, 0), -1.0, 10)->empty());
  CHECK(catalog.nearest(at(0, 0), std::nan(""), 10)->empty());
  CHECK(catalog.nearest(at(0, 0), 1e9, 0)->empty());
}
