#include "tests/support/sanitized.hpp"
#include "tests/support/tablet.hpp"

#include <filesystem>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// Imports through finger events: corrected, refused and stopped ones.
using namespace mastwise;
using namespace mastwise::test;

namespace {

// PRACTICE: invented. All longitudes are positive though the stations are in the west, and "Post"
// is the channel that counts.
const std::string kForeignTable =
    "Call,Chan,Post,Lat,Lon,ERP kW\n"
    "QAAB,23,31,44.5,100.25,10\n"
    "QAAC,9,11,44.6,101.5,5\n"
    "QAAD,35,12,44.4,100.5,20\n";

std::string doubt_of(const Stage& stage, const std::string& part) {
  for (const IntakeRow& row : stage.model().data.found.rows) {
    if (row.part == part) return row.note;
  }
  return "no such part";
}

void correct_foreign(Stage& stage) {
  reach(stage, "reading rf_channel");
  stage.tap("reading rf_channel");
  reach(stage, "column Post");
  stage.tap("column Post");
  reach(stage, "reading longitude.sign");
  CHECK(stage.shows_within(doubt_of(stage, "longitude.sign")));
  stage.tap("reading longitude.sign");
}

}  // namespace

TEST_CASE("a person picks, corrects and imports a table, and its stations appear") {
  const Tablet tablet;
  tablet.table("west.csv", kForeignTable);
  Stage stage(kTablet, tablet.folder());
  REQUIRE(stage.model().stop.practice);  // without stations
  pick(stage, tablet, "west.csv");
  CHECK(reading_of(stage, "rf_channel") == "Chan");
  CHECK(reading_of(stage, "longitude.sign") == "east");
  REQUIRE(stage.model().data.look->sample.size() == 3);
  CHECK(stage.model().data.look->sample[0].position.longitude_deg() == Approx(100.25));
  CHECK(stage.shows_within("QAAC"));
  CHECK(doubt_of(stage, "longitude.sign") == "All are positive and carry no letter");

  correct_foreign(stage);
  CHECK(reading_of(stage, "rf_channel") == "Post");
  CHECK(reading_of(stage, "longitude.sign") == "west");
  CHECK(stage.model().data.look->sample[0].position.longitude_deg() == Approx(-100.25));
  CHECK(stage.model().data.look->sample[0].rf_channel == "31");
  CHECK(doubt_of(stage, "longitude.sign") == "");

  stage.tap("take in");
  CHECK(report_of(stage).stations.stations_added == 3);
  CHECK(report_of(stage).rejected == 0);
  CHECK(tablet.with_call_sign("QAAB").front().rf_channel.number == 31);

  // The practice area was used only without stations.
  stage.tap("end practice");
  CHECK_FALSE(stage.model().stop.practice);
  stand_at(stage, 44.5, -100.3);
  stage.tap("to stations");
  CHECK(stage.model().place == Place::Stations);
  CHECK(stage.model().sheet == Sheet::None);
  CHECK(listed(stage) == std::vector<std::string>{"QAAB", "QAAC", "QAAD"});
}

TEST_CASE("an update reuses the correction and reports new, gone and moved stations") {
  const Tablet tablet;
  tablet.table("west.csv", kForeignTable);
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "west.csv");
  correct_foreign(stage);
  stage.tap("take in");
  stage.tap("end practice");
  stand_at(stage, 44.5, -100.3);
  // Another source, which must stay.
  tablet.table("own.csv", kOwnHeader + "QOWN,ATSC,30,44.5,-100.2,Northlight\n");
  pick(stage, tablet, "own.csv");
  stage.tap("take in");
  CHECK_FALSE(report_of(stage).first_stations);
  CHECK(stage.targets().find("end practice") == nullptr);
  stage.tap("close sheet");
  CHECK(listed(stage).size() == 4);

  // Under another name it is still that source by most of its call signs.
  tablet.table("west 2027.csv",
               "Call,Chan,Post,Lat,Lon,ERP kW\n"
               "QAAB,23,31,44.7,100.25,10\n"
               "QAAD,35,12,44.4,100.5,20\n"
               "QAAE,7,13,44.4,100.6,1\n");
  pick(stage, tablet, "west 2027.csv");
  CHECK(reading_of(stage, "source.name") == "west.csv");
  CHECK(stage.shows_within("as you"));
  CHECK(reading_of(stage, "rf_channel") == "Post");
  CHECK(reading_of(stage, "longitude.sign") == "west");
  CHECK(stage.shows("Updates"));
  stage.tap("take in");
  const ImportReport& told = report_of(stage).stations;
  REQUIRE(told.changes.size() == 3);
  // Nearest to the stop first: QAAB, which moved away from it, is 23 km off; the others 26 and 96.
  CHECK(told.changes[0].call_sign == "QAAB");
  CHECK(told.changes[0].moved_m == Approx(22'230.0).margin(30.0));  // 0.2 degrees at 44.6 N
  CHECK(told.changes[1].call_sign == "QAAE");
  CHECK(told.changes[1].kind == StationChange::Kind::added);
  CHECK(told.changes[2].call_sign == "QAAC");
  CHECK(told.changes[2].kind == StationChange::Kind::gone);
  CHECK(stage.shows_within("QAAB, 14 mi"));
  CHECK(stage.shows_within("Site moved 13.8 mi."));
  CHECK(stage.shows_within("New on RF 13, 1.0 kW."));
  CHECK(stage.shows_within("Gone; it was on RF 11."));
  stage.tap("to stations");
  CHECK(listed(stage) == std::vector<std::string>{"QAAB", "QAAD", "QAAE", "QOWN"});
  // The report can be read again.
  stage.tap("data");
  const touch::Point board{1000.0f, 500.0f};
  stage.drag(board, board - touch::Point{0.0f, 300.0f}, milliseconds(200));
  stage.settle();
  stage.tap("last report");
  CHECK(stage.shows_within("Gone; it was on RF 11."));
}

TEST_CASE("a pinned station that is gone from the tables shows at the stop and in the list") {
  const Tablet tablet;
  const auto import = [&](Stage& stage, const std::string& name, const std::string& rows) {
    tablet.table(name, kOwnHeader + rows);
    pick(stage, tablet, name);
    stage.tap("take in");
    REQUIRE(report_of(stage).stations.rows_read > 0);
    stage.tap("close sheet");
  };
  Stage stage(kTablet, tablet.folder());
  import(stage, "own.csv",
         "QOWN,ATSC,30,44.5,-100.2,Northlight\nQOFF,ATSC,31,44.6,-100.2,Harrow\n");
  if (stage.model().stop.practice) stage.set(act::SwitchPractice{});
  stand_at(stage, 44.5, -100.3);
  stage.set(act::Show{Place::Stations});
  REQUIRE(listed(stage).size() == 2);
  stage.tap("pin QOFF QOFF-31");
  stage.tap("pin QOWN QOWN-30");
  REQUIRE(stage.model().stop.pin_notes.size() == 2);
  CHECK(stage.model().list.lost_pins.empty());

  // QOFF leaves the air, QOWN has another channel.
  import(stage, "own.csv", "QOWN,ATSC,33,44.5,-100.2,Northlight\n");
  stage.set(act::Show{Place::Here});
  CHECK(stage.shows_within("Pinned but gone: QOFF, QOWN"));
  stage.tap("lost pins");
  CHECK(stage.model().place == Place::Stations);
  CHECK(stage.shows_within("QOFF, which you pinned, is no longer listed by own.csv."));
  CHECK(stage.targets().find("pin instead") == nullptr);
  stage.tap("drop lost pin");
  CHECK(stage.shows_within("Now own.csv lists it on RF 33."));
  stage.tap("pin instead");
  CHECK(stage.model().list.lost_pins.empty());
  CHECK(stage.model().stop.pinned == std::vector<StationKey>{{"own.csv", "QOWN-33"}});
  stage.tap("take back");
  CHECK(stage.model().list.lost_pins.size() == 1);
  stage.tap("pin instead");
}

TEST_CASE("a pinned station that a newer table lists too is offered from there") {
  const Tablet tablet;
  Stage stage(kTablet, tablet.folder());
  const auto import = [&](const std::string& name, const std::string& date,
                          const std::string& call_sign) {
    tablet.table(name, kOwnHeader + call_sign + ",ATSC,30,44.5,-100.2,Northlight\n");
    pick(stage, tablet, name);
    stage.set(act::CorrectReading{"source.name", name});  // else the same columns are an update
    stage.set(act::CorrectReading{"source.date", date});
    stage.tap("take in");
    stage.tap("close sheet");
  };
  import("older.csv", "2025-01-31", "QOWN");
  if (stage.model().stop.practice) stage.set(act::SwitchPractice{});
  stand_at(stage, 44.5, -100.3);
  stage.set(act::Show{Place::Stations});
  stage.tap("pin QOWN QOWN-30");
  import("newer.csv", "2026-06-30", "QNEW");  // the call sign has changed
  REQUIRE(listed(stage) == std::vector<std::string>{"QNEW"});
  REQUIRE(stage.model().list.lost_pins.size() == 1);
  CHECK(stage.shows_within("Now newer.csv lists it on RF 30."));
  stage.tap("pin instead");
  CHECK(stage.model().list.lost_pins.empty());
  CHECK(stage.model().stop.pinned == std::vector<StationKey>{{"newer.csv", "QNEW-30"}});
}

TEST_CASE("an unreadable table shows its reason and loses no station") {
  const Tablet tablet;
  tablet.table("own.csv", kOwnHeader + "QOWN,ATSC,30,44.5,-100.2,Northlight\n");
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "own.csv");
  stage.tap("take in");
  stage.tap("close sheet");
  tablet.table("picture.csv", std::string("\x89PNG\r\n\x1A\n\0\0\0\rIHDR", 16));
  tablet.table("empty.csv", "");
  tablet.table("broken.csv", kOwnHeader + "QOWN,ATSC,999,44.5,-100.2,N\nQXXX,ATSC,9,444,1,N\n");
  for (const char* name : {"picture.csv", "empty.csv", "broken.csv"}) {
    INFO(name);
    pick(stage, tablet, name);
    REQUIRE(stage.model().data.look);
    CHECK(stage.model().data.look->trouble != "");
    REQUIRE(stage.targets().find("take in") != nullptr);
    CHECK_FALSE(stage.targets().find("take in")->enabled);
    stage.tap("close sheet");
  }
  pick(stage, tablet, "broken.csv");
  CHECK(stage.shows_within("Line 2"));
  stage.tap("close sheet");

  // A table that disappears or breaks between look and import.
  const std::string path = tablet.table("own.csv", kOwnHeader + "QNEW,ATSC,30,44.5,-100.2,N\n");
  pick(stage, tablet, "own.csv");
  std::filesystem::remove(path);
  stage.tap("take in");
  CHECK(stage.model().data.question.step == IntakeStep::Table);
  CHECK(stage.model().data.trouble.find("own.csv") != std::string::npos);
  tablet.table("own.csv", kOwnHeader + "QNEW,ATSC,30,nowhere,-100.2,N\n");
  stage.tap("close sheet");
  pick(stage, tablet, "broken.csv");
  CHECK(tablet.with_call_sign("QOWN").size() == 1);
  CHECK(tablet.with_call_sign("QOWN").front().rf_channel.number == 30);
}

TEST_CASE("an import counts rejected rows with line and reason and imports the others") {
  const Tablet tablet;
  std::string rows = kOwnHeader;
  for (int i = 0; i < 30; ++i) rows += fmt::format("QA{:02},ATSC,9,44.5,{},N\n", i, -100 - i);
  for (int i = 0; i < 20; ++i) rows += fmt::format("QB{:02},ATSC,9,{},-100,N\n", i, 100 + i);
  tablet.table("some.csv", rows);
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "some.csv");
  CHECK(stage.model().data.look->rejected == 20);
  CHECK(stage.model().data.look->sample.size() == 10);
  stage.tap("take in");
  CHECK(report_of(stage).stations.stations_added == 30);
  CHECK(report_of(stage).rejected == 20);
  CHECK(report_of(stage).stations.rejected.size() == IntakeReport::kRejected);
  CHECK(report_of(stage).stations.rejected.front().line == 32);
  CHECK(stage.shows_within("Line 32"));
}

TEST_CASE("a stopped import leaves the catalog unchanged and readable all the time") {
  const Tablet tablet;
  tablet.table("own.csv", kOwnHeader + "QOWN,ATSC,30,44.5,-100.2,Northlight\n");
  Stage stage(kTablet, tablet.folder());
  pick(stage, tablet, "own.csv");
  stage.tap("take in");
  stage.tap("end practice");
  stand_at(stage, 44.5, -100.3);
  std::string many = kOwnHeader;
  const int kStations = test::kSanitized ? 15'000 : 60'000;
  for (int i = 0; i < kStations; ++i) {
    many +=
        fmt::format("QL{:05},ATSC,{},{:.4f},-100.2,Northlight\n", i, 2 + i % 34, 30.0 + 0.0002 * i);
  }
  tablet.table("own.csv", many);
  pick(stage, tablet, "own.csv");
  const touch::Point take = stage.middle_of("take in");
  stage.finger(SDL_FINGERDOWN, take);
  stage.round();
  stage.finger(SDL_FINGERUP, take);
  stage.round();
  stage.round();
  REQUIRE(stage.model().data.question.step == IntakeStep::TakingIn);
  // Rows go to the catalog while they are read.
  const auto writing = [&] {
    return stage.model().data.answer && stage.model().data.answer->part.value_or(0.0) > 0.0;
  };
  while (!writing()) {
    stage.round();
    REQUIRE(stage.model().data.question.step == IntakeStep::TakingIn);
  }
  // While it writes, another reader sees the old catalog.
  CHECK(tablet.with_call_sign("QOWN").size() == 1);
  const touch::Point stop = stage.middle_of("stop taking in");
  stage.finger(SDL_FINGERDOWN, stop);
  stage.round();
  stage.finger(SDL_FINGERUP, stop);
  stage.settle();
  CHECK(stage.model().data.question.step == IntakeStep::Table);
  CHECK_FALSE(stage.model().data.answer->report);
  CHECK(tablet.with_call_sign("QOWN").size() == 1);
  CHECK(tablet.with_call_sign("QL00000").empty());
  // Then to the end.
  stage.tap("take in");
  CHECK(report_of(stage).stations.stations_added == static_cast<std::size_t>(kStations));
  const auto& changes = report_of(stage).stations.changes;
  CHECK(report_of(stage).stations.stations_gone == 1);
  CHECK(std::count_if(changes.begin(), changes.end(), [](const StationChange& change) {
          return change.call_sign == "QOWN" && change.kind == StationChange::Kind::gone;
        }) == 1);
}
