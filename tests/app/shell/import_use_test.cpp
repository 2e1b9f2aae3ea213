#include "tests/support/licensing_tables.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/tablet.hpp"

#include <algorithm>
#include <chrono>
#include <filesystem>

#include <catch2/catch.hpp>

// Results of touch imports: programs, ages, pinned networks.
using namespace mastwise;
using namespace mastwise::test;

TEST_CASE("a table of programs completes the stations at once") {
  const Tablet tablet;
  tablet.table("own.csv", kOwnHeader + "QOWN,ATSC,30,44.5,-100.2,\n");
  tablet.table("line-up.csv",
               "call_sign,virtual_channel,name,network,language\n"
               "QOWN,6.1,Evening,Harrow,en\nQFAR,7.1,Far,Harrow,fr\n");
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "own.csv");
  stage.tap("take in");
  stage.tap("end practice");
  stand_at(stage, 44.5, -100.3);
  pick(stage, tablet, "line-up.csv");
  CHECK(stage.shows_within("Evening"));
  stage.tap("take in");
  CHECK(report_of(stage).programs.stations == 1);
  CHECK(report_of(stage).programs.strangers == std::vector<std::string>{"QFAR"});
  CHECK(stage.shows_within("QFAR"));
  stage.tap("to stations");
  REQUIRE(stage.model().stations->rows.size() == 1);
  REQUIRE(stage.model().stations->rows[0].station.programs.size() == 1);
  CHECK(stage.model().stations->rows[0].station.programs[0].network == "Harrow");
}

TEST_CASE("the screens show the age of the data where it is chosen and used") {
  const Tablet tablet;
  tablet.table("own.csv", kOwnHeader + "QOWN,ATSC,30,44.5,-100.2,\n");
  // As if the stick's file was written four years before the stage's day.
  const std::string path = (tablet.path() / "stick" / "own.csv").string();
  const auto written = std::chrono::sys_days(std::chrono::year(2022) / 6 / 1);
  std::filesystem::last_write_time(path, std::chrono::file_clock::from_sys(std::chrono::sys_seconds(
                                             written + std::chrono::hours(12))));
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "own.csv");
  CHECK(reading_of(stage, "source.date") == "unknown");
  stage.tap("reading source.date");
  CHECK(reading_of(stage, "source.date") == "2022-06-01");
  stage.tap("take in");
  CHECK(stage.shows_within("Of 2022-06-01, 4 years 1 month old"));
  stage.tap("end practice");
  stand_at(stage, 44.5, -100.3);
  stage.tap("more data");
  stage.tap("places back");
  CHECK(stage.shows("1 station"));
  CHECK(stage.shows("June 2022"));
  CHECK(stage.shows_within("Of 2022-06-01, 4 years 1 month old"));
  CHECK(stage.shows_within("Many channels may have changed"));
  stage.tap("close sheet");
  CHECK(stage.shows_within("Data of 2022-06-01, 4 years 1 month old"));
}

TEST_CASE("a pinned network is found at every stop") {
  const Tablet tablet;
  tablet.table("own.csv",
               "call_sign,raster,rf_channel,latitude_deg,longitude_deg,network,erp_kw,haat_m\n"
               "QWES,ATSC,30,44.5,-100.2,Northlight,100,200\n"
               "QWET,ATSC,31,44.6,-100.2,Harrow,100,200\n"
               "QEAS,ATSC,30,44.5,-80.2,Northlight,100,200\n");
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "own.csv");
  stage.tap("take in");
  stage.tap("end practice");
  stand_at(stage, 44.5, -100.3);
  stage.tap("to stations");
  stage.tap("search");
  stage.tap_keys("NORTHL");
  stage.tap("key Done");
  stage.tap("pin what is searched");
  CHECK(stage.model().settings.pinned_networks == std::vector<std::string>{"Northlight"});
  stage.tap("clear search");
  CHECK(stage.shows_within("Northlight: QWES"));
  const auto brings = [&] {
    std::vector<std::string> all;
    for (const PlanStep& step : stage.model().stations->plan->steps) {
      for (const PlanStation& station : step.brings) {
        if (station.pinned) all.push_back(station.title);
      }
    }
    return all;
  };
  CHECK(brings() == std::vector<std::string>{"QWES"});
  stand_at(stage, 44.5, -80.3);
  CHECK(stage.shows_within("Northlight: QEAS"));
  CHECK(brings() == std::vector<std::string>{"QEAS"});
  stand_at(stage, 10.0, 10.0);
  CHECK(stage.model().list.wanted == std::vector<std::string>{"Northlight: no station here"});
  // By network the ring unpins the network.
  stand_at(stage, 44.5, -100.3);
  stage.tap("list of networks");
  stage.tap("pin network Harrow");
  stage.tap("pin network Northlight");
  CHECK(stage.model().settings.pinned_networks == std::vector<std::string>{"Harrow"});
}

TEST_CASE("a touch imports the regulator's table by its built-in mapping") {
  const auto reference = test::reference("stations/fcc_post_auction_technical_parameters.csv");
  if (!reference) return;
  const Tablet tablet;
  tablet.table("stations.csv", test::read_file(*reference));
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "stations.csv");
  CHECK(stage.shows_within("us_post_auction"));
  CHECK(reading_of(stage, "source.date") == "2017-04-13");
  CHECK(stage.model().data.look->sample.size() == 10);
  stage.tap("take in");
  const IntakeReport& report = report_of(stage);
  CHECK(report.stations.rows_read == 2074);  // from the reference's README
  CHECK(report.stations.stations_added + report.rejected == 2074);
  stage.tap("end practice");
  stand_at(stage, 44.435217, -71.675993);
  stage.tap("to stations");
  // The position in the reference's README, computed there by an independent geodesic.
  const auto& rows = stage.model().stations->rows;
  const auto found = std::find_if(rows.begin(), rows.end(), [](const StationRow& row) {
    return row.station.call_sign == "WLED-TV";
  });
  REQUIRE(found != rows.end());
  REQUIRE(found->outlook);
  CHECK(found->outlook->distance_m == Approx(10'368.18).margin(0.1));
  CHECK(found->outlook->bearing.degrees() == Approx(207.950).margin(0.001));
}

TEST_CASE("a touch imports a whole folder of joined tables") {
  const Tablet tablet;
  std::filesystem::create_directories(tablet.path() / "stick" / "dump");
  for (const auto& [name, text] : licensing_tables()) tablet.table("dump/" + name, text);
  Stage stage(kTablet, tablet.folder());
  stage.tap("place Stations");
  stage.tap("data");
  stage.tap("import data");
  stage.tap("look in " + tablet.folder());
  stage.tap("folder stick");
  stage.tap("folder dump");
  stage.tap("table All tables in this folder (us_lms)");
  CHECK(stage.shows_within("built-in mapping, us_lms"));
  stage.tap("take in");
  CHECK(report_of(stage).stations.stations_added == 1);
  REQUIRE(tablet.with_call_sign("QAAB").size() == 1);
  CHECK(tablet.with_call_sign("QAAB").front().pattern);
  // Up from the folder, step by step, to the start.
  stage.tap("more data");
  stage.tap("look in " + tablet.folder());
  stage.tap("folder stick");
  stage.tap("folder dump");
  stage.tap("folder up");
  stage.tap("folder up");
  CHECK(stage.model().data.question.folder == tablet.folder());
}
