#include "core/import/write_csv.hpp"

#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "core/import/table_mapping.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// Without the line, which is the written table's own.
std::vector<Station> compared(std::vector<Station> stations) {
  for (Station& station : stations) station.provenance.line = 0;
  return stations;
}

void check_round(const std::vector<Station>& stations, const Source& source) {
  const auto again = read_station_csv(write_station_csv(stations), source);
  REQUIRE(again);
  CHECK(again->rejected.empty());
  const auto one = compared(stations), other = compared(again->stations);
  REQUIRE(one.size() == other.size());
  for (std::size_t i = 0; i < one.size(); ++i) {
    INFO(one[i].call_sign);
    REQUIRE(one[i] == other[i]);
  }
}

}  // namespace

TEST_CASE("the practice stations are the same after writing and reading") {
  const Source source{"PRACTICE stations", ""};
  const auto table = read_station_csv(
      test::read_file(test::source_folder() + "/assets/practice/stations.csv"), source);
  REQUIRE(table);
  REQUIRE(table->stations.size() > 10);
  check_round(table->stations, source);
}

TEST_CASE("a pattern, hard texts and unknown facts are the same after writing and reading") {
  Station station{.id = "1/a",
                  .call_sign = "#QABC",
                  .name = "A \"quoted\", long\nname; with all",
                  .raster = Raster::australia,
                  .rf_channel = {9, 'A'},
                  .position = *Position::at_deg(-33.123456789012, 151.000000000001)};
  station.pattern = parse_transmit_pattern("0 0.85; 90 1; 180 0.333; 270 0.5").value();
  station.programs = {{"6.1", "One", "Net", "en"}, {"6.2", "", "", ""}};
  station.notes = {{"Tower height", "12,5"}};
  station.provenance.source = {"s", "2026-01-02"};
  check_round({station}, station.provenance.source);
}

// Source: the table of the US regulator's incentive auction, 2017.
TEST_CASE("the published US table is the same after writing and reading") {
  const auto path = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  if (!path) return;
  const auto mapping = parse_table_mapping(
      test::read_file(test::source_folder() + "/assets/mappings/us_post_auction.json"));
  REQUIRE(mapping);
  const auto table = read_station_table(test::read_file(*path), *mapping);
  REQUIRE(table);
  REQUIRE(table->stations.size() > 2000);
  check_round(table->stations, mapping->source);
}
