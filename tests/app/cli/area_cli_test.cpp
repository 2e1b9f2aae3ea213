#include "tests/support/child_program.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

// The verbs scan and compare, as child processes.
using namespace mastwise;
using nlohmann::json;

TEST_CASE("scan prints an area with its best spots and draws it", "[areacli]") {
  const test::TemporaryFolder data;
  const std::string picture = data.file("area.png");
  const auto ended = test::run_program({"scan", "--station", "QBPA", "--radius-km", "2", "--cells",
                                        "40", "--png", picture, "--json"},
                                       data.file("data"));
  INFO(ended.errors);
  REQUIRE(ended.status == 0);
  CHECK(ended.errors.find("QBPA: 100 %") != std::string::npos);
  const json area = json::parse(ended.output, nullptr, false);
  REQUIRE(area.is_object());
  CHECK(area.at("practice") == true);
  CHECK(area.at("cells") == 40);
  CHECK(area.at("cell_m").get<double>() == Approx(100.0));
  REQUIRE(area.at("chance").size() == 1600);
  for (const json& chance : area.at("chance")) {
    REQUIRE(chance.is_number());  // the practice hills have no holes
    CHECK(chance.get<double>() >= 0.0);
    CHECK(chance.get<double>() <= 100.0);
  }
  for (const json& spot : area.at("best_spots")) {
    CHECK(spot.at("distance_m").get<double>() <= 2000.0);
    CHECK(spot.at("gain").get<double>() >= 5.0);
  }
  CHECK(test::read_file(picture).substr(1, 3) == "PNG");

  const auto nobody = test::run_program({"scan", "--station", "QQQQ"}, data.file("data"));
  CHECK(nobody.status == 1);
  CHECK(nobody.errors.find("QQQQ") != std::string::npos);
}

TEST_CASE("compare prints places side by side", "[areacli]") {
  const test::TemporaryFolder data;
  const auto ended =
      test::run_program({"compare", "--practice", "--at", "42.5,-118.5", "--at", "42.8,-118.2",
                         "--network", "Basin Public", "--want", "QNLA,QQQQ", "--json"},
                        data.file("data"));
  INFO(ended.errors);
  REQUIRE(ended.status == 0);
  const json table = json::parse(ended.output, nullptr, false);
  REQUIRE(table.is_object());
  CHECK(table.at("practice") == true);
  REQUIRE(table.at("places").size() == 2);
  for (const json& place : table.at("places")) {
    const json& offers = place.at("offers");
    REQUIRE(offers.size() == 3);
    CHECK(offers[0].at("wish") == "Basin Public");
    CHECK(offers[0].at("offer").at("chance").is_number());
    CHECK(offers[1].at("offer").at("call_sign") == "QNLA");
    CHECK(offers[2].at("offer").is_null());  // no such station
    CHECK(place.at("weakest_chance") == 0.0);
    CHECK(place.at("granted") == 2);
  }
  // One place alone is nothing to compare: wrong usage.
  CHECK(test::run_program({"compare", "--practice", "--at", "42.5,-118.5"}, data.file("data"))
            .status == 2);
}
