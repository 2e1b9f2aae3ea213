#include "core/catalog/catalog.hpp"

#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>
#include <sqlite3.h>

using namespace mastwise;

namespace {

Station station(const std::string& call_sign, double latitude_deg, double longitude_deg,
                int rf_channel = 9) {
  return Station{.id = call_sign,
                 .call_sign = call_sign,
                 .rf_channel = {rf_channel},
                 .position = *Position::at_deg(latitude_deg, longitude_deg)};
}

StationTable table_of(const std::string& source, const std::vector<Station>& stations) {
  StationTable table{.source = {source, "2026-01-02"}, .stations = stations};
  table.rows_read = stations.size();
  for (std::size_t i = 0; i < stations.size(); ++i) {
    table.stations[i].provenance = {table.source, i + 2};
  }
  return table;
}

Catalog in_memory() {
  auto catalog = Catalog::open(":memory:");
  REQUIRE(catalog);
  return std::move(catalog).value();
}

// A catalog file that the test deletes at its end. Tests run in parallel, so each name is unique.
struct CatalogFile {
  explicit CatalogFile(const std::string& name)
      : path((std::filesystem::temp_directory_path() / ("mastwise_catalog_" + name)).string()) {
    remove();
  }
  ~CatalogFile() { remove(); }
  void remove() const {
    for (const char* end : {"", "-wal", "-shm"}) std::filesystem::remove(path + end);
  }
  void execute(const std::string& sql) const {
    sqlite3* database = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &database) == SQLITE_OK);
    CHECK(sqlite3_exec(database, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(database);
  }
  std::string path;
};

}  // namespace

TEST_CASE("the catalog returns a station unchanged, also after closing") {
  const CatalogFile file("kept");
  Station full{.id = "17/2",
               .call_sign = "QAAB",
               .facility_id = "17",
               .name = "Basin, first",
               .network = "Basin Public",
               .programs = {{"6.1", "Basin Public", "Basin Public", "en"}, {"6.2", "Kids", "", ""}},
               .raster = Raster::australia,
               .rf_channel = {9, 'A'},
               .standard = BroadcastStandard::dvb_t2,
               .position = *Position::at_deg(-33.123456789, 151.987654321),
               .site_amsl_m = 0.0,
               .antenna_amsl_m = 1850.5,
               .haat_m = -20.25,
               .erp_kw = 65.4,
               .polarization = Polarization::vertical,
               .directional = false,
               .pattern = *parse_transmit_pattern("0 0.85; 90 0.1; 180 1; 270 0.3"),
               .translator = true,
               .city = "Alder's \"Reach\"",
               .state = "QQ",
               .notes = {{"owner", "somebody"}, {"b", "Qu\xC3\xA9"}}};
  const StationTable table = table_of("a source", {full, station("QAAC", 1.0, 2.0)});
  {
    auto catalog = Catalog::open(file.path);
    REQUIRE(catalog);
    const auto report = catalog->replace_source(table);
    REQUIRE(report);
    CHECK(report->stations_added == 2);
  }
  auto catalog = Catalog::open(file.path);
  REQUIRE(catalog);
  CHECK(*catalog->find("a source", "17/2") == table.stations[0]);
  CHECK(*catalog->find("a source", "QAAC") == table.stations[1]);
  CHECK_FALSE(catalog->find("another", "QAAC")->has_value());
  CHECK(*catalog->count() == 2);
  CHECK(*catalog->sources() == std::vector<SourceSummary>{{{"a source", "2026-01-02"}, 2}});
  CHECK(catalog->with_call_sign(" qaab ")->size() == 1);
  CHECK(catalog->with_call_sign("QAA")->empty());
}

TEST_CASE("a second import replaces its source, and its source only") {
  Catalog catalog = in_memory();
  REQUIRE(catalog.replace_source(
      table_of("one", {station("QAAA", 1, 1), station("QAAB", 2, 2), station("QAAC", 3, 3)})));
  REQUIRE(catalog.replace_source(table_of("two", {station("QAAA", 4, 4)})));

  const auto report = catalog.replace_source(
      table_of("one", {station("QAAD", 5, 5), station("QAAB", 2, 2), station("QAAC", 3, 3.5)}));
  REQUIRE(report);
  CHECK(report->stations_added == 1);
  CHECK(report->stations_changed == 1);
  CHECK(report->stations_unchanged == 1);
  CHECK(report->stations_gone == 1);
  CHECK(*catalog.count() == 4);
  CHECK(catalog.with_call_sign("QAAA")->size() == 1);
  CHECK(catalog.search("QAAA", 10)->size() == 1);
  CHECK(catalog.nearest(*Position::at_deg(1, 1), 10e3, 10)->empty());

  CHECK(*catalog.remove_source("two") == 1);
  CHECK(*catalog.remove_source("two") == 0);
  CHECK(*catalog.count() == 3);
  CHECK(catalog.search("QAAA", 10)->empty());
}

TEST_CASE("an import that fails or is stopped changes nothing") {
  Catalog catalog = in_memory();
  REQUIRE(catalog.replace_source(table_of("one", {station("QAAA", 1, 1)})));

  const auto failed =
      catalog.replace_source({"one", ""}, [](StationSink& sink) -> Result<TableSummary> {
        if (!sink.take(station("QAAB", 2, 2))) return TableSummary{};
        return Error{.what = "the stick was pulled out"};
      });
  REQUIRE_FALSE(failed);
  CHECK(failed.error().what == "the stick was pulled out");
  const auto stopped = catalog.replace_source(table_of("one", {station("QAAB", 2, 2)}),
                                              [](std::size_t, std::size_t) { return false; });
  REQUIRE_FALSE(stopped);
  CHECK(stopped.error().what == "the import was stopped");

  CHECK(*catalog.count() == 1);
  CHECK(catalog.with_call_sign("QAAA")->size() == 1);
  CHECK(catalog.search("QAAB", 10)->empty());
  CHECK(catalog.nearest(*Position::at_deg(1, 1), 10.0, 10)->size() == 1);
  CHECK(catalog.replace_source(table_of("one", {station("QAAB", 2, 2)})));

  CHECK_FALSE(catalog.replace_source(table_of("", {})));
  StationTable dated = table_of("one", {});
  dated.source.date = "yesterday";
  CHECK_FALSE(catalog.replace_source(dated));
}

TEST_CASE("a file that is not a catalog, or of another version, is refused with a remedy") {
  const CatalogFile file("foreign");
  file.execute("CREATE TABLE something(x)");
  CHECK(Catalog::open(file.path).error().what == "this file is not a catalog of stations");
  file.remove();

  REQUIRE(Catalog::open(file.path));
  file.execute("PRAGMA user_version = 99");
  const auto newer = Catalog::open(file.path);
  REQUIRE_FALSE(newer);
  CHECK(newer.error().what == "this catalog has version 99, Mastwise reads version 3");
  CHECK(newer.error().remedy == "move the file away and import the station tables again");

  const auto folder = Catalog::open("/nowhere/at/all/catalog");
  REQUIRE_FALSE(folder);
  CHECK(folder.error().remedy == "check that the folder exists and that you may write to it");
}

// As made before stations could name a multiplex.
TEST_CASE("an older catalog is rescued and read, and takes a multiplex") {
  const CatalogFile file("older");
  StationTable table = table_of("one", {station("QAAA", 1, 1)});
  REQUIRE(Catalog::open(file.path)->replace_source(table));
  file.execute("ALTER TABLE stations DROP COLUMN multiplex");
  const SalvagedCatalog rescued = Catalog::salvage(file.path);
  REQUIRE(rescued.stations.size() == 1);
  CHECK(rescued.stations[0].stations.size() == 1);

  auto catalog = Catalog::open(file.path);
  REQUIRE(catalog);
  table.stations[0].multiplex = "North 1";
  REQUIRE(catalog->replace_source(table));
  const auto read = catalog->nearest(*Position::at_deg(1.0, 1.0), 1e4, 5);
  REQUIRE(read);
  CHECK(read->at(0).station.multiplex == "North 1");
}

TEST_CASE("a damaged catalog reports its damage and is not read") {
  const CatalogFile file("damaged");
  {
    auto catalog = Catalog::open(file.path);
    REQUIRE(catalog);
    REQUIRE(catalog->replace_source(table_of("one", {station("QAAA", 1, 1)})));
  }
  file.execute("UPDATE stations SET raster = 'Mars'");
  {
    auto catalog = Catalog::open(file.path);
    REQUIRE(catalog);
    const auto found = catalog->with_call_sign("QAAA");
    REQUIRE_FALSE(found);
    CHECK(found.error().message().find("damaged") != std::string::npos);
  }
  std::filesystem::resize_file(file.path, 100);
  CHECK_FALSE(Catalog::open(file.path));
}

// 2026-11-30: a process killed just after SQLite had made its file left one without a byte, which
// the next start called damaged.
TEST_CASE("2026-11-30: a catalog killed before its first page is a new one, not a damaged one") {
  const CatalogFile file("unfinished");
  { const std::ofstream made(file.path); }
  REQUIRE(std::filesystem::file_size(file.path) == 0);
  CHECK(Catalog::check(file.path));
  auto catalog = Catalog::open(file.path);
  REQUIRE(catalog);
  CHECK(*catalog->count() == 0);
}

TEST_CASE("the catalog imports the regulator's whole table") {
  const auto path = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  if (!path) return;
  const auto mapping = parse_table_mapping(
      test::read_file(test::source_folder() + "/assets/mappings/us_post_auction.json"));
  REQUIRE(mapping);
  const auto table = read_station_table(test::read_file(*path), *mapping);
  REQUIRE(table);
  Catalog catalog = in_memory();
  const auto report = catalog.replace_source(*table);
  REQUIRE(report);
  CHECK(report->rows_read == 2074);
  CHECK(report->stations_added == 2074);
  const auto again = catalog.replace_source(*table);
  REQUIRE(again);
  CHECK(again->stations_unchanged == 2074);
  CHECK(again->stations_gone == 0);

  // Bearings and distances: the reference data's README, from the receiver of humminbird-M37.log.
  const auto near = catalog.nearest(*Position::at_deg(44.435217, -71.675993), 30e3, 10);
  REQUIRE(near);
  REQUIRE(near->size() == 2);
  CHECK((*near)[0].station.call_sign == "WLED-TV");
  CHECK((*near)[0].distance_m == Approx(10368.18).margin(0.05));
  CHECK((*near)[0].bearing.degrees() == Approx(207.950).margin(0.001));
  CHECK((*near)[1].station.call_sign == "WVTB");
  CHECK((*near)[1].distance_m == Approx(22968.18).margin(0.05));
  CHECK((*near)[1].bearing.degrees() == Approx(311.183).margin(0.001));
}

TEST_CASE("a second row of one station is rejected, and the rest is imported") {
  Catalog catalog = in_memory();
  const auto report = catalog.replace_source(
      table_of("one", {station("QAAB", 2, 2), station("QAAC", 3, 3), station("QAAC", 3, 3)}));
  REQUIRE(report);
  CHECK(report->stations_added == 2);
  CHECK(report->rows_rejected == 1);
  CHECK(report->rejected.at(0).reason.find("is already on line") != std::string::npos);
  // A table of nothing but faulty rows replaces nothing.
  StationTable faulty = table_of("one", {});
  faulty.rejected.push_back({2, "the call sign is empty"});
  const auto refused = catalog.replace_source(faulty);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().what == "all rows rejected; line 2: the call sign is empty");
  CHECK(*catalog.count() == 2);
}

TEST_CASE("two sources' records of one transmitter are one station") {
  Catalog catalog = in_memory();
  StationTable old = table_of("old", {station("QAAB", 44.0, -100.0)});
  old.source.date = "2017-04-13";
  old.stations[0].network = "Northlight";
  old.stations[0].provenance.source = old.source;
  StationTable fresh = table_of("fresh", {station("QNEW", 44.004, -100.0)});  // 445 m
  fresh.source.date = "2026-08-10";
  fresh.stations[0].provenance.source = fresh.source;
  REQUIRE(catalog.replace_source(old));
  REQUIRE(catalog.replace_source(fresh));
  const auto near = catalog.nearest(*Position::at_deg(44.0, -100.0), 10e3, 10);
  REQUIRE(near);
  REQUIRE(near->size() == 1);
  const NearStation& one = near->front();
  CHECK(one.station.call_sign == "QNEW");
  CHECK(one.station.network == "Northlight");
  CHECK(one.station.notes.back() == Note{"Also in source", "old, 2017-04-13"});
  CHECK(one.distance_m == Approx(444.5).margin(1.0));  // 0.004 degrees of 111.13 km
  CHECK(*catalog.count() == 2);

  StationTable apart = table_of("apart", {station("QAAD", 44.010, -100.0)});
  REQUIRE(catalog.replace_source(apart));
  CHECK(catalog.nearest(*Position::at_deg(44.0, -100.0), 10e3, 10)->size() == 2);
}
