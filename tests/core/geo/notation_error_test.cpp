#include "core/geo/notation.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

struct Bad {
  std::string text;
  std::size_t character;
  std::string what;  // a part of the message
};

void check_refused(const std::vector<Bad>& cases) {
  for (const Bad& bad : cases) {
    INFO("\"" << bad.text << "\"");
    const auto position = parse_position(bad.text);
    REQUIRE_FALSE(position);
    INFO(position.error().message());
    REQUIRE(position.error().character);
    CHECK(*position.error().character == bad.character);
    CHECK(position.error().what.find(bad.what) != std::string::npos);
    CHECK_FALSE(position.error().remedy.empty());
  }
}

}  // namespace

TEST_CASE("an error marks a missing part after the text") {
  check_refused({{"", 0, "no number"},
                 {"   ", 3, "no number"},
                 {"44", 2, "longitude is missing"},
                 {"44.4N", 5, "longitude is missing"},
                 {"44 26 N", 7, "longitude is missing"},
                 {"44\u00B026'", 7, "longitude is missing"},
                 {"44:26:06.8", 10, "longitude is missing"},
                 {"lat 44", 6, "longitude is missing"},
                 {"71.6W", 5, "latitude is missing"},
                 {"19N 287027", 10, "northing is missing"},
                 {"UTM 19N", 7, "easting is missing"},
                 {"UTM 287027 4923696", 4, "zone is missing"},
                 {"19TBK", 5, "too coarse"},
                 {"19TBK12", 7, "too coarse"}});
}

TEST_CASE("an error marks a number out of range") {
  check_refused({{"91 20", 0, "latitude is over 90"},
                 {"-91 20", 1, "latitude is over 90"},
                 {"151.2 -33.8", 0, "latitude is over 90"},
                 {"20E 95N", 4, "latitude is over 90"},
                 {"90\u00B000'01\"N 0E", 0, "latitude is over 90"},
                 {"44.4N 181W", 6, "longitude is over 180"},
                 {"44.4 -180.1", 6, "longitude is over 180"},
                 {"44.4 360.1", 5, "longitude is over 360"},
                 {"44 60.5 N 71 40 W", 3, "60.5 minutes are 60 or more"},
                 {"44 26 60 N 71 40 0 W", 6, "60 seconds are 60 or more"},
                 {"44\u00B026'\u202F61\" -71", 10, "61 seconds are 60 or more"},
                 {"442606 714033", 0, "too large for degrees"},
                 {"N 442606 W 714033", 2, "too large for degrees"},
                 {"1234567890123456789 7", 0, "too long"}});
}

TEST_CASE("duplicate, contradicting or missing hemisphere letters are errors") {
  check_refused({{"44N 71N", 6, "both latitudes"},
                 {"44.4E 71W", 8, "both longitudes"},
                 {"lat 44 lat 71", 7, "both latitudes"},
                 {"44.4 N N 71.6 W", 7, "N has no number"},
                 {"44.4N 71.6", 6, "east or west is missing"},
                 {"44.4 71.6W", 0, "north or south is missing"},
                 {"44.4N 71.6 -", 11, "sign"},
                 {"-44.4N 71.6W", 0, "both a sign and N"},
                 {"44.4 - 71.6", 5, "sign"},
                 {"lat 44.4 W lon 71.6", 9, "W does not belong to lat"},
                 {"44.4 lat -71.6", 0, "no label"},
                 {"N44.4 71.6W", 11, "number is missing after W"},
                 {"lat lon 44 71", 4, "number is missing after lat"},
                 {"33d52m7.7s 151d12m33e", 0, "north or south is missing"}});
}

TEST_CASE("ambiguous text is an error that asks") {
  check_refused({{"44,435217,71,675993", 2, "comma"},
                 {"44,5 30", 2, "comma"},
                 {"44,26,06 71,40,33", 2, "comma"},
                 {"44-71", 2, "hyphen"},
                 {"44-26-06 71-40-33", 2, "hyphen"},
                 {"44.4 O 71", 5, "O can mean east or west"}});
}

TEST_CASE("an error marks text that does not belong") {
  check_refused({{"hello", 0, "hello"},
                 {"44.4, -71.6 x", 12, "x"},
                 {"44.4 \u00A7 71", 5, "\u00A7"},
                 {"44.4 \xFF 71", 5, "byte FF"},
                 {"44.4 \xE2\x80", 5, "byte E2"},
                 {"44.4, -71.6 12 13", 12, "minutes follow a fraction"},
                 {"44.4.3 71", 4, "second point"},
                 {"44.4, . 71", 6, "point has no digits"},
                 {"44.4, -71.6,", 11, "nothing after"},
                 {", 44 71", 0, "no coordinate before"},
                 {"44.4,, 71", 5, "no coordinate before"},
                 {"44 26 06 10 N 71 W", 9, "fourth number"},
                 {"44; 71; 12", 8, "third coordinate"},
                 {"44' 71'", 2, "does not mark degrees"},
                 {"44\u00B026\"N 71W", 6, "does not mark minutes"},
                 {"\u00B044 71", 0, "no number before"},
                 {"44.5\u00B030'N 71W", 6, "minutes follow a fraction of degrees"},
                 {":44 71", 0, "is not between"},
                 {std::string("44.4 \0 71", 9), 5, "byte 00"}});
}

TEST_CASE("grid references without a place are errors") {
  check_refused({{"61N 287027 4923696", 0, "no UTM zone 61"},
                 {"0N 287027 4923696", 0, "no UTM zone 0"},
                 {"19I 287027 4923696", 2, "neither a hemisphere nor a band"},
                 {"19R 287027 4923696", 2, "band R has latitudes from 24 to 32"},
                 {"19N 2870 4923696", 4, "easting 2870 is not within"},
                 {"19N 4923696 287027", 4, "easting 4923696 is not within"},
                 {"19S 287027 300000", 11, "northing 300000 is not within"},
                 {"11S 386500 3768500", 2, "S can mean south or"},
                 {"3768500 386500 11s", 0, "easting 3768500 is not within"},
                 {"386500 3768500 11s", 17, "S can mean south or"},
                 {"19N 287027 4923696 7", 19, "ends with its northing"},
                 {"19N 287027 kE 4923696", 11, "kE"},
                 {"UPS N 100000 2000000", 6, "easting 100000 is not within"},
                 {"19TBK87027 2369", 11, "4 digits of northing after 5"},
                 {"19TBK870272369", 13, "odd number of digits"},
                 {"19TBK 87 02 723696", 12, "third group"},
                 {"19TBK8702723696x", 15, "ends with its digits"},
                 {"19TBI8702723696", 4, "letter I"},
                 {"19IBK8702723696", 2, "no latitude band I"},
                 {"67TBK8702723696", 0, "no zone 67"},
                 {"19TZZ8702723696", 3, "19T has no square ZZ"},
                 {"19TBK " + std::string(24, '1'), 28, "too many digits"}});
}
