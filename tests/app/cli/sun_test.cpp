#include "tests/support/child_program.hpp"
#include "tests/support/temporary_folder.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace mastwise;
using nlohmann::json;

namespace {

test::ChildProgram::Ended run_sun(const std::vector<std::string>& arguments) {
  const test::TemporaryFolder data;
  return test::run_program(arguments, data.file("data"));
}

json printed(const std::string& place, const std::string& time) {
  const auto ended = run_sun({"sun", "--at", place, "--time", time, "--json"});
  INFO(ended.errors << ended.output);
  REQUIRE(ended.status == 0);
  return json::parse(ended.output);
}

}  // namespace

// Source: PyEphem 4.1.4 (libastro): 101.9074 and 12.0165 degrees.
TEST_CASE("sun prints the shadow of a morning", "[sky]") {
  const json sky = printed("44.27056,-71.30327", "2025-03-20T12:00:00Z");
  CHECK(sky.at("azimuth_deg").get<double>() == Approx(101.9074).margin(0.001));
  CHECK(sky.at("elevation_deg").get<double>() == Approx(12.0165).margin(0.001));
  CHECK(sky.at("shadow_deg").get<double>() == Approx(281.9074).margin(0.001));
  CHECK(sky.at("shadow_in_5_min_deg").get<double>() > 281.9074);
  // A minute of clock error is 0.2 to 1 degree: common practice, no source.
  CHECK(sky.at("error_per_clock_minute_deg").get<double>() == Approx(0.2).margin(0.05));
  CHECK(!sky.contains("why"));
  CHECK(sky.at("polaris").is_null());
  CHECK(sky.at("polaris_why") == "it is not dark");
}

// Source: the IAU's SOFA algorithms by ERFA 2.0: azimuth 359.4189, altitude 44.7331 without air,
// which lifts it by 0.0165 (Meeus eq. 16.4 by hand: 1.02' / tan(44.94) = 1.02').
TEST_CASE("sun prints Polaris at night", "[sky]") {
  const json sky = printed("44.27056,-71.30327", "2026-01-15T03:00:00Z");
  CHECK(sky.at("shadow_deg").is_null());
  CHECK(sky.at("shadow_in_5_min_deg").is_null());
  CHECK(sky.at("why") == "the sun is down");
  CHECK(sky.at("polaris").at("azimuth_deg").get<double>() == Approx(359.4189).margin(0.002));
  CHECK(sky.at("polaris").at("altitude_deg").get<double>() == Approx(44.7501).margin(0.002));
}

// Source: PyEphem 4.1.4: Canopus -0.6 and 25.8 degrees up at 206.5, of the bodies in reach of
// Singapore; its marks of the next day as in sun_marks_test.cpp.
TEST_CASE("sun prints the stars that guide and when the shadow marks a heading", "[sky]") {
  const auto ended =
      run_sun({"sun", "--at", "1.2833,103.8333", "--time", "2026-04-10T13:00:00Z", "--json"});
  REQUIRE(ended.status == 0);
  const json sky = json::parse(ended.output);
  CHECK(!sky.contains("shadow_marks"));
  REQUIRE(sky.at("guides").size() == 13);
  CHECK(sky.at("guides").at(0).at("name") == "Jupiter");
  const std::string text =
      run_sun({"sun", "--at", "1.2833,103.8333", "--time", "2026-04-10T13:00:00Z"}).output;
  CHECK(text.find("Canopus           206.5° true, 25.9° over the horizon, sighted to ± 1.1°") !=
        std::string::npos);
  CHECK(text.find("By the shadow") == std::string::npos);

  const auto heading = [](const char* degrees, const char* form) {
    return run_sun({"sun", "--at", "44.27056,-71.30327", "--time", "2026-07-02T14:00:00Z",
                    "--heading", degrees, form});
  };
  const json marks = json::parse(heading("37", "--json").output).at("shadow_marks");
  REQUIRE(marks.size() == 2);
  CHECK(marks.at(0).at("shadow") == "left");
  CHECK(marks.at(0).at("time").get<std::string>().substr(0, 16) == "2026-07-02T15:06");
  CHECK(marks.at(1).at("shadow") == "along");
  CHECK(heading("400", "--json").status != 0);
  const auto words = run_sun(
      {"sun", "--at", "44.27056,-71.30327", "--time", "2026-07-02T14:00:00Z", "--heading", "37"});
  CHECK(words.output.find("at 13:54 EDT the heading is straight along it; it turns 0.48") !=
        std::string::npos);
}

// Alaska is 9 hours behind UTC in winter: the sun of 00:57 UTC sets on the day before.
TEST_CASE("sun's text has the local day, and says whose clocks it follows") {
  const auto anchorage =
      run_sun({"sun", "--at", "61.216667,-149.866667", "--time", "2020-01-05T00:00:00Z"});
  CHECK(anchorage.output.find("4 January 2020, 15:00 AKST") != std::string::npos);
  CHECK(anchorage.output.find("4 January 2020, 15:5") != std::string::npos);
  CHECK(anchorage.output.find("5 January 2020, 10:1") != std::string::npos);
  CHECK(anchorage.output.find("2020-01-0") == std::string::npos);
  const test::TemporaryFolder data;
  const std::vector<std::string> at_sea{"sun", "--at", "40,-40", "--time", "2026-07-02T18:00:00Z"};
  const auto run = [&](const std::vector<std::string>& arguments, const char* folder,
                       const char* zone) {
    return test::ChildProgram(arguments, data.file("data"), {{"TZDIR", folder}, {"TZ", zone}})
        .wait()
        .output;
  };
  const std::string tablets = run(at_sea, "/usr/share/zoneinfo", "America/St_Johns");
  CHECK(tablets.find("2 July 2026, 15:30 NDT") != std::string::npos);
  CHECK(tablets.find("dates follow the tablet's clock, NDT") != std::string::npos);
  // Without tz data nothing is known but UTC.
  const std::string none = run({"sun", "--at", "44.3,-71.3", "--time", "2026-07-02T18:00:00Z"},
                               "/nowhere", "America/St_Johns");
  CHECK(none.find("No time zone known; dates are UTC") != std::string::npos);
  CHECK(none.find("2 July 2026, 18:00 UTC") != std::string::npos);
}

// Source: US Naval Observatory: at Anchorage on 2020-01-05 sunset 00:57Z and sunrise 19:11Z; no
// sun at Longyearbyen on 2020-12-15.
TEST_CASE("sun prints sunrise and sunset, or null", "[sky]") {
  const json anchorage = printed("61.216667,-149.866667", "2020-01-05T00:00:00Z");
  CHECK(anchorage.at("sunset").get<std::string>().substr(0, 15) == "2020-01-05T00:5");
  CHECK(anchorage.at("sunrise").get<std::string>().substr(0, 15) == "2020-01-05T19:1");
  const json svalbard = printed("78.216667,15.633333", "2020-12-15T00:00:00Z");
  CHECK(svalbard.at("sunrise").is_null());
  CHECK(svalbard.at("shadow_changes").is_null());
}

TEST_CASE("sun prints text and refuses a wrong time", "[sky]") {
  const auto text =
      run_sun({"sun", "--at", "44.27056,-71.30327", "--time", "2025-03-20T12:00:00Z"});
  CHECK(text.status == 0);
  CHECK(text.output.find("101.9° true, 12.1° over the horizon") != std::string::npos);
  CHECK(text.output.find("281.9° true") != std::string::npos);
  // 12:00 UTC in New Hampshire, whose daylight time of 2025 began on 9 March.
  CHECK(text.output.find("20 March 2025, 08:00 EDT") != std::string::npos);
  const auto refused = run_sun({"sun", "--at", "44.27056,-71.30327", "--time", "noon"});
  CHECK(refused.status == 1);
  CHECK(refused.errors.find("--time \"noon\"") != std::string::npos);
  const auto practice = run_sun({"sun", "--time", "2026-07-02T18:00:00Z"});
  CHECK(practice.output.find("PRACTICE AREA") == 0);
}
