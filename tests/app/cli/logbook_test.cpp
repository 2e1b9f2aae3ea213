#include "core/logbook/logbook.hpp"

#include "tests/support/child_program.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <fstream>
#include <map>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

// The logbook's verbs, with Mastwise itself as a child process.
using namespace mastwise;
using nlohmann::json;
using Arguments = std::vector<std::string>;

namespace {

class Tablet {
 public:
  std::string path(const std::string& name) const { return folder_.file(name); }
  test::ChildProgram::Ended run(const Arguments& arguments) const {
    return test::run_program(arguments, path("data"));
  }
  json printed(Arguments arguments) const {
    arguments.push_back("--json");
    const auto ended = run(arguments);
    INFO(ended.errors << ended.output);
    REQUIRE(ended.status == 0);
    return json::parse(ended.output, nullptr, false);
  }
  LogbookContent own() const {
    auto logbook = Logbook::open(path("data/logbook"));
    REQUIRE(logbook);
    return *logbook->content();
  }
  void fill() const {
    std::filesystem::create_directories(path("data"));
    auto logbook = Logbook::open(path("data/logbook"));
    REQUIRE(logbook->put(test::full_stop("a1")));
    REQUIRE(logbook->put(test::full_outcome("a1")));
    REQUIRE(logbook->put(test::sweep_record("s1", "a1")));
  }

 private:
  test::TemporaryFolder folder_;
};

}  // namespace

TEST_CASE("another tablet imports an exported logbook, as a table or a backup", "[logbook]") {
  const Tablet dash, hand;
  dash.fill();
  const json written = dash.printed({"export", "logbook", "--csv", dash.path("t.csv"), "--gpx",
                                     dash.path("t.gpx"), "--backup", dash.path("backup")});
  CHECK(written.at("written").size() == 3);
  CHECK(written.at("stops") == 1);
  CHECK(test::read_file(dash.path("t.gpx")).find("<wpt ") != std::string::npos);

  json taken = hand.printed({"import", "logbook", dash.path("t.csv")});
  CHECK(taken.at("stops").at("added") == 1);
  CHECK(taken.at("outcomes").at("added") == 1);
  CHECK(taken.at("sweeps").at("added") == 0);
  taken = hand.printed({"import", "logbook", dash.path("backup")});
  // The table's figures are rounded; those of the backup replace them.
  CHECK(taken.at("outcomes").at("renewed") == 1);
  CHECK(taken.at("sweeps").at("added") == 1);
  CHECK(hand.own() == dash.own());
  const auto again = hand.run({"import", "logbook", dash.path("backup")});
  CHECK(again.output.find("sweeps: 0 new, 0 newer, 1 the same, 0 older than here") !=
        std::string::npos);
}

TEST_CASE("import refuses a file that is not a logbook and names its path", "[logbook]") {
  const Tablet tablet;
  std::ofstream(tablet.path("places.gpx")) << "<gpx/>";
  const auto refused = tablet.run({"import", "logbook", tablet.path("places.gpx")});
  CHECK(refused.status == 1);
  CHECK(refused.errors.find(tablet.path("places.gpx")) != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(tablet.path("data/logbook")));

  const auto empty = tablet.run({"export", "logbook", "--csv", tablet.path("t.csv")});
  CHECK(empty.status == 1);
  CHECK(empty.errors.find("no logbook found") != std::string::npos);
  CHECK_FALSE(std::filesystem::exists(tablet.path("t.csv")));
  tablet.fill();
  CHECK(tablet.run({"export", "logbook"}).errors.find("add --csv FILE") != std::string::npos);
}

// Twenty stations that should come in well and do not: as on the screens, the forecast follows.
TEST_CASE("the survey of the command line learns from your logbook as the screens do") {
  const Tablet tablet;
  std::filesystem::create_directories(tablet.path("data"));
  test::fill_catalog(tablet.path("data/catalog"));
  const Arguments survey{"survey", "--at", "42.51,-118.53"};
  const auto chances = [&] {
    std::map<std::pair<int, std::string>, double> found;  // by channel and call sign
    for (const json& row : tablet.printed(survey)) {
      if (!row.at("chance").is_number()) continue;
      found[{row.at("rf_channel").get<int>(), row.at("call_sign").get<std::string>()}] =
          row.at("chance").get<double>();
    }
    return found;
  };
  const auto before = chances();
  {
    auto logbook = Logbook::open(tablet.path("data/logbook"));
    REQUIRE(logbook);
    for (int stop = 0; stop < 5; ++stop) {
      const std::string id = "s" + std::to_string(stop);
      REQUIRE(logbook->put(test::stop_record(id, 30.0 + stop, -100.0, stop)));
      for (int station = 0; station < 4; ++station) {
        OutcomeRecord outcome =
            test::outcome_record(id, "Q" + std::to_string(station), Outcome::nothing, stop);
        outcome.band = Band::uhf;
        outcome.margin_db = 12.0;
        outcome.deviation_db = 8.0;
        REQUIRE(logbook->put(outcome));
      }
    }
  }
  const auto after = chances();
  REQUIRE(after.size() == before.size());
  int lower = 0;
  for (const auto& [name, percent] : before) {
    INFO(name.second << ", RF " << name.first);
    if (name.first >= 14) {
      // The bias is uncertain too, so a small chance may grow a little.
      // Without terrain both may be at the cap of 89.
      if (percent > 50.0) CHECK(after.at(name) <= percent);
      if (percent > 50.0 && percent < 89.0) CHECK(after.at(name) < percent);
      lower += after.at(name) < percent ? 1 : 0;
    } else {
      CHECK(after.at(name) == percent);
    }
  }
  CHECK(lower >= 5);
}
