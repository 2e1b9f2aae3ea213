#include "tests/support/child_program.hpp"
#include "tests/support/made_raster.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace mastwise;
using nlohmann::json;

namespace {

class Import {
 public:
  test::ChildProgram::Ended run(std::vector<std::string> arguments) const {
    arguments.insert(arguments.begin(), "import");
    return test::run_program(arguments, data_.file("data"));
  }
  json printed(const std::vector<std::string>& arguments, int status = 0) const {
    const auto ended = run(arguments);
    INFO(ended.errors << ended.output);
    REQUIRE(ended.status == status);
    const json read = json::parse(ended.output, nullptr, false);
    REQUIRE(read.is_object());
    return read;
  }
  std::string file(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories(std::filesystem::path(data_.file(name)).parent_path());
    std::ofstream(data_.file(name), std::ios::binary) << text;
    return data_.file(name);
  }
  std::string path(const std::string& name) const { return data_.file(name); }

 private:
  test::TemporaryFolder data_;
};

// PRACTICE: invented.
const std::string kForeign =
    "Call,Chan,Lat,Lon,ERP kW\nQAAB,23,44.5,100.25,10\nQAAC,9,44.6,101.5,5\n";

}  // namespace

TEST_CASE("import shows its guess of a foreign table and imports only an accepted guess") {
  const Import import;
  const std::string table = import.file("foreign.csv", kForeign);
  const json shown = import.printed({"stations", table, "--json"}, 1);
  CHECK(shown.at("imported") == false);
  CHECK(shown.at("guess").at("longitude").at("column") == "Lon");
  CHECK(shown.at("doubts").at(0).at("field") == "longitude");
  CHECK(shown.at("doubts").at(0).at("assumed") == "east");
  CHECK(shown.at("sample").at(0).at("longitude_deg").get<double>() == Approx(100.25));

  const auto text = import.run({"stations", table, "--choose", "longitude=west"});
  CHECK(text.status == 1);
  CHECK(text.output.find("In doubt: longitude read as west") != std::string::npos);
  CHECK(text.output.find("-100.25") != std::string::npos);
  CHECK(text.errors.find("nothing imported") != std::string::npos);

  const json done =
      import.printed({"stations", table, "--choose", "longitude=west", "--accept-guess", "--json"});
  CHECK(done.at("stations_added") == 2);
  const auto wrong = import.run({"stations", table, "--choose", "longitude=up"});
  CHECK(wrong.status == 1);
  CHECK(wrong.errors.find("does not match a doubtful field") != std::string::npos);
}

TEST_CASE("a second import prints new, gone and moved stations") {
  const Import import;
  const std::string header = "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n";
  const std::string table =
      import.file("own.csv", header + "QAAB,ATSC,23,44,-100\nQAAC,ATSC,9,45,-100\n");
  import.printed({"stations", table, "--json"});
  import.file("own.csv", header + "QAAB,ATSC,23,44.1,-100\nQAAD,ATSC,9,46,-100\n");
  const auto text = import.run({"stations", table});
  CHECK(text.output.find("  QAAD: New on RF 9.\n  QAAC: Gone; it was on RF 9.\n"
                         "  QAAB: Site moved 11.1 km.\n") != std::string::npos);
  import.file("own.csv", header + "QAAB,ATSC,31,44.1,-100\nQAAD,ATSC,9,46,-100\n");
  const json changed = import.printed({"stations", table, "--near", "46,-100", "--json"});
  CHECK(changed.at("stations_on_other_channel") == 1);
  CHECK(changed.at("changes_not_listed") == 0);
  REQUIRE(changed.at("changes").size() == 1);
  const json& one = changed.at("changes").at(0);
  CHECK(one.at("kind") == "changed");
  CHECK(one.at("call_sign") == "QAAB");
  CHECK(one.at("rf_channel") == "31");
  CHECK(one.at("rf_channel_before") == "23");
  // 1.9 degrees of the meridian, 111.1 km each at 45 degrees north [WGS84].
  CHECK(one.at("distance_m").get<double>() == Approx(211'180.0).margin(100.0));
}

TEST_CASE("a mapping imports a folder of joined tables, and a table adds programs") {
  const Import import;
  import.file("set/facility.dat", "fac|call|app|^|\n17|QAAB|a1|^|\n");
  import.file("set/place.dat", "app|ch|lat|lon|^|\na1|23|44.5|-100.25|^|\n");
  const std::string mapping = import.file("set.json", R"({
    "source": {"name": "set"}, "separator": "|", "record_end": "|^|", "raster": "ATSC",
    "datum": "WGS84",
    "tables": [{"name": "f", "file": "facility.dat"},
               {"name": "p", "file": "place.dat", "key": "app", "joins": "f.app"}],
    "latitude": {"notation": "decimal", "column": "p.lat", "positive": "north"},
    "longitude": {"notation": "decimal", "column": "p.lon", "positive": "east"},
    "fields": {"call_sign": "f.call", "rf_channel": "p.ch"}})");
  const json done =
      import.printed({"stations", import.path("set"), "--mapping", mapping, "--json"});
  CHECK(done.at("stations_added") == 1);
  const auto without = import.run({"stations", import.path("set")});
  CHECK(without.status == 1);
  CHECK(without.errors.find("give a mapping of joined tables") != std::string::npos);

  const std::string lineup = import.file(
      "lineup.csv", "call_sign,virtual_channel,network\nQAAB,6.1,Northlight\nQAAZ,7.1,Harrow\n");
  const json added = import.printed({"programs", lineup, "--json"});
  CHECK(added.at("stations") == 1);
  CHECK(added.at("strangers") == json::array({"QAAZ"}));
  CHECK(import.run({"programs", import.path("none.csv")}).status == 1);
}

TEST_CASE("land cover is imported by its own codes or by the class table given") {
  const Import import;
  const std::string raster = import.file("cover.tif", "");
  test::write_codes(
      raster, {.columns = 90, .rows = 90, .left = -71.9, .top = 44.6, .spacing = 1.0 / 1200.0},
      [](int column, int) { return column < 40 ? 30 : 80; });
  const auto unsure = import.run({"landcover", raster});
  CHECK(unsure.status == 1);
  CHECK(unsure.errors.find("choose the class table: Copernicus LC100") != std::string::npos);
  const auto done = import.run({"landcover", raster, "--classes", "esa worldcover", "--json"});
  REQUIRE(done.status == 0);
  const json read = json::parse(done.output, nullptr, false);
  REQUIRE(read.is_array());
  CHECK(read.at(0).at("classes") == "ESA WorldCover");
  CHECK(read.at(0).at("tiles") == json::array({"N44W072"}));
  CHECK(read.at(0).at("new_areas") == 90 * 90);
  CHECK(std::filesystem::exists(import.path("data/landcover/N44W072.cover")));

  const std::string own = import.file("own.json", R"({"name": "Q", "notice": "(c) Q",
    "classes": {"80": {"name": "Forest", "class": "trees"}}})");
  const auto text =
      import.run({"landcover", raster, "--classes", own, "--landcover", import.path("tiles")});
  CHECK(text.status == 0);
  CHECK(text.output.find("Q, 1 tiles, 4500 new areas") != std::string::npos);
  CHECK(text.output.find("(c) Q") != std::string::npos);
  CHECK(text.output.find("does not list stay unknown: 30") != std::string::npos);
  const std::string faulty = import.file("faulty.json", R"({"name": "Q"})");
  const auto refused = import.run({"landcover", raster, "--classes", faulty});
  CHECK(refused.status == 1);
  CHECK(refused.errors.find("faulty.json") != std::string::npos);
  CHECK(refused.errors.find("notice") != std::string::npos);
}

TEST_CASE("positions at sea stop an import, and a reading is asked for") {
  const Import import;
  // PRACTICE: the western plains with the latitude's sign turned, in the ocean.
  const std::string table =
      import.file("turned.csv",
                  "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n"
                  "QAAB,ATSC,23,-44.1,-100.2\nQAAC,ATSC,9,-44.5,-100.9\nQAAD,ATSC,9,-43.6,-99.3\n");
  const auto stopped = import.run({"stations", table});
  CHECK(stopped.status == 1);
  CHECK(stopped.errors.find("far from any town") != std::string::npos);
  CHECK(stopped.errors.find("-44.100, -100.200") != std::string::npos);
  CHECK(stopped.errors.find("44.100, -100.200; ") != std::string::npos);
  CHECK(stopped.errors.find("--positions latitude-turned") != std::string::npos);
  CHECK(import.printed({"stations", table, "--positions", "latitude-turned", "--json"})
            .at("stations_added") == 3);
  CHECK(import.printed({"stations", table, "--positions", "as-read", "--json"})
            .at("stations_moved") == 3);
  CHECK(import.run({"stations", table, "--positions", "upside-down"}).status == 1);
}

TEST_CASE("UTF-16 is imported, and told") {
  const Import import;
  std::string text = "\xFF\xFE";
  for (const char c : std::string("call_sign,raster,rf_channel,latitude_deg,longitude_deg\n"
                                  "QAAB,ATSC,23,44,-100\n")) {
    text += c;
    text += '\0';
  }
  const json done = import.printed({"stations", import.file("wide.csv", text), "--json"});
  CHECK(done.at("stations_added") == 1);
  CHECK(done.at("remarks").at(0) == "the text is UTF-16");
}
