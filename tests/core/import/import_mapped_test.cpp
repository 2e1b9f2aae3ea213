#include "core/import/import_table.hpp"
#include "core/import/table_mapping.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/reference.hpp"

#include <algorithm>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

constexpr const char* kRegulatorTable = "stations/fcc_post_auction_technical_parameters.csv";

std::string ready_mapping() {
  return test::read_file(test::source_folder() + "/assets/mappings/us_post_auction.json");
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos;
       at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

const Station& station_called(const StationTable& table, const std::string& call_sign) {
  const auto found =
      std::find_if(table.stations.begin(), table.stations.end(),
                   [&](const Station& station) { return station.call_sign == call_sign; });
  REQUIRE(found != table.stations.end());
  return *found;
}

}  // namespace

TEST_CASE("the built-in mapping reads the regulator's whole table") {
  const auto path = test::reference(kRegulatorTable);
  if (!path) return;
  const auto mapping = parse_table_mapping(ready_mapping());
  REQUIRE(mapping);
  const auto table = read_station_table(test::read_file(*path), *mapping);
  REQUIRE(table);
  CHECK(table->rows_read == 2074);
  CHECK(table->rejected.empty());
  CHECK(table->stations.size() == 2074);

  // Positions, heights, powers and channels: the reference data's README. NAD83 and WGS84 are
  // the same there for PROJ.
  const Station& wled = station_called(*table, "WLED-TV");
  CHECK(wled.position.latitude_deg() == Approx(44.352778).margin(5e-7));
  CHECK(wled.position.longitude_deg() == Approx(-71.736944).margin(5e-7));
  CHECK(wled.rf_channel == RfChannel{23});
  CHECK(wled.antenna_amsl_m == 744.2);
  CHECK(wled.erp_kw == 65.4);
  CHECK(wled.directional == false);
  CHECK(wled.provenance.line == 1206);
  CHECK(wled.provenance.source.date == "2017-04-13");
  const Station& wvtb = station_called(*table, "WVTB");
  CHECK(wvtb.position.latitude_deg() == Approx(44.571111).margin(5e-7));
  CHECK(wvtb.position.longitude_deg() == Approx(-71.893611).margin(5e-7));
  CHECK(wvtb.rf_channel == RfChannel{28});
  CHECK(wvtb.city == "ST. JOHNSBURY");
  CHECK(wvtb.notes == std::vector<Note>{{"PC", "18"}});

  // Guam is east of Greenwich: the table counts west as positive and gives it a minus sign.
  CHECK(station_called(*table, "KUAM-TV").position.longitude_deg() ==
        Approx(145.0 + 17.0 / 60.0 + 15.0 / 3600.0));
  // The five transmitters of one distributed system (line 1 to 5 of facility 166319).
  CHECK(std::count_if(table->stations.begin(), table->stations.end(),
                      [](const Station& station) { return station.facility_id == "166319"; }) == 5);
  // 376 rows have HAAT 0, which means "not computed".
  CHECK(std::count_if(table->stations.begin(), table->stations.end(),
                      [](const Station& station) { return !station.haat_m; }) == 376);
}

TEST_CASE("sixty seconds are rejected row by row unless the mapping lets them carry") {
  const auto path = test::reference(kRegulatorTable);
  if (!path) return;
  const auto mapping = parse_table_mapping(replaced(ready_mapping(), "\"carry\"", "\"refuse\""));
  REQUIRE(mapping);
  const auto table = read_station_table(test::read_file(*path), *mapping);
  REQUIRE(table);
  CHECK(table->stations.size() + table->rejected.size() == 2074);

  std::size_t rows_with_sixty = 0;
  const auto lines = test::read_lines(*path);
  for (const std::string& line : lines) {
    // Only City (before the coordinates) may be quoted, so the coordinates count from the end.
    const auto cells = test::split(line, ',');
    if (cells.size() < 15) continue;
    const std::string& latitude = cells[cells.size() - 8];
    const std::string& longitude = cells[cells.size() - 7];
    const auto ends_sixty = [](const std::string& cell) {
      return cell.size() > 2 && cell.substr(cell.size() - 2) == "60";
    };
    if (ends_sixty(latitude) || ends_sixty(longitude)) ++rows_with_sixty;
  }
  CHECK(rows_with_sixty > 0);
  CHECK(table->rejected.size() == rows_with_sixty);
  for (const RejectedRow& row : table->rejected) {
    INFO(row.line << ": " << row.reason);
    CHECK(row.reason.find("60 seconds") != std::string::npos);
    CHECK(lines[row.line - 1].find("60,") != std::string::npos);
  }
}

TEST_CASE("the mapping reads angles in every notation and with every sign") {
  struct Given {
    std::string latitude_rule, longitude_rule, header, row;
  };
  const Given all[] = {
      {R"("column":"a","notation":"decimal","positive":"north")",
       R"("column":"b","notation":"decimal","positive":"west")", "a,b", "-33.5,-151.25"},
      {R"("column":"a","notation":"DDMMSS","positive":"south")",
       R"("column":"b","notation":"DDDMMSS","positive":"east")", "a,b", "333000,1511500.0"},
      {R"("column":"a","notation":"decimal","positive":"letter")",
       R"("column":"b","notation":"DDDMMSS","positive":"letter")", "a,b", "33.5 S,1511500e"},
      {R"("degrees":"ad","minutes":"am","seconds":"as","notation":"separate","letter_column":"al")",
       R"("degrees":"bd","minutes":"bm","notation":"separate","positive":"east")",
       "ad,am,as,al,bd,bm", "33,29,59.99999999999,S,151,15"},
  };
  for (const Given& given : all) {
    INFO(given.row);
    const auto mapping = parse_table_mapping(
        R"({"source":{"name":"t"},"datum":"WGS84","raster":"ATSC","latitude":{)" +
        given.latitude_rule + R"(},"longitude":{)" + given.longitude_rule +
        R"(},"fields":{"call_sign":"c","rf_channel":"n"}})");
    REQUIRE(mapping);
    const auto table =
        read_station_table("c,n," + given.header + "\nQ,9," + given.row + "\n", *mapping);
    REQUIRE(table);
    REQUIRE(table->stations.size() == 1);
    CHECK(table->stations[0].position.latitude_deg() == Approx(-33.5).epsilon(1e-12));
    CHECK(table->stations[0].position.longitude_deg() == Approx(151.25).epsilon(1e-12));
  }
}

TEST_CASE("minutes and seconds of sixty, and letters of the other axis, are refused") {
  const auto mapping = parse_table_mapping(
      R"({"source":{"name":"t"},"datum":"WGS84","raster":"ATSC",
          "latitude":{"column":"a","notation":"DDMMSS","positive":"letter"},
          "longitude":{"column":"b","notation":"decimal","positive":"east"},
          "fields":{"call_sign":"c","rf_channel":"n"}})");
  REQUIRE(mapping);
  for (const char* cell : {"336000N", "330060N", "330061N", "333000E", "-333000N", "333000", "3N",
                           "N", "3330000000N", "33x000N", "333000..N"}) {
    INFO(cell);
    const auto table = read_station_table("c,n,a,b\nQ,9," + std::string(cell) + ",0\n", *mapping);
    REQUIRE(table);
    CHECK(table->stations.empty());
    CHECK(table->rejected.size() == 1);
  }
}

TEST_CASE("units are converted to ours") {
  const auto mapping = parse_table_mapping(
      R"({"source":{"name":"t"},"datum":"WGS84","raster":"ATSC",
          "latitude":{"column":"a","notation":"decimal","positive":"north"},
          "longitude":{"column":"b","notation":"decimal","positive":"east"},
          "fields":{"call_sign":"c","rf_channel":"n","erp_kw":{"column":"p","unit":"W"},
                    "haat_m":{"column":"h","unit":"ft","unknown":["-"]}}})");
  REQUIRE(mapping);
  const auto table = read_station_table("c,n,a,b,p,h\nQ,9,1,2,250,100\nR,9,1,2,9,-\n", *mapping);
  REQUIRE(table);
  REQUIRE(table->stations.size() == 2);
  CHECK(*table->stations[0].erp_kw == Approx(0.25));
  CHECK(*table->stations[0].haat_m == Approx(30.48));
  CHECK_FALSE(table->stations[1].haat_m);
}

TEST_CASE("a faulty mapping reports the fault, its place and a remedy") {
  const auto message = [](const std::string& from, const std::string& to) {
    const auto mapping = parse_table_mapping(replaced(ready_mapping(), from, to));
    REQUIRE_FALSE(mapping);
    return mapping.error().message();
  };
  CHECK(message("\"NAD83\"", "\"NAD84\"") ==
        "mapping, datum: \"NAD84\" is not a datum; choose one of: WGS84, NAD83, NAD27");
  CHECK(message("\"positive\": \"west\"", "\"positive\": \"north\"") ==
        "mapping, longitude: the positive direction is missing; give either \"positive\": "
        "\"east\", \"west\" or \"letter\", or a \"letter_column\"");
  CHECK(message("\"call_sign\": \"Call\",", "") ==
        "mapping, fields: \"call_sign\" is missing; name its column");
  CHECK(message("\"separator\": \",\",", "\"separator\": \",\"").find("mapping, line 12: ") == 0);
  CHECK(message("\"erp_kw\"", "\"erp\"").find("mapping, fields: the key \"erp\" is not known") ==
        0);
  CHECK(message("2017-04-13", "2017-02-30").find("is not the date of a source") !=
        std::string::npos);
  CHECK(message("\"ERP\"", "{\"column\": \"ERP\", \"unit\": \"ft\"}").find("no unit \"ft\"") !=
        std::string::npos);
  CHECK_FALSE(parse_table_mapping(""));
  CHECK_FALSE(parse_table_mapping("[]"));
}

TEST_CASE("a mapped column missing in the table is an error") {
  const auto mapping = parse_table_mapping(ready_mapping());
  REQUIRE(mapping);
  const auto table = read_station_table("FacID,Call\n1,Q\n", *mapping);
  REQUIRE_FALSE(table);
  CHECK(table.error().message().find("the columns are: FacID, Call") != std::string::npos);
}

TEST_CASE("Canada's extract is read by its built-in mapping") {
  const auto path = test::reference("stations/canada_white_space_sample.csv");
  if (!path) return;
  const auto mapping = parse_table_mapping(
      test::read_file(test::source_folder() + "/assets/mappings/ca_white_space.json"));
  if (!mapping) FAIL(mapping.error().message());
  CHECK(*parse_table_mapping(to_json(*mapping)) == *mapping);
  const auto table = read_station_table(test::read_file(*path), *mapping);
  if (!table) FAIL(table.error().message());
  CHECK(table->rejected.empty());
  CHECK(table->stations.size() == table->rows_read);
  for (const Station& station : table->stations) {
    CHECK(station.position.longitude_deg() < -50.0);  // west is positive in the table
    CHECK(station.antenna_amsl_m > station.site_amsl_m);
  }
  // Row 2 of the sample: 45:30:11, 75:51:1, ground 359 m, 142.3 m above it, 54.77411 dBW, 569 MHz,
  // the center of channel 30 [47 CFR 73.603: 566 to 572 MHz]. 10^5.477411 W = 300.2 kW.
  const Station& second = station_called(*table, "CIVO-DT");
  CHECK(second.rf_channel.number == 30);
  CHECK(second.position.latitude_deg() == Approx(45.0 + 30.0 / 60.0 + 11.0 / 3600.0));
  CHECK(second.position.longitude_deg() == Approx(-(75.0 + 51.0 / 60.0 + 1.0 / 3600.0)));
  CHECK(*second.erp_kw == Approx(300.2).epsilon(1e-3));
  CHECK(*second.antenna_amsl_m == Approx(501.3));
  CHECK(second.state == "QC");
  // Row 1 is analog.
  CHECK(std::none_of(table->stations.begin(), table->stations.end(),
                     [](const Station& one) { return one.call_sign == "CITO-TV-1"; }));
}

// The columns and the form of the angles as documented; PRACTICE values.
TEST_CASE("Australia's list is read by its built-in mapping") {
  const auto mapping = parse_table_mapping(
      test::read_file(test::source_folder() + "/assets/mappings/au_broadcast_list.json"));
  if (!mapping) FAIL(mapping.error().message());
  const auto table = read_station_table(
      "Area Served,Callsign,Frequency(MHz),Purpose,Polarisation,Antenna Height (m),Antenna Pattern,"
      "Maximum ERP (W),Lic"
      "ence Number,Site Id,Site Name,Latitude,Longitude,State\n"
      "Alder,QAA6,177.5,Commercial,M,50,DA,50000,1/1,77,Mount Alder,42 52 28S,147 29 55E,QQ\n",
      *mapping);
  if (!table) FAIL(table.error().message());
  REQUIRE(table->stations.size() == 1);
  const Station& station = table->stations[0];
  CHECK(station.rf_channel.number == 6);  // 174 to 181 MHz in the published band plan
  CHECK(station.erp_kw == 50.0);
  CHECK(station.position.latitude_deg() == Approx(-(42.0 + 52.0 / 60.0 + 28.0 / 3600.0)));
  CHECK(station.position.longitude_deg() == Approx(147.0 + 29.0 / 60.0 + 55.0 / 3600.0));
  CHECK_FALSE(station.antenna_amsl_m);
}
