#include "core/import/joined_import.hpp"

#include "core/catalog/catalog.hpp"
#include "platform/files.hpp"
#include "tests/support/licensing_tables.hpp"
#include "tests/support/made_tables.hpp"

#include <algorithm>
#include <map>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

// PRACTICE: invented tables in the shape in which a regulator publishes them.
using Files = std::map<std::string, std::string>;
Files practice() {
  return {{"facility.dat",
           "fac|call|service|active|city|remark|app|^|\n"
           "101|QAAB|TV|Y|Alder Reach|first\nof two lines|a1|^|\n"
           "102|QAAC|TV|Y|Birch Flat||a2|^|\n"
           "103|QAAD|FM|Y|Cedar Gap||a3|^|\n"
           "104|QAAE|TV|N|Dune|closed|a4|^|\n"
           "105|QAAF|TV|Y|Elm||a5|^|\n"
           "106|QAAG|TV|Y|Fir|no key||^|\n"},
          {"location.dat",
           "app|loc|seq|lad|lam|las|lah|lod|lom|los|loh|^|\n"
           "a9|l9|1|44|0|0|N|100|0|0|W|^|\n"
           "a1|l1|1|44|30|0|N|100|15|36|W|^|\n"
           "a2|l2|1|33|7|24.6|S|151|59|15|E|^|\n"
           "a2|l3|2|33|30|0|S|151|0|0|E|^|\n"},
          {"antenna.dat",
           "ant|loc|type|amsl|turn|^|\n"
           "n1|l1|DIR|650|90|^|\n"
           "n1b|l1|DIR|640|0|^|\n"
           "n2|l2|ND|300||^|\n"
           "n3|l3|DIR|310||^|\n"},
          {"power.dat", "ant|ch|erp|^|\nn1|23|100|^|\nn1b|23|10|^|\nn2|9|5|^|\n"},
          {"pattern.dat",
           "ant|az|field|^|\nn1|0|1|^|\nn1|90|0.5|^|\nn1|180|0.1|^|\nn1|270|0.5|^|\nn1|90|0.5|^|\n"
           "n3|0|1|^|\nn3|0|0.3|^|\nn3|90|1|^|\nn3|180|1|^|\nn3|270|1|^|\nn77|0|1|^|\n"}};
}

const std::string kMapping = R"({
  "source": {"name": "PRACTICE tables"}, "separator": "|", "record_end": "|^|",
  "raster": "ATSC", "datum": "WGS84",
  "tables": [
    {"name": "facility", "file": "facility.dat", "where": {"service": ["TV"], "active": ["Y"]}},
    {"name": "location", "file": "location.dat", "key": "app", "joins": "facility.app"},
    {"name": "antenna", "file": "antenna.dat", "key": "loc", "joins": "location.loc"},
    {"name": "power", "file": "power.dat", "key": "ant", "joins": "antenna.ant",
     "optional": true}],
  "pattern": {"file": "pattern.dat", "key": "ant", "joins": "antenna.ant", "azimuth": "az",
              "field": "field", "rotation": "antenna.turn"},
  "latitude": {"notation": "separate", "degrees": "location.lad", "minutes": "location.lam",
               "seconds": "location.las", "letter_column": "location.lah"},
  "longitude": {"notation": "separate", "degrees": "location.lod", "minutes": "location.lom",
                "seconds": "location.los", "letter_column": "location.loh"},
  "fields": {"call_sign": "facility.call", "facility_id": "facility.fac", "site": "location.seq",
             "city": "facility.city", "rf_channel": "power.ch", "erp_kw": "power.erp",
             "antenna_amsl_m": "antenna.amsl",
             "directional": {"column": "antenna.type", "values": {"DIR": "yes", "*": "no"}}}})";

JoinedMapping mapping(const std::string& text = kMapping) {
  auto read = parse_joined_mapping(text);
  if (!read) FAIL(read.error().message());
  return std::move(read).value();
}

StationTable joined(const Files& files, std::size_t chunk = 1 << 16) {
  test::MadeTables tables(files, chunk);
  auto table = read_joined_tables(tables, mapping());
  if (!table) FAIL(table.error().message());
  return std::move(table).value();
}

bool remarked(const StationTable& table, const std::string& part) {
  return std::any_of(table.remarks.begin(), table.remarks.end(), [&](const std::string& remark) {
    return remark.find(part) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("joined tables become stations") {
  const auto table = joined(practice());
  REQUIRE(table.stations.size() == 2);
  CHECK(table.stations.size() + table.rejected.size() == table.rows_read);
  const Station& alder = table.stations[0];
  CHECK(alder.id == "101/1");
  CHECK(alder.call_sign == "QAAB");
  CHECK(alder.city == "Alder Reach");
  CHECK(alder.provenance.line == 2);
  // By hand: 44 + 30/60, -(100 + 15/60 + 36/3600).
  CHECK(alder.position.latitude_deg() == Approx(44.5));
  CHECK(alder.position.longitude_deg() == Approx(-100.26));
  CHECK(alder.erp_kw == 100.0);
  CHECK(alder.antenna_amsl_m == 650.0);
  CHECK(alder.directional == true);
  REQUIRE(alder.pattern);
  // Turned by 90 degrees, a doubled azimuth counted once.
  CHECK(to_text(*alder.pattern) == "0 0.5; 90 1; 180 0.5; 270 0.1");

  const Station& birch = table.stations[1];
  CHECK(birch.id == "102/1");
  CHECK(birch.position.latitude_deg() == Approx(-(33.0 + 7.0 / 60.0 + 24.6 / 3600.0)));
  CHECK(birch.position.longitude_deg() == Approx(151.9875));
  CHECK(birch.directional == false);
  CHECK_FALSE(birch.pattern);
}

TEST_CASE("the import reports facts that the tables lack") {
  const auto table = joined(practice());
  // The second antenna at one site, and a site without power and channel.
  REQUIRE(table.rejected.size() == 2);
  CHECK(table.rejected[0].reason == "the station 101/1 is already listed with at least this power");
  CHECK(table.rejected[1].reason == "the RF channel is empty");
  CHECK(remarked(table, "facility.dat: 4 of 6 records pass the mapping's filters"));
  CHECK(remarked(table, "2 rows have no match in location.dat and are left out"));
  CHECK(remarked(table, "1 rows have no match in power.dat"));
  CHECK(remarked(table, "pattern.dat: 1 azimuths belong to no imported station"));
}

TEST_CASE("the stronger antenna of a site is kept, in any row order") {
  Files files = practice();
  files["power.dat"] = "ant|ch|erp|^|\nn1b|23|200|^|\nn1|23|100|^|\nn2|9|5|^|\nn3|10|1|^|\n";
  const auto table = joined(files);
  REQUIRE(table.stations.size() == 3);
  CHECK(table.stations[0].erp_kw == 200.0);
  CHECK(table.stations[0].antenna_amsl_m == 640.0);
  CHECK_FALSE(table.stations[0].pattern);
  CHECK(table.stations[2].id == "102/2");
  CHECK_FALSE(table.stations[2].pattern);
  CHECK(remarked(table,
                 "1 antenna patterns could not be used; the first: QAAC: the pattern has "
                 "the fields 1 and 0.3 at 0 degrees"));
}

TEST_CASE("the size of the read chunks makes no difference") {
  const auto whole = joined(practice());
  for (const std::size_t chunk : {1, 2, 3, 7, 64}) {
    const auto pieces = joined(practice(), chunk);
    CHECK(pieces.stations == whole.stations);
    CHECK(pieces.remarks == whole.remarks);
  }
}

TEST_CASE("a file without a header line takes its columns from the mapping") {
  Files files = practice();
  files["antenna.dat"].erase(0, files["antenna.dat"].find('\n') + 1);
  std::string text = kMapping;
  const std::string before = "\"joins\": \"location.loc\"";
  text.replace(text.find(before), before.size(),
               before + ", \"columns\": [\"ant\", \"loc\", \"type\", \"amsl\", \"turn\"]");
  test::MadeTables tables(files);
  const auto table = read_joined_tables(tables, mapping(text));
  REQUIRE(table);
  CHECK(table->stations == joined(practice()).stations);
}

TEST_CASE("a missing file or column is an error that lists the existing ones") {
  Files files = practice();
  const auto fault = [&] {
    test::MadeTables tables(files);
    const auto table = read_joined_tables(tables, mapping());
    return table ? std::string() : table.error().message();
  };
  files.erase("antenna.dat");
  CHECK(fault() == "missing file antenna.dat");
  files = practice();
  files["power.dat"] = "ant|channel|erp|^|\n";
  CHECK(fault() ==
        "power.dat, the header line: missing column \"ch\"; the columns are: "
        "ant, channel, erp");
  files = practice();
  files["location.dat"] = "app|loc|seq|lad|lam|las|lah|lod|lom|los|loh|^|\n";
  CHECK(fault().find("no stations remain: ") == 0);
}

TEST_CASE("missing tables that only complete stations are told") {
  Files files = practice();
  files.erase("pattern.dat");
  const auto table = joined(files);
  CHECK(table.stations.size() == 2);
  CHECK_FALSE(table.stations[0].pattern);
  CHECK(remarked(table, "missing file pattern.dat: the transmitting antennas' patterns stay"));
  files.erase("power.dat");
  test::MadeTables tables(files);
  const auto without = read_joined_tables(tables, mapping());
  REQUIRE_FALSE(without);  // here the power table has the channel
  CHECK(without.error().what.find("missing file power.dat: its facts stay unknown") !=
        std::string::npos);
}

TEST_CASE("an import of joined tables reports progress and can be stopped") {
  test::MadeTables tables(practice());
  std::vector<std::string> seen;
  const auto table = read_joined_tables(
      tables, mapping(), [&](const std::string& file, std::uint64_t done, std::uint64_t all) {
        CHECK(done <= all);
        seen.push_back(file);
        return file != "antenna.dat";
      });
  REQUIRE_FALSE(table);
  CHECK(table.error().what == "the import was stopped");
  CHECK(seen == std::vector<std::string>{"facility.dat", "location.dat", "antenna.dat"});
}

TEST_CASE("an incomplete mapping of joined tables is refused") {
  const auto fault = [](const std::string& what, const std::string& by) {
    std::string text = kMapping;
    text.replace(text.find(what), what.size(), by);
    const auto read = parse_joined_mapping(text);
    return read ? std::string() : read.error().message();
  };
  CHECK(fault("\"facility.call\"", "\"call\"") ==
        "mapping, fields, call_sign: \"call\" is not a column of an earlier table; write "
        "\"table.column\"; the tables are: antenna, facility, location, power");
  CHECK(fault("\"location.loc\"", "\"power.loc\"").find("not a column of an earlier table") !=
        std::string::npos);
  CHECK(fault("\"key\": \"app\", ", "").find("\"key\" is missing") != std::string::npos);
  CHECK(fault("\"name\": \"power\"", "\"name\": \"antenna\"").find("cannot be a table name") !=
        std::string::npos);
  CHECK(fault("\"separator\": \"|\", ", "").find("separator") != std::string::npos);
  CHECK(fault("\"datum\": \"WGS84\"", "\"datum\": \"here\"").find("mapping, datum") == 0);
  CHECK(is_joined_mapping(kMapping));
  CHECK_FALSE(is_joined_mapping("{}"));
  CHECK_FALSE(is_joined_mapping("no JSON"));
}

TEST_CASE("the built-in mapping of the licensing database parses and joins its tables") {
  const auto text = platform::read_file(platform::assets_folder() + "/mappings/us_lms.json");
  REQUIRE(text);
  const auto ready = mapping(*text);
  CHECK(ready.tables.size() == 7);
  test::MadeTables tables(test::licensing_tables());
  const auto table = read_joined_tables(tables, ready);
  if (!table) FAIL(table.error().message());
  REQUIRE(table->stations.size() == 1);
  const Station& station = table->stations[0];
  CHECK(station.id == "9001/1");
  CHECK(station.rf_channel.number == 23);
  CHECK(station.standard == BroadcastStandard::atsc1);
  CHECK(station.translator == false);
  CHECK_FALSE(station.haat_m);
  CHECK(station.position.longitude_deg() == Approx(-100.26).margin(1e-4));
  REQUIRE(station.pattern);
  CHECK(station.pattern->loss_db(Bearing<True>::degrees(190.0)) == Approx(20.0).margin(0.001));
}
