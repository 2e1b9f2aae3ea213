#include "core/import/import_csv.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

const Source kSource{"a table of the test", "2026-05-01"};
const std::string kHeader = "call_sign,raster,rf_channel,latitude_deg,longitude_deg";

std::string reason_of(const std::string& row, const std::string& header = kHeader) {
  const auto table = read_station_csv(header + "\n" + row + "\n", kSource);
  REQUIRE(table);
  CHECK(table->stations.empty());
  REQUIRE(table->rejected.size() == 1);
  CHECK(table->rejected[0].line == 2);
  return table->rejected[0].reason;
}

}  // namespace

TEST_CASE("every column of Mastwise's table reaches the station") {
  const auto table = read_station_csv(
      "\xEF\xBB\xBF# PRACTICE\r\n"
      "Call_Sign,facility_id,site,name,network,programs,raster,rf_channel,standard,latitude_deg,"
      "longitude_deg,site_amsl_m,antenna_amsl_m,haat_m,erp_kw,polarization,directional,city,state,"
      "translator,owner\r\n"
      "QAAB,17,2,\"Basin, first\",Basin Public,\"6.1|Basin Public|Basin Public|en; 6.2|Basin "
      "Kids\","
      "ATSC,23,ATSC 3.0,42.5,-118.25,1800,1850.5,400,65.4,elliptical,yes,Alder,OR,no,somebody\r\n",
      kSource);
  REQUIRE(table);
  CHECK(table->rejected.empty());
  REQUIRE(table->stations.size() == 1);
  const Station expected{
      .id = "17/2",
      .call_sign = "QAAB",
      .facility_id = "17",
      .name = "Basin, first",
      .network = "Basin Public",
      .programs = {{"6.1", "Basin Public", "Basin Public", "en"}, {"6.2", "Basin Kids", "", ""}},
      .raster = Raster::atsc,
      .rf_channel = {23},
      .standard = BroadcastStandard::atsc3,
      .position = *Position::at_deg(42.5, -118.25),
      .site_amsl_m = 1800.0,
      .antenna_amsl_m = 1850.5,
      .haat_m = 400.0,
      .erp_kw = 65.4,
      .polarization = Polarization::elliptical,
      .directional = true,
      .translator = false,
      .city = "Alder",
      .state = "OR",
      .notes = {{"owner", "somebody"}},
      .provenance = {kSource, 3}};
  CHECK(table->stations[0] == expected);
  CHECK(table->remarks == std::vector<std::string>{"columns kept as notes: owner"});
}

TEST_CASE("a missing cell stays unknown") {
  const auto table =
      read_station_csv(kHeader + ",haat_m,erp_kw,directional\nQAAC,ATSC,9,1,2,,,\n", kSource);
  REQUIRE(table);
  REQUIRE(table->stations.size() == 1);
  const Station& station = table->stations[0];
  CHECK_FALSE(station.haat_m);
  CHECK_FALSE(station.erp_kw);
  CHECK_FALSE(station.antenna_amsl_m);
  CHECK_FALSE(station.directional);
  CHECK_FALSE(station.translator);
  CHECK_FALSE(station.standard);
  CHECK(station.polarization == Polarization::unknown);
  CHECK(station.id == "QAAC-9");
}

TEST_CASE("a decimal comma is a number if the comma does not separate cells") {
  const auto table = read_station_csv(
      "call_sign;raster;rf_channel;latitude_deg;longitude_deg;erp_kw\n"
      "QAAD;Europe;21;52,25;-1,5;0,25\n",
      kSource);
  REQUIRE(table);
  REQUIRE(table->stations.size() == 1);
  CHECK(table->stations[0].position == *Position::at_deg(52.25, -1.5));
  CHECK(table->stations[0].erp_kw == 0.25);
}

TEST_CASE("an unreadable row is rejected with its line and reason") {
  CHECK(reason_of(",ATSC,9,1,2") == "the call sign is empty");
  CHECK(reason_of("QAAE,ATSC,,1,2") == "the RF channel is empty");
  CHECK(reason_of("QAAE,,9,1,2") == "the channel plan is empty");
  CHECK(reason_of("QAAE,ATSC,37,1,2") == "the ATSC channel plan has no RF channel 37");
  CHECK(reason_of("QAAE,ATSC,9,91,2").find("latitude 91") == 0);
  CHECK(reason_of("QAAE,ATSC,9,1,").find("longitude_deg: the cell is empty") == 0);
  CHECK(reason_of("QAAE,ATSC,9,nan,2") == "latitude_deg: \"nan\" is not a number of degrees");
  CHECK(reason_of("QAAE,ATSC,9,--1,2").find("latitude_deg") == 0);
  CHECK(reason_of("QAAE,ATSC,9,1") == "the row has 4 cells, but the header has 5");
  CHECK(reason_of("QAAE,ATSC,9,1,2,0", kHeader + ",erp_kw").find("erp_kw: 0 is not within") == 0);
  CHECK(reason_of("QAAE,ATSC,9,1,2,often", kHeader + ",directional") ==
        "directional: \"often\" is neither yes nor no");
  CHECK(reason_of("QAAE,ATSC,9,1,2,6.1|a|b|c|d", kHeader + ",programs").find("four parts") !=
        std::string::npos);
}

TEST_CASE("the other rows are imported, and line numbers count quoted line ends") {
  const auto table = read_station_csv(kHeader +
                                          ",name\n"
                                          "QAAF,ATSC,9,1,2,\"two\nlines\"\n"
                                          "QAAG,ATSC,99,1,2,\n"
                                          "QAAF,ATSC,9,3,4,again\n"
                                          "QAAH,ATSC,10,1,2,\n",
                                      kSource);
  REQUIRE(table);
  CHECK(table->rows_read == 4);
  CHECK(table->stations.size() == 2);
  REQUIRE(table->rejected.size() == 2);
  CHECK(table->rejected[0].line == 4);
  CHECK(table->rejected[1] == RejectedRow{5, "the station QAAF-9 is already on line 2"});
  CHECK(table->stations[1].provenance.line == 6);
}

TEST_CASE("a file that is not a table is refused whole with a remedy") {
  const auto message = [](const std::string& text) {
    const auto table = read_station_csv(text, kSource);
    REQUIRE_FALSE(table);
    return table.error().message();
  };
  CHECK(message("") == "the table is empty; choose a file with a header line and rows");
  CHECK(message("call_sign,rf_channel,latitude_deg,longitude_deg\n") ==
        "the header line: missing column \"raster\"; the columns are: call_sign, "
        "rf_channel, latitude_deg, longitude_deg");
  CHECK(message(kHeader + ",Call_sign\n").find("appears twice") != std::string::npos);
  CHECK(message(std::string("c\0a\0", 4)).find("UTF-8") != std::string::npos);
}
