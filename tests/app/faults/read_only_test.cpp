#include "tests/support/child_program.hpp"
#include "tests/support/faulty_disk.hpp"
#include "tests/support/invented_catalog.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/tablet.hpp"

#include <optional>

#include <catch2/catch.hpp>

// A data folder that cannot be written: the app starts, says so, works, and keeps everything until
// it can.
using namespace mastwise;
using test::FaultyDisk;
using test::Stage;

namespace {

void log_row(Stage& stage, std::size_t row) {
  REQUIRE(stage.model().stations);
  REQUIRE(stage.model().stations->rows.size() > row);
  stage.set(act::LogOutcome{key_of(stage.model().stations->rows[row].station), Outcome::steady});
}

}  // namespace

TEST_CASE("in a read-only folder with a logbook the app works on and writes once it can") {
  const test::TemporaryFolder folder;
  test::fill_catalog(folder.file("catalog"));
  {
    auto logbook = Logbook::open(folder.file("logbook"));
    REQUIRE(logbook);
    REQUIRE(logbook->put(test::stop_record("earlier", 44.0, -71.0)));
    REQUIRE(logbook->keep_settings("{\"night\":true}"));
  }
  const auto before = folder.content();
  std::optional<FaultyDisk> disk;
  disk.emplace(folder.path().string(), 1, FaultyDisk::Fails::from_then_on, FaultyDisk::kReadOnly);
  Stage stage(test::kTablet, folder.path());
  // Said at once, and by the foot as soon as something waits.
  CHECK(stage.model().notice.starts_with("Nothing can be saved: "));
  CHECK(stage.model().settings.look == LookChoice::Night);
  test::stand_at(stage, 42.51, -118.53);
  log_row(stage, 0);
  log_row(stage, 1);
  stage.tap("place Aim");
  CHECK(stage.shows_within("records are not saved: "));
  CHECK(stage.shows_within(folder.file("logbook")));
  // The raised antenna is shown although it cannot be written.
  stage.tap("raise");
  stage.confirm();
  CHECK(stage.model().findings.antenna_up);
  disk.reset();
  CHECK(folder.content() == before);

  stage.wait(milliseconds(130'000));
  CHECK(stage.model().unsaved.records == 0);
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook);
  CHECK(*logbook->antenna() == safety::Antenna::Raised);
  CHECK(logbook->stops()->size() == 2);
  CHECK(logbook->outcomes()->size() == 2);
}

TEST_CASE("in an empty read-only folder the app starts in practice and says that it cannot save") {
  const test::TemporaryFolder folder;
  std::optional<FaultyDisk> disk;
  disk.emplace(folder.path().string(), 1, FaultyDisk::Fails::from_then_on, FaultyDisk::kReadOnly);
  Stage stage(test::kTablet, folder.path());
  CHECK(stage.model().stop.practice);
  stage.tap("settings");
  stage.tap("miles off");
  stage.tap("close sheet");
  CHECK(stage.shows_within("not saved"));
  CHECK(folder.content().empty());
  disk.reset();
  stage.wait(milliseconds(130'000));
  CHECK(stage.model().unsaved.records == 0);
  auto logbook = Logbook::open(folder.file("logbook"));
  REQUIRE(logbook);
  CHECK(*logbook->settings() != std::nullopt);
}

// The kernel refuses files there even to root.
TEST_CASE("each verb that writes says a clear error in a folder that refuses files") {
  const std::string refusing = "/sys/kernel";
  const test::TemporaryFolder folder;
  const std::string table = folder.file("stations.csv");
  const std::string_view text =
      "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n"
      "QAAB,ATSC,23,44.0,-71.0\n";
  test::write_bytes(table, std::as_bytes(std::span(text)));
  const auto ended = test::run_program({"import", "stations", table}, refusing);
  INFO(ended.errors);
  CHECK(ended.status != 0);
  CHECK(ended.status < 128);
  CHECK(ended.errors.find("/sys/kernel/catalog") != std::string::npos);
  CHECK(ended.errors.find("you may write to") != std::string::npos);
}
