#include "app/logbook/tasks.hpp"
#include "core/geo/geodesic.hpp"
#include "core/geo/gpx.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>

#include <catch2/catch.hpp>

// Export and import of the logbook through finger events.
using namespace mastwise;
using test::Stage;
namespace fs = std::filesystem;

namespace {

// The day of a stage's clock.
const std::string kBackup = "mastwise-logbook-2026-07-02.logbook";
const std::string kTable = "mastwise-logbook-2026-07-02.csv";
const std::string kWaypoints = "mastwise-logbook-2026-07-02.gpx";

LogbookContent content_of(const test::TemporaryFolder& folder) {
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook);
  auto content = logbook->content();
  REQUIRE(content);
  return *std::move(content);
}

void fill(const test::TemporaryFolder& folder, const std::string& stop) {
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook);
  REQUIRE(logbook->put(test::full_stop(stop)));
  REQUIRE(logbook->put(test::full_outcome(stop)));
  REQUIRE(logbook->put(test::sweep_record("s-" + stop, stop)));
}

void open_files(Stage& stage) {
  stage.tap("place Logbook");
  stage.tap("logbook files");
}

bool said(const Stage& stage, const std::string& line) {
  const auto& lines = stage.model().logbook.files.answer->said;
  return std::find(lines.begin(), lines.end(), line) != lines.end();
}

std::size_t real_stops(const Stage& stage) {
  const auto& stops = stage.model().logbook.log.stops;
  return static_cast<std::size_t>(
      std::count_if(stops.begin(), stops.end(), [](const auto& s) { return !is_practice(s); }));
}

}  // namespace

TEST_CASE("a touch exports the whole logbook in each of three forms", "[logbook]") {
  const test::TemporaryFolder dash;
  fill(dash, "a1");
  const LogbookContent before = content_of(dash);
  {
    Stage stage(test::kHeadUnit, dash.path());
    open_files(stage);
    stage.tap("give out Table");
    CHECK(said(stage, "Written: " + kTable));
    CHECK(stage.shows_within(kTable));
    stage.tap("give out Waypoints");
    stage.tap("give out Backup");
    CHECK(said(stage, "It holds 1 stop and 1 outcome"));
    stage.tap("close sheet");
    CHECK(stage.model().sheet == Sheet::None);
  }
  const auto backup = read_logbook(dash.file(kBackup));
  REQUIRE(backup);
  CHECK(*backup == before);
  const auto table = read_logbook_csv(test::read_file(dash.file(kTable)));
  REQUIRE(table);
  CHECK(test::read_file(dash.file(kTable)) == logbook_csv(before));
  CHECK(table->content.stops.size() == before.stops.size());
  CHECK(table->content.outcomes.size() == before.outcomes.size());
  const auto gpx = read_gpx(test::read_file(dash.file(kWaypoints)));
  REQUIRE(gpx);
  REQUIRE(gpx->waypoints.size() == 1);
  // In the file to 1e-9 degree.
  CHECK(path_between(gpx->waypoints.front().position, before.stops.front().position).distance_m <
        0.001);
  CHECK(content_of(dash) == before);
}

TEST_CASE("a touch imports another tablet's logbook, and a second import doubles nothing",
          "[logbook]") {
  const test::TemporaryFolder dash, hand;
  fill(dash, "a1");
  fill(hand, "b1");
  {
    auto logbook = Logbook::open(dash.file("logbook"));
    REQUIRE(logbook->back_up(hand.file("from the dash")));  // recognized by its content
  }
  {
    Stage stage(test::kTablet, hand.path());
    CHECK(real_stops(stage) == 1);
    // The practice area's records in memory stay.
    stage.tap("place Logbook");
    const Station station = stage.model().logbook.tried.rows.front().station.station;
    stage.tap("saw " + station.call_sign + " " + station.id + " steady");
    stage.tap("logbook files");
    REQUIRE(stage.model().logbook.files.answer->files.size() == 1);
    CHECK(stage.shows("from the dash"));
    stage.tap("logbook 1");
    stage.confirm();
    CHECK(said(stage, "stops: 1 new, 0 newer, 0 the same, 0 older than here"));
    CHECK(said(stage, "outcomes: 1 new, 0 newer, 0 the same, 0 older than here"));
    CHECK(said(stage, "sweeps: 1 new, 0 newer, 0 the same, 0 older than here"));
    CHECK(stage.shows_within("Imported: from the dash"));
    CHECK(real_stops(stage) == 2);
    CHECK(stage.model().logbook.log.outcomes.size() == 3);
    stage.tap("logbook 1");
    stage.confirm();
    CHECK(said(stage, "stops: 0 new, 0 newer, 1 the same, 0 older than here"));
    CHECK(real_stops(stage) == 2);
    CHECK(stage.model().logbook.log.outcomes.size() == 3);
    stage.tap("close sheet");
    stage.tap("take back");  // the outcome in practice; the merge loses nothing and stays
    CHECK(stage.model().logbook.outcomes_here.empty());
    CHECK(real_stops(stage) == 2);
  }
  // It is on the disk, and the lessons include it.
  Stage again(test::kTablet, hand.path());
  CHECK(real_stops(again) == 2);
  again.tap("place Here");
  again.tap("settings");
  again.tap("practice off");
  CHECK(again.model().logbook.log.taught.outcomes == 2);
}

TEST_CASE(
    "the list hides files that are not logbooks, and a damaged one is refused with its reason",
    "[logbook]") {
  const test::TemporaryFolder folder;
  std::ofstream(folder.file("towns.csv")) << "name,latitude_deg\nBend,44\n";
  std::ofstream(folder.file("logbook.txt")) << "not one\n";
  fs::create_directories(folder.file("logbook folder"));
  const test::TemporaryFolder dash;
  fill(dash, "a1");
  const std::string whole = test::read_file(dash.file("logbook"));
  std::ofstream(folder.file("cut"), std::ios::binary) << whole.substr(0, whole.size() / 2);
  Stage stage(test::kHeadUnit, folder.path());
  open_files(stage);
  REQUIRE(stage.model().logbook.files.answer->files.size() == 1);
  CHECK(stage.model().logbook.files.answer->files.front().name == "cut");
  stage.tap("logbook 1");
  stage.confirm();
  CHECK_FALSE(stage.model().logbook.files.answer->trouble.empty());
  CHECK(real_stops(stage) == 0);
  CHECK(content_of(folder).stops.empty());

  // Look again finds a newly plugged stick.
  fs::copy_file(dash.file("logbook"), folder.file("another"));
  stage.tap("look again");
  CHECK(stage.model().logbook.files.answer->files.size() == 2);
}

TEST_CASE("an unwritable folder shows an error, and one task waits for the other", "[logbook]") {
  const test::TemporaryFolder folder;
  Stage stage(test::kTablet, folder.path());
  open_files(stage);
  LogbookFiles files = stage.model().logbook.files;
  ask_logbook_files(files, stage.model(), LogbookTask::Look);
  const LogbookFilesQuestion first = *files.asked;
  CHECK(files.working());
  ask_logbook_files(files, stage.model(), LogbookTask::GiveTable);
  CHECK(*files.asked == first);

  LogbookFilesAnswer elsewhere = *stage.model().logbook.files.answer;
  elsewhere.folders = {{.name = "gone", .path = folder.file("gone")}};
  stage.set(act::LogbookFilesDone{elsewhere});
  stage.tap("give out Table");
  CHECK(stage.model().logbook.files.answer->trouble.find(folder.file("gone")) != std::string::npos);
}
