#include "core/catalog/catalog.hpp"
#include "core/import/import_csv.hpp"
#include "core/import/import_table.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const std::string kStations =
    "call_sign,facility_id,site,raster,rf_channel,latitude_deg,longitude_deg,programs\n"
    "QAAB,17,,ATSC,23,44,-100,6.1|Basin Public||en; 6.2|Kids\n"
    "QAAC,18,1,ATSC,9,44.1,-100,\n"
    "QAAC,18,2,ATSC,30,44.2,-100,\n";

Catalog filled() {
  auto catalog = Catalog::open(":memory:");
  REQUIRE(catalog);
  REQUIRE(catalog->replace_source(*read_station_csv(kStations, {"stations", ""})));
  return std::move(catalog).value();
}

ProgramReport add(Catalog& catalog, const std::string& csv, const std::string& name = "lineup") {
  const auto table = read_program_csv(csv, {name, "2026-03-04"});
  REQUIRE(table);
  const auto report = catalog.replace_programs(*table);
  REQUIRE(report);
  return *report;
}

const std::string kLineup =
    "call_sign,facility_id,rf_channel,virtual_channel,network,language\n"
    "qaab,,,6.1,Northlight,\n"
    "QAAB,,,6.3,Lodestone,es\n"
    ",18,30,11.1,Harrow,\n"
    "QZZZ,,,3.1,Harrow,\n";

}  // namespace

TEST_CASE("programs complete the stations they belong to") {
  Catalog catalog = filled();
  const auto report = add(catalog, kLineup);
  CHECK(report.rows_read == 4);
  CHECK(report.programs == 4);
  CHECK(report.stations == 2);
  CHECK(report.without_station == 1);
  CHECK(report.strangers == std::vector<std::string>{"QZZZ"});

  const auto basin = catalog.with_call_sign("QAAB");
  REQUIRE(basin);
  CHECK(basin->at(0).programs == std::vector<Program>{{"6.1", "Basin Public", "Northlight", "en"},
                                                      {"6.2", "Kids", "", ""},
                                                      {"6.3", "", "Lodestone", "es"}});
  const auto twins = catalog.with_call_sign("QAAC");
  REQUIRE(twins);
  for (const Station& twin : *twins) {
    CHECK(twin.programs.size() == (twin.rf_channel.number == 30 ? 1 : 0));
  }
}

TEST_CASE("search finds stations by added programs until these are removed") {
  Catalog catalog = filled();
  CHECK(catalog.search("Lodestone", 5)->empty());
  add(catalog, kLineup);
  REQUIRE(catalog.search("Lodestone", 5)->size() == 1);
  CHECK(catalog.search("11.1", 5)->at(0).rf_channel.number == 30);
  add(catalog, "call_sign,virtual_channel,network\nQAAB,6.1,Wayside\n");
  CHECK(catalog.search("Lodestone", 5)->empty());
  CHECK(catalog.search("Wayside", 5)->size() == 1);
  REQUIRE(catalog.program_sources()->size() == 1);
  CHECK(catalog.program_sources()->at(0).stations == 1);
  REQUIRE(catalog.remove_programs("lineup"));
  CHECK(catalog.search("Wayside", 5)->empty());
  CHECK(catalog.program_sources()->empty());
}

TEST_CASE("a re-import of the stations keeps the added programs and sees no change in them") {
  Catalog catalog = filled();
  add(catalog, kLineup);
  const auto again = catalog.replace_source(*read_station_csv(kStations, {"stations", ""}));
  REQUIRE(again);
  CHECK(again->stations_unchanged == 3);
  CHECK(again->stations_changed == 0);
  CHECK(catalog.with_call_sign("QAAB")->at(0).programs.size() == 3);
  CHECK(catalog.search("Lodestone", 5)->size() == 1);
  REQUIRE(catalog.remove_programs("lineup"));
  CHECK(catalog.with_call_sign("QAAB")->at(0).programs.size() == 2);
}

TEST_CASE("programs merged twice are as after the first time, also without a virtual channel") {
  const std::vector<Program> added{{.virtual_channel = "6.1", .network = "Northlight"},
                                   {.network = "Northlight"},
                                   {.network = "Lodestone"},
                                   {.network = "Northlight"}};
  const auto once = merged_programs({}, added);
  CHECK(once.size() == 3);
  CHECK(merged_programs(once, added) == once);
}

TEST_CASE("incomplete rows of programs are rejected with their line") {
  const auto table = read_program_csv(
      "Virtual_Channel;Call_Sign;rf_channel\n6.1;;\n;QAAB;\n6.2;QAAB;many\n6.3;QAAB;9\n",
      {"lineup", ""});
  REQUIRE(table);
  CHECK(table->rows_read == 4);
  REQUIRE(table->rejected.size() == 2);
  CHECK(table->rejected[0] == RejectedRow{2, "both call sign and facility number are empty"});
  CHECK(table->rejected[1].line == 4);
  CHECK(table->rows_without_program == 1);
  CHECK(table->programs.at(0).rf_channel == RfChannel{9});
  CHECK_FALSE(read_program_csv("call_sign,network\nQAAB,x\n", {"lineup", ""}));
  CHECK_FALSE(read_program_csv("virtual_channel\n6.1\n", {"lineup", ""}));
  CHECK_FALSE(read_program_csv("", {"lineup", ""}));
}

TEST_CASE("a number decides where call signs changed, and the change is told") {
  Catalog catalog = filled();
  const auto report = add(catalog,
                          "facility_id,callsign,tv_virtual_channel,network_affiliation\n"
                          "17,QNEW,6,Northlight\n"
                          "18,QAAC-TV,11,Harrow\n"
                          "99,QAAB,3,Lodestone\n"
                          "98,QZZZ,,\n");
  CHECK(report.stations == 3);
  CHECK(report.renamed == std::vector<RenamedStation>{{"17", "QAAB", "QNEW"}});
  CHECK(report.stations_renamed == 1);
  CHECK(report.rows_without_program == 1);
  CHECK(report.without_station == 1);
  CHECK(report.strangers == std::vector<std::string>{"QAAB"});
  const auto basin = catalog.with_call_sign("QAAB");
  REQUIRE(basin);
  REQUIRE(basin->size() == 1);
  // The call sign now belongs to facility 99, whose programs are not this station's.
  CHECK(basin->at(0).programs.back() == Program{"6", "", "Northlight", ""});
  CHECK(catalog.search("Lodestone", 5)->empty());
}

TEST_CASE("a call sign joins where the station or the program has no number") {
  auto catalog = Catalog::open(":memory:");
  REQUIRE(catalog);
  REQUIRE(catalog->replace_source(*read_station_csv(
      "call_sign,raster,rf_channel,latitude_deg,longitude_deg\nQAAB,ATSC,23,44,-100\n",
      {"stations", ""})));
  CHECK(add(*catalog, "facility_id,call_sign,virtual_channel\n17,QAAB,6.1\n").stations == 1);
  CHECK(add(*catalog, "callsign,virtual\nqaab,6.1\n").stations == 1);
}

TEST_CASE("columns of a table of programs are guessed, or chosen") {
  CHECK(guess_program_columns("callsign,virtual\n") ==
        ProgramColumns{.call_sign = "callsign", .virtual_channel = "virtual"});
  CHECK_FALSE(guess_program_columns("callsign,network\n"));
  CHECK_FALSE(guess_program_columns("virtual,network\n"));
  const auto table =
      read_program_csv("who,shown\nQAAB,6.1\n", {"lineup", ""},
                       ProgramColumns{.call_sign = "who", .virtual_channel = "shown"});
  REQUIRE(table);
  REQUIRE(table->programs.size() == 1);
  CHECK(table->programs[0].program.virtual_channel == "6.1");
}

TEST_CASE("the regulator's facilities of 2026 complete its table of 2017 by number") {
  const auto stations = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  const auto facilities = test::reference("stations/us_lms_facility_tv_2026-08-10.csv");
  if (!stations || !facilities) return;
  const auto mapping = parse_table_mapping(
      test::read_file(test::source_folder() + "/assets/mappings/us_post_auction.json"));
  REQUIRE(mapping);
  auto catalog = Catalog::open(":memory:");
  REQUIRE(catalog);
  REQUIRE(catalog->replace_source(*read_station_table(test::read_file(*stations), *mapping)));
  const auto table = read_program_csv(test::read_file(*facilities), {"facilities", "2026-08-10"});
  REQUIRE(table);
  CHECK(table->rows_read == 6809);
  CHECK(table->rejected.empty());
  const auto report = catalog->replace_programs(*table);
  REQUIRE(report);
  // Counted in the two tables by another program.
  CHECK(table->programs.size() == 2283);
  CHECK(report->stations == 2020);
  CHECK(report->stations_renamed == 107);
  const auto wled = catalog->with_call_sign("WLED-TV");
  REQUIRE(wled);
  REQUIRE(wled->size() == 1);
  CHECK(wled->front().programs == std::vector<Program>{{"49", "", "PBS", ""}});
}
