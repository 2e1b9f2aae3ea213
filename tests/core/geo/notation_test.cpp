#include "core/geo/notation.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

Position read_position(const std::string& text) {
  const auto position = parse_position(text);
  INFO(text << (position ? "" : ": " + position.error().message()));
  REQUIRE(position);
  return *position;
}

void check_reads(const std::string& text, double latitude_deg, double longitude_deg) {
  INFO(text);
  const Position position = read_position(text);
  CHECK(position.latitude_deg() == Approx(latitude_deg).margin(1e-9));
  CHECK(position.longitude_deg() == Approx(longitude_deg).margin(1e-9));
}

void check_all(const std::vector<std::string>& texts, double latitude_deg, double longitude_deg) {
  for (const std::string& text : texts) check_reads(text, latitude_deg, longitude_deg);
}

}  // namespace

TEST_CASE("decimal degrees in every order and with every mark of the side") {
  check_all({"44.435217, -71.675993",
             "44.435217 -71.675993",
             "44.435217;-71.675993",
             "  44.435217,-71.675993\n",
             "44.435217-71.675993",
             "+44.435217 -71.675993",
             "44.435217 \u221271.675993",
             "44.435217\u00A0\u201371.675993",
             "44.435217N 71.675993W",
             "44.435217n 71.675993w",
             "71.675993W 44.435217N",
             "N44.435217 W71.675993",
             "W71.675993, N44.435217",
             "44.435217\u00B0 N, 71.675993\u00B0 W",
             "44.435217\u00B0, -71.675993\u00B0",
             "north 44.435217 west 71.675993",
             "44.435217 North, 71.675993 WEST",
             "44.435217,N,71.675993,W",
             "44.435217N -71.675993",
             "lat 44.435217 lon -71.675993",
             "Latitude: 44.435217, Longitude: -71.675993",
             "lng=-71.675993 lat=44.435217",
             "lat 44.435217 N long 71.675993 W",
             "44.435217 288.324007"},
            44.435217, -71.675993);
}

TEST_CASE("a decimal comma is accepted if it is unambiguous") {
  check_all({"44,435217 -71,675993", "44,435217;-71,675993", "44,435217, -71,675993",
             "44,435217 N 71,675993 W", "N44,435217 W71,675993"},
            44.435217, -71.675993);
  check_reads("44,71", 44.0, 71.0);
  check_reads("44 30,71 15", 44.5, 71.25);
  check_reads("44 26,25 N 71 40,5 W", 44.4375, -71.675);
}

// 44 degrees 26 minutes 6.8 seconds = 44 + 1566.8 / 3600; 71 40 33.6 = 71 + 2433.6 / 3600 = 71.676.
TEST_CASE("degrees, minutes and seconds with any common marks") {
  check_all(
      {"44\u00B026\u203206.8\u2033N 71\u00B040\u203233.6\u2033W",
       "44\u00B0 26' 06.8\" N, 71\u00B0 40' 33.6\" W",
       "44\u00BA26\u201906.8\u201DN 71\u00BA40\u201933.6\u201DW", "44*26'06.8''N 71*40'33.6''W",
       "44\u00B026\u203206.8\u2032\u2032N 71\u00B040\u203233.6W", "44d26m06.8sN 71d40m33.6sW",
       "44D26M06.8S N 71D40M33.6S W", "71d40m33.6s W 44d26m06.8s N",
       "44 deg 26 min 06.8 sec N 71 deg 40 min 33.6 sec W",
       "44 degrees 26 minutes 6.8 seconds north, 71 degrees 40 minutes 33.6 seconds west",
       "44:26:06.8 -71:40:33.6", "44:26:06.8N 71:40:33.6W", "44-26-06.8N 71-40-33.6W",
       "N 44 26 06.8 W 71 40 33.6", "44 26 06.8 -71 40 33.6",
       "44\u00B026'06.8\" -71\u00B040'33.6\""},
      44.0 + 1566.8 / 3600.0, -71.676);
  check_reads("44 26 06.8 71 40 33.6", 44.0 + 1566.8 / 3600.0, 71.676);
  check_reads("44 26 06 71 40 30", 44.435, 71.675);
}

TEST_CASE("degrees and minutes with common marks") {
  check_all({"44\u00B026.25\u2032N 71\u00B040.5\u2032W", "44 26.25 N 71 40.5 W",
             "44 26.25 -71 40.5", "44:26.25 -71:40.5", "44d26.25mN 71d40.5mW",
             "44\u00B026.25' -71\u00B040.5'", "44 deg 26.25 min N, 71 deg 40.5 min W"},
            44.4375, -71.675);
  check_reads("44 26.25 71 40.5", 44.4375, 71.675);
  check_reads("-0 30 -0 15", -0.5, -0.25);
  check_reads("-0\u00B030' 0\u00B015'", -0.5, 0.25);
}

// A small s is seconds behind m; a capital S, or an s behind unmarked or otherwise marked minutes,
// south.
TEST_CASE("an s is south or seconds") {
  const double south_deg = -(33.0 + 52.0 / 60.0 + 7.5 / 3600.0);
  check_all({"33 52 7.5S 151 12 30E", "33 52 7.5s 151 12 30e", "33d52m7.5S 151d12m30E",
             "33d52m7.5s S 151d12m30s E", "33\u00B052'7.5s 151\u00B012'30e"},
            south_deg, 151.0 + 12.5 / 60.0);
  CHECK_FALSE(parse_position("33d52m7.5s 151d12m30e"));
}

TEST_CASE("the ends of the scales are accepted") {
  check_reads("0 0", 0.0, 0.0);
  check_reads("-0 -0", 0.0, 0.0);
  check_reads("90 180", 90.0, -180.0);
  check_reads("-90 -180", -90.0, -180.0);
  check_reads("90\u00B000\u203200.0\u2033S 180\u00B000\u203200.0\u2033E", -90.0, -180.0);
  check_reads("0N 0E", 0.0, 0.0);
  check_reads(".5 -.25", 0.5, -0.25);
  check_reads("44. 71.", 44.0, 71.0);
  check_reads("0.12345678901234567890123 179.99999999999999", 0.12345678901234568, 180.0);
}

// Source: GeoConvert of GeographicLib 2.1.2 (MIT License), to the meter: UTM rounds, MGRS
// truncates.
TEST_CASE("UTM, UPS and MGRS agree with GeoConvert") {
  const struct {
    double latitude_deg, longitude_deg;
    const char *utm, *mgrs;
  } rows[] = {{44.435216667, -71.675993333, "19n 287027 4923696", "19TBK8702723696"},
              {44.352777778, -71.736944444, "19n 281870 4914700", "19TBK8187014699"},
              {33.33424, 44.40363, "38n 444500 3688501", "38SMB4450088500"},
              {-33.8688, 151.2093, "56s 334369 6250948", "56HLH3436850948"},
              {0, 0, "31n 166021 0", "31NAA6602100000"},
              {84.5, 10, "n 2106113 1398202", "ZBA0611398202"},
              {60.5, 5.5, "32n 307793 6712209", "32VLN0779312209"},
              {78, 20, "33n 615915 8663320", "33XXG1591463320"}};
  for (const auto& row : rows) {
    INFO(row.utm);
    const Position point = Position::at_deg(row.latitude_deg, row.longitude_deg).value();
    // Half a meter on each axis, 0.708 m, over the smallest scale: 0.9996 in UTM, 0.994 in UPS.
    CHECK(path_between(point, read_position(row.utm)).distance_m <= 0.7072 / 0.994);
    CHECK(path_between(point, read_position(row.mgrs)).distance_m <= 0.7072 / 0.994);
    std::string utm = format_position(point, Notation::UtmUps);
    if (utm.rfind("UPS ", 0) == 0) utm.erase(0, 4);
    for (char& letter : utm) letter = static_cast<char>(std::tolower(letter));
    CHECK(utm == row.utm);
    std::string mgrs = format_position(point, Notation::Mgrs);
    mgrs.erase(std::remove(mgrs.begin(), mgrs.end(), ' '), mgrs.end());
    CHECK(mgrs == row.mgrs);
  }
}

// Source: the first row of the table above; the UPS row is its row of 84.5 N 10 E.
TEST_CASE("grid references as people write them") {
  const Position stop = read_position("44.435216667, -71.675993333");
  for (const char* text :
       {"19N 287027 4923696", "19n 287027 4923696", "19 N 287027 4923696", "19T 287027mE 4923696mN",
        "19T 287027 mE 4923696 mN", "19 north 287027 4923696", "UTM 19N 287027, 4923696",
        "utm zone 19T: 287027 4923696", "287027 4923696 19N", "287027E 4923696N 19T",
        "19N 287027.0 4923696.0", "19N 287027,0 4923696,0", "19N;287027;4923696", "19TBK8702723696",
        "19T BK 87027 23696", "19tbk 87027 23696", "MGRS: 19TBK 87027 23696"}) {
    INFO(text);
    CHECK(path_between(stop, read_position(text)).distance_m <= 0.7075);
  }
  const Position polar = read_position("84.5, 10");
  for (const char* text :
       {"n 2106113 1398202", "UPS N 2106113 1398202", "Z 2106113 1398202", "ZBA0611398202"}) {
    INFO(text);
    CHECK(path_between(polar, read_position(text)).distance_m <= 0.7115);
  }
}

TEST_CASE("an MGRS square's middle is the position, and S behind a zone is south") {
  const Position coarse = read_position("19TBK 87 23");  // 1 km: its middle is 287500, 4923500
  CHECK(path_between(coarse, read_position("19N 287500 4923500")).distance_m <= 0.001);
  CHECK(read_position("56S 334369 6250948").latitude_deg() == Approx(-33.8688).margin(1e-5));
  CHECK(read_position("19S 287027 4923696").latitude_deg() < 0.0);
  // Los Angeles, from memory; its mirror image is in the southern ocean.
  CHECK(read_position("11 north 386500 3768500").latitude_deg() == Approx(34.05).margin(0.05));
  CHECK(read_position("11 south 386500 3768500").latitude_deg() == Approx(-56.2).margin(0.1));
  // Band S of MGRS is 32 to 40 north: Washington's square.
  CHECK(read_position("18SUJ 23400 06500").latitude_deg() == Approx(38.9).margin(0.1));
}
