#include "core/stations/transmit_pattern.hpp"

#include <limits>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

TransmitPattern pattern(const std::string& text) {
  auto read = parse_transmit_pattern(text);
  REQUIRE(read);
  return std::move(read).value();
}

double loss_db(const TransmitPattern& pattern, double azimuth_deg) {
  return pattern.loss_db(Bearing<True>::degrees(azimuth_deg));
}

const std::string kFour = "0 1; 90 0.5; 180 0.1; 270 0.7071";

}  // namespace

TEST_CASE("a relative field in decibels is its 20 log") {
  // Worked by hand: 20 log 0.5 = -6.0206, 20 log 0.1 = -20, 20 log 0.7071 = -3.0103.
  const auto four = pattern(kFour);
  CHECK(loss_db(four, 0.0) == Approx(0.0).margin(1e-9));
  CHECK(loss_db(four, 90.0) == Approx(6.0206).margin(0.0001));
  CHECK(loss_db(four, 180.0) == Approx(20.0).margin(0.0001));
  CHECK(loss_db(four, 270.0) == Approx(3.0103).margin(0.001));
}

TEST_CASE("between two points the field is linear, also across north") {
  const auto field = [](const TransmitPattern& p, double azimuth_deg) {
    return p.relative_field(Bearing<True>::degrees(azimuth_deg));
  };
  const auto four = pattern(kFour);
  CHECK(field(four, 45.0) == Approx(0.75));
  CHECK(field(four, 120.0) == Approx(0.5 - 0.4 / 3.0));
  CHECK(field(four, 359.0) == Approx(1.0 - 0.2929 / 90.0));
  const auto north = pattern("10 0.8; 100 1; 190 1; 280 1; 350 0.4");
  CHECK(field(north, 0.0) == Approx(0.6));
  CHECK(field(north, 355.0) == Approx(0.5));
  CHECK(field(north, 5.0) == Approx(0.7));
  CHECK(field(north, 359.9999999999) == Approx(0.6));
}

TEST_CASE("a pattern's rotation turns it clockwise") {
  const auto turned = TransmitPattern::from_points(pattern(kFour).points(), 100.0);
  REQUIRE(turned);
  CHECK(loss_db(*turned, 100.0) == Approx(0.0).margin(1e-9));
  CHECK(loss_db(*turned, 280.0) == Approx(20.0).margin(0.0001));
  CHECK(loss_db(*turned, 10.0) == Approx(loss_db(pattern(kFour), 270.0)));
}

TEST_CASE("a null is at most 40 dB deep") {
  CHECK(loss_db(pattern("0 1; 90 0; 180 1; 270 1"), 90.0) == Approx(40.0));
}

TEST_CASE("a pattern reads back from its text") {
  const auto odd = pattern("0 0.123; 72.5 0.9871; 144 1; 216 0.333; 288 0.001");
  CHECK(pattern(to_text(odd)) == odd);
  CHECK(to_text(pattern("360 0.5; 90 1; 180 1; 270 1; 0 0.5")) == "0 0.5; 90 1; 180 1; 270 1");
}

TEST_CASE("an invalid pattern is an error") {
  const auto fault = [](const std::string& text) {
    const auto read = parse_transmit_pattern(text);
    return read ? std::string("none") : read.error().what;
  };
  CHECK(fault("") == "the pattern has no points");
  CHECK(fault("0 1; 90 1.2; 180 1; 270 1") ==
        "the relative field 1.2 at 90 degrees is not within 0 to 1");
  CHECK(fault("0 1; 400 1") == "the azimuth 400 is not within 0 to 360");
  CHECK(fault("0 1; 90 1; 90 0.5; 180 1; 270 1") ==
        "the pattern has the fields 1 and 0.5 at 90 degrees");
  CHECK(fault("0 1; 90 1; 200 1; 280 1") == "the pattern has no points between 90 and 200 degrees");
  CHECK(fault("20 1; 100 1; 190 1; 280 1") ==
        "the pattern has no points between 280 and 20 degrees");
  CHECK(fault("0 1; north 1") == "\"north 1\" is not an azimuth and a relative field");
  CHECK_FALSE(TransmitPattern::from_points(pattern(kFour).points(),
                                           std::numeric_limits<double>::quiet_NaN()));
}
