#include "tests/support/child_program.hpp"
#include "tests/support/temporary_folder.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace mastwise;
using nlohmann::json;

namespace {

test::ChildProgram::Ended run(const std::vector<std::string>& arguments) {
  const test::TemporaryFolder data;
  return test::run_program(arguments, data.file("data"));
}

json printed(const std::vector<std::string>& arguments) {
  const auto ended = run(arguments);
  INFO(ended.errors << ended.output);
  REQUIRE(ended.status == 0);
  return json::parse(ended.output);
}

}  // namespace

TEST_CASE("places finds towns by name, with distance and bearing from a position", "[places]") {
  const json plain = printed({"places", "Bend OR", "--json"});
  REQUIRE_FALSE(plain.empty());
  const json& bend = plain.front();
  CHECK(bend.at("name") == "Bend");
  CHECK(bend.at("country") == "US");
  CHECK(bend.at("admin") == "OR");
  // Bend is at 44.06 N, 121.32 W (as on maps, from memory).
  CHECK(bend.at("latitude_deg").get<double>() == Approx(44.06).margin(0.01));
  CHECK(bend.at("longitude_deg").get<double>() == Approx(-121.32).margin(0.01));
  CHECK(bend.at("population").get<int>() > 50'000);
  CHECK_FALSE(bend.contains("distance_m"));
  // 1 degree of the meridian south of 44.0582 N is 111.1 km.
  const json near = printed({"places", "Bend OR", "--near", "43.0582,-121.3153", "--json"});
  CHECK(near.front().at("distance_m").get<double>() == Approx(111'100.0).margin(100.0));
  CHECK(near.front().at("bearing_true_deg").get<double>() == Approx(0.0).margin(0.1));
  CHECK(printed({"places", "qzqzqzqz", "--json"}) == json::array());
}

TEST_CASE("places prints the town near a position", "[places]") {
  const json near = printed({"places", "--nearest", "44.0582,-121.0750", "--json"});
  CHECK(near.at("name") == "Bend");
  CHECK(near.at("text") == "12 mi E of Bend, OR");
  CHECK(run({"places", "--nearest", "44.0582,-121.3153"}).output.substr(0, 13) == "near Bend, OR");
  CHECK(run({"places"}).status == 2);
  CHECK(run({"places", "Bend", "--near", "north"}).status == 1);
}
