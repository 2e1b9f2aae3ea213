#include "core/import/guess_mapping.hpp"

#include "core/import/import_table.hpp"
#include "core/import/table_angle.hpp"
#include "platform/files.hpp"
#include "tests/support/reference.hpp"

#include <algorithm>
#include <map>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

GuessedMapping guessed(const std::string& head) {
  auto guess = guess_mapping(head, {"a table", ""});
  if (!guess) FAIL(guess.error().message());
  return std::move(guess).value();
}

std::optional<std::size_t> doubt_of(const GuessedMapping& guess, Doubt::Kind kind) {
  for (std::size_t i = 0; i < guess.doubts.size(); ++i) {
    if (guess.doubts[i].kind == kind) return i;
  }
  return std::nullopt;
}

std::string chosen(const GuessedMapping& guess, Doubt::Kind kind) {
  const auto at = doubt_of(guess, kind);
  return at ? guess.doubts[*at].options.at(guess.doubts[*at].chosen) : std::string("no doubt");
}

}  // namespace

TEST_CASE("the guess reads the regulator's table like the built-in mapping") {
  const auto path = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  if (!path) return;
  const auto text = platform::read_file(path->string());
  const auto json =
      platform::read_file(platform::assets_folder() + "/mappings/us_post_auction.json");
  REQUIRE(text);
  REQUIRE(json);
  const auto ready = parse_table_mapping(*json);
  REQUIRE(ready);
  GuessedMapping guess = guessed(text->substr(0, 30000));

  CHECK(guess.mapping.latitude.notation == AngleNotation::packed_dms);
  CHECK(guess.mapping.longitude.positive_is_south_or_west);
  CHECK(guess.mapping.datum == Datum::nad83);
  CHECK(chosen(guess, Doubt::Kind::longitude_sign) == "west");
  CHECK(chosen(guess, Doubt::Kind::power_unit) == "kW");
  CHECK_FALSE(doubt_of(guess, Doubt::Kind::raster));
  for (const auto& [name, rule] : ready->fields) {
    INFO(name);
    REQUIRE(guess.mapping.fields.count(name) == 1);
    CHECK(guess.mapping.fields[name].column == rule.column);
  }
  // The head does not show 60 seconds: such rows are rejected and reported, never misread.
  const auto by_guess = read_station_table(*text, guess.mapping);
  const auto by_ready = read_station_table(*text, *ready);
  REQUIRE(by_guess);
  REQUIRE(by_ready);
  std::map<std::string, const Station*> known;
  for (const Station& station : by_ready->stations) known[station.id] = &station;
  CHECK(by_guess->stations.size() >= by_ready->stations.size() * 95 / 100);
  std::size_t same = 0;
  for (const Station& station : by_guess->stations) {
    REQUIRE(known.count(station.id) == 1);
    Station compared = station;
    compared.standard = BroadcastStandard::atsc1;  // the table does not have it
    compared.provenance.source = ready->source;
    same += compared == *known[station.id] ? 1 : 0;
  }
  CHECK(same == by_guess->stations.size());
}

TEST_CASE("a doubtful sign stays open with both readings, and a person can flip it") {
  // PRACTICE: invented; no country has Q, so the side of Greenwich is unknown.
  const std::string head =
      "Call;Chan;Latitude;Longitude;ERP;HAAT\n"
      "QAAB;23;44.5;100.26;1000000;300\nQAAC;9;44.6;101.5;50000;0\nQAAD;28;45;102;2000;120\n"
      "QAAE;30;45.2;99.";
  GuessedMapping guess = guessed(head);
  CHECK(guess.mapping.separator == ';');
  CHECK(guess.doubts.at(0).kind == Doubt::Kind::longitude_sign);
  CHECK(guess.doubts[0].options == std::vector<std::string>{"east", "west"});
  CHECK(chosen(guess, Doubt::Kind::longitude_sign) == "east");
  CHECK(chosen(guess, Doubt::Kind::latitude_sign) == "north");
  CHECK(chosen(guess, Doubt::Kind::datum) == "WGS84");
  CHECK(chosen(guess, Doubt::Kind::power_unit) == "W");
  CHECK(chosen(guess, Doubt::Kind::height_unit) == "m");
  CHECK(chosen(guess, Doubt::Kind::raster) == "ATSC");

  auto sample = sample_stations(head, guess.mapping);
  REQUIRE(sample.size() == 3);
  CHECK(sample[0].position.longitude_deg() == Approx(100.26));
  CHECK(sample[0].erp_kw == 1000.0);
  CHECK_FALSE(sample[1].haat_m);
  choose(guess, 0, 1);
  choose(guess, *doubt_of(guess, Doubt::Kind::power_unit), 0);
  choose(guess, *doubt_of(guess, Doubt::Kind::height_unit), 1);
  choose(guess, *doubt_of(guess, Doubt::Kind::zero_is_unknown), 1);
  choose(guess, 99, 0);
  choose(guess, 0, 99);
  sample = sample_stations(head, guess.mapping);
  REQUIRE(sample.size() == 1);  // powers above 10 MW are refused
  CHECK(sample[0].position.longitude_deg() == Approx(-102.0));
  CHECK(sample[0].erp_kw == 2000.0);
  CHECK(*sample[0].haat_m == Approx(36.576));
}

TEST_CASE("letters and minus signs leave no question of sign") {
  const GuessedMapping letters = guessed(
      "Callsign,RF Channel,Lat,Lon\nQAAB,23,443000.0N,1001536.0W\nQAAC,9,330724.6S,1515915.0E\n");
  CHECK(letters.mapping.latitude.letter_in_cell);
  CHECK(letters.mapping.longitude.notation == AngleNotation::packed_dms);
  CHECK_FALSE(doubt_of(letters, Doubt::Kind::longitude_sign));
  const auto sample = sample_stations("Callsign,RF Channel,Lat,Lon\nQAAB,23,443000.0N,1001536.0W\n",
                                      letters.mapping);
  REQUIRE(sample.size() == 1);
  CHECK(sample[0].position.longitude_deg() == Approx(-100.26));
  const GuessedMapping minus =
      guessed("Callsign,RF Channel,Lat,Lon\nQAAB,23,44.5,-100.26\nQAAC,9,44.6,-101\n");
  CHECK_FALSE(doubt_of(minus, Doubt::Kind::longitude_sign));
  CHECK_FALSE(minus.mapping.longitude.positive_is_south_or_west);
}

// Worked by hand: 44 + 21/60 + 10/3600 = 44.352778, 71 + 44/60 + 13.5/3600 = 71.737083.
TEST_CASE("degrees, minutes and seconds with marks between them are found") {
  for (const char* rows : {"QABC,23,44-21-10 N,071-44-13.5 W\nQDEF,33,44-51-10 N,071-54-13.5 W\n",
                           "QABC,23,\"44°21'10\"\"N\",\"71°44'13.5\"\"W\"\nQDEF,33,\"44°51'"
                           "10\"\"N\",\"71°54'13.5\"\"W\"\n",
                           "QABC,23,44 21 10,-71 44 13.5\nQDEF,33,44 51 10,-71 54 13.5\n"}) {
    const std::string text = std::string("Call Sign,Ch,Lat,Lon\n") + rows;
    INFO(text);
    const auto sample = sample_stations(text, guessed(text).mapping);
    REQUIRE(sample.size() == 2);
    CHECK(sample[0].position.latitude_deg() == Approx(44.352778).margin(1e-6));
    CHECK(sample[0].position.longitude_deg() == Approx(-71.737083).margin(1e-6));
  }
}

TEST_CASE("marks that make no angle are refused") {
  const AngleRule rule{.notation = AngleNotation::packed_dms, .column = "Lat"};
  for (const char* cell : {"44--21-10", "44-21-10-5", "44-61-10", "44-21-75", "44-", "44-x-10"}) {
    INFO(cell);
    CHECK_FALSE(read_angle(Axis::latitude, rule, {.whole = cell}, false));
  }
  const auto read = read_angle(Axis::latitude, rule, {.whole = "-44:30"}, false);
  REQUIRE(read);
  CHECK(read->degrees == Approx(-44.5));
}

TEST_CASE("degrees, minutes and seconds in separate columns are found") {
  const GuessedMapping guess = guessed(
      "callsign|channel|lat_deg|lat_mm|lat_ss|lat_dir|long_deg|long_mm|long_ss|long_dir\n"
      "QAAB|23|44|30|0.0|N|100|15|36.0|W\n");
  CHECK(guess.mapping.latitude.notation == AngleNotation::separate);
  CHECK(guess.mapping.longitude.letter_column == "long_dir");
  CHECK(guess.mapping.longitude.seconds_column == "long_ss");
  CHECK_FALSE(doubt_of(guess, Doubt::Kind::longitude_sign));
}

TEST_CASE("a table without stations is refused with its columns") {
  const auto fault = [](const std::string& head) {
    const auto guess = guess_mapping(head, {"a table", ""});
    return guess ? std::string() : guess.error().message();
  };
  CHECK(fault("a,b,c,d\n1,2,3,4\n") ==
        "the header line: no column looks like the latitude, longitude, call sign, RF channel; "
        "provide a mapping; the columns are: a, b, c, d");
  CHECK(fault("lat,lon,call,power\n44,-100,QAAB,5.5\n").find("RF channel") != std::string::npos);
}

TEST_CASE("a mapping comes back from its JSON") {
  for (const char* head : {"Call;Chan;Latitude;Longitude;ERP;HAAT\nQAAB;23;44.5;100.26;1000000;0\n",
                           "call,ch,lat_deg,lat_mm,lat_dir,lon_deg,lon_mm,lon_dir,haat_ft,da\n"
                           "KQAB,23,44,30,N,100,15,W,900,DA\n",
                           "call\tch\tlat\tlon\terp kw\nQAAB\t23\t443060\t1001536\t5\n"}) {
    GuessedMapping guess = guessed(head);
    const auto read = parse_table_mapping(to_json(guess.mapping));
    if (!read) FAIL(read.error().message());
    CHECK(*read == guess.mapping);
    choose(guess, 0, 0);
    CHECK(*parse_table_mapping(to_json(guess.mapping)) == guess.mapping);
  }
  const auto json =
      platform::read_file(platform::assets_folder() + "/mappings/us_post_auction.json");
  REQUIRE(json);
  const auto ready = parse_table_mapping(*json);
  REQUIRE(ready);
  CHECK(*parse_table_mapping(to_json(*ready)) == *ready);
}

TEST_CASE("one bad channel does not hide its column") {
  const GuessedMapping guess =
      guessed("Call,Channel,Lat,Lon\nQAAB,23,44,-100\nQAAC,x,44,-100\nQAAD,9,44,-101\n");
  CHECK(guess.mapping.fields.at("rf_channel").column == "Channel");
}

TEST_CASE("units behind a name are understood, and told") {
  const GuessedMapping guess = guessed(
      "Call,Channel,Lat,Lon,ERP (kW),Site elevation (m),HAAT (ft)\n"
      "QAAB,23,44,-100,100,500,300\nQAAC,24,44,-100,50,400,200\n");
  CHECK(guess.mapping.fields.at("erp_kw").column == "ERP (kW)");
  CHECK(guess.mapping.fields.at("erp_kw").factor == 1.0);
  CHECK(guess.mapping.fields.at("site_amsl_m").column == "Site elevation (m)");
  CHECK(guess.mapping.fields.at("site_amsl_m").factor == 1.0);
  CHECK(guess.mapping.fields.at("haat_m").factor == Approx(0.3048));  // the international foot
  CHECK_FALSE(doubt_of(guess, Doubt::Kind::height_unit));
  CHECK(guess.remarks == std::vector<std::string>{"powers are in kW, by the header",
                                                  "heights are in feet, by the header"});
}

TEST_CASE("decimal commas are understood with any separator, and told") {
  for (const char* head : {"Call;Channel;Latitude;Longitude;ERP\nQAAB;23;44,5;-100,25;1,5\n",
                           "Call,Channel,Latitude,Longitude,ERP\n"
                           "QAAB,23,\"44,5\",\"-100,25\",\"1,5\"\n"}) {
    const GuessedMapping guess = guessed(head);
    CHECK(guess.remarks.front() == "numbers have decimal commas");
    const auto sample = sample_stations(head, guess.mapping);
    REQUIRE(sample.size() == 1);
    CHECK(sample[0].position.longitude_deg() == Approx(-100.25));
    CHECK(sample[0].erp_kw == 1.5);
    const auto again = parse_table_mapping(to_json(guess.mapping));
    REQUIRE(again);
    CHECK(*again == guess.mapping);
  }
}

TEST_CASE("a header that says west counts longitudes to the west") {
  const std::string head = "Call,Channel,Lat,Lon W\nQAAB,23,44,100.5\nQAAC,9,45,101\n";
  const GuessedMapping guess = guessed(head);
  CHECK(guess.mapping.longitude.positive_is_south_or_west);
  CHECK_FALSE(doubt_of(guess, Doubt::Kind::longitude_sign));
  CHECK(sample_stations(head, guess.mapping).at(0).position.longitude_deg() == Approx(-100.5));
}

// The tower of the Survey's guide, TG 51409 13177, is at 52 39 28.72 N 1 42 57.79 E.
TEST_CASE("British grid references are found, and both axes come from them") {
  const std::string table =
      "Site,Call sign,NGR,Channel,ERP (kW)\n"
      "PRACTICE One,QONE,TG 51409 13177,40,100\n"
      "PRACTICE Two,QTWO,SU387148,45,20\n";
  const GuessedMapping guess = guessed(table);
  CHECK(guess.mapping.latitude.notation == AngleNotation::os_grid);
  CHECK(guess.mapping.latitude.column == "NGR");
  CHECK(guess.mapping.longitude == guess.mapping.latitude);
  TableMapping mapping = guess.mapping;
  mapping.raster = Raster::europe;
  const auto again = parse_table_mapping(to_json(mapping));
  REQUIRE(again);
  CHECK(again->latitude == mapping.latitude);
  const auto read = read_station_table(table, *again);
  REQUIRE(read);
  REQUIRE(read->stations.size() == 2);
  CHECK(read->stations[0].position.latitude_deg() == Approx(52.657979).margin(5e-5));
  CHECK(read->stations[0].position.longitude_deg() == Approx(1.716052).margin(8e-5));
  const auto bad = read_station_table(
      "Site,Call sign,NGR,Channel,ERP (kW)\nPRACTICE,QBAD,SU 387 14,40,1\n", *again);
  REQUIRE(bad);
  CHECK(bad->stations.empty());
  CHECK(bad->rejected.size() == 1);
  // The two axes cannot come from different references.
  std::string json = to_json(mapping);
  json.replace(json.rfind("NGR"), 3, "XGR");
  CHECK_FALSE(parse_table_mapping(json));
}

TEST_CASE("an empty table and a lacking column have errors of their own") {
  CHECK(guess_mapping("", {"a table", ""}).error().what == "the table is empty");
  const std::string head = "Call,Lat,Lon,ERP (kW)\nQAAB,44,-100,5\n";
  CHECK(guess_mapping(head, {"a table", ""}).error().what == "no column looks like the RF channel");
  const GuessedMapping partly = recognized_columns(head, {"a table", ""});
  CHECK(partly.missing == std::vector<std::string>{"RF channel"});
  CHECK(partly.mapping.latitude.column == "Lat");
  CHECK(partly.mapping.fields.at("erp_kw").column == "ERP (kW)");
}
