#include "tests/support/child_program.hpp"
#include "tests/support/temporary_folder.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

// The verb `gears` in the practice area, as a child process.
namespace mastwise {
namespace {

using nlohmann::json;
using Arguments = std::vector<std::string>;

constexpr const char* kDisc = "Omnidirectional roof disc with amplifier";
constexpr const char* kCrankUp = "Bidirectional crank-up with amplifier";
constexpr const char* kPole = "Long Yagi on a pole with amplifier";

test::ChildProgram::Ended run_gears(const Arguments& arguments) {
  const test::TemporaryFolder data;
  return test::run_program(arguments, data.file("data"));
}

json gears_json(Arguments arguments) {
  arguments.push_back("--json");
  const auto ended = run_gears(arguments);
  INFO(ended.errors << ended.output);
  REQUIRE(ended.status == 0);
  const json read = json::parse(ended.output, nullptr, false);
  REQUIRE_FALSE(read.is_discarded());
  return read;
}

}  // namespace

TEST_CASE("gears: each gear's chances are those of its own survey") {
  const json told = gears_json({"gears", "--with", kDisc, "--with", kPole});
  CHECK(told.at("practice") == true);
  REQUIRE(told.at("gears").size() == 3);
  // The lowest first; the default preset is the crank-up.
  CHECK(told.at("gears")[0].at("gear") == kDisc);
  CHECK(told.at("gears")[1].at("gear") == kCrankUp);
  CHECK(told.at("gears")[2].at("gear") == kPole);
  for (const json& row : told.at("gears")) {
    std::map<std::string, double> chances;
    const json survey = gears_json({"survey", "--gear", row.at("gear").get<std::string>()});
    for (const json& station : survey) {
      if (station.at("chance").is_number()) {
        chances[station.at("call_sign").get<std::string>()] = station.at("chance").get<double>();
      }
    }
    std::size_t likely = 0;
    REQUIRE(row.at("networks").size() == told.at("networks").size());
    for (const json& network : row.at("networks")) {
      INFO(network.dump());
      CHECK(network.at("chance").get<double>() ==
            Approx(chances.at(network.at("call_sign").get<std::string>())));
      likely += network.at("chance").get<double>() >= 69.5 ? 1 : 0;
    }
    CHECK(row.at("likely") == likely);
  }
}

TEST_CASE("gears: every likely network has a sector around its station's bearing") {
  const json told = gears_json({"gears", "--with", kPole});
  std::map<std::string, double> bearings;
  for (const json& station : gears_json({"survey"})) {
    bearings[station.at("call_sign")] = station.at("bearing_true_deg").get<double>();
  }
  for (const json& row : told.at("gears")) {
    double sum_deg = 0.0;
    std::size_t stations = 0;
    for (const json& sector : row.at("keep_clear")) {
      const double from_deg = sector.at("from_true_deg"), length_deg = sector.at("length_deg");
      sum_deg += length_deg;
      for (const json& station : sector.at("stations")) {
        ++stations;
        const double into_deg =
            std::fmod(station.at("bearing_true_deg").get<double>() - from_deg + 360.0, 360.0);
        // Never nearer to an edge than the error of the direction alone, 6 degrees.
        CHECK(into_deg > 6.0);
        CHECK(into_deg < length_deg - 6.0);
        const std::string title = station.at("title");
        CHECK(station.at("bearing_true_deg").get<double>() ==
              Approx(bearings.at(title.substr(0, title.find(' ')))));
      }
    }
    for (const json& arc : row.at("free")) sum_deg += arc.at("length_deg").get<double>();
    CHECK(sum_deg == Approx(360.0));
    CHECK(stations > 0);
    CHECK(stations <= row.at("likely"));
  }
}

TEST_CASE("gears: what is wanted decides the sectors, and the text says the same") {
  const json told = gears_json({"gears", "--with", kDisc, "--want", "qbpa", "--network", "harrow"});
  for (const json& row : told.at("gears")) {
    std::set<std::string> titles;
    for (const json& sector : row.at("keep_clear")) {
      for (const json& station : sector.at("stations")) titles.insert(station.at("title"));
    }
    CHECK(titles.size() == 2);
    CHECK(titles.contains("QBPA 6.1"));
  }
  const auto text = run_gears({"gears", "--with", kDisc});
  REQUIRE(text.status == 0);
  CHECK(text.output.find("PRACTICE") == 0);
  const json plain = gears_json({"gears", "--with", kDisc});
  for (const json& row : plain.at("gears")) {
    const std::string line = row.at("gear").get<std::string>() + ": " + row.at("likely").dump() +
                             " of " + std::to_string(plain.at("networks").size()) + " networks";
    INFO(line);
    CHECK(text.output.find(line) != std::string::npos);
  }
  // Every preset without --with.
  CHECK(gears_json({"gears"}).at("gears").size() == 11);
}

TEST_CASE("gears: an unknown gear or station is refused by name") {
  const auto gear = run_gears({"gears", "--with", "Moon dish"});
  CHECK(gear.status == 1);
  CHECK(gear.errors.find("Moon dish") != std::string::npos);
  const auto station = run_gears({"gears", "--want", "QZZZ"});
  CHECK(station.status == 1);
  CHECK(station.errors.find("QZZZ") != std::string::npos);
}

}  // namespace mastwise
