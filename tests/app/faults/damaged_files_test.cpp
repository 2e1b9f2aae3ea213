#include "app/service/damaged_files.hpp"

#include "app/shell/logbook_keeper.hpp"
#include "core/import/import_csv.hpp"
#include "tests/support/dice.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cstdlib>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// Every page of the user's files damaged in turn: found at start, the file moved aside, what can be
// read kept, all else told.
using namespace mastwise;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t kPage_bytes = 4096;  // SQLite's usual size
constexpr UtcTime kNow{std::chrono::sys_days(std::chrono::year(2026) / 7 / 2)};

LogbookContent some_records() {
  LogbookContent content;
  for (int i = 0; i < 60; ++i) {
    const std::string id = fmt::format("dash-stop-{:03}", i);
    StopRecord stop = test::stop_record(id, 40.0 + 0.1 * i, -110.0, i);
    stop.note = std::string(static_cast<std::size_t>(40 * (i % 5)), 'n');
    content.stops.push_back(stop);
    for (const char* call_sign : {"QAAB", "QBBC", "QCCD"}) {
      content.outcomes.push_back(test::outcome_record(id, call_sign, Outcome::steady, i));
    }
    if (i % 10 != 0) continue;
    SweepRecord sweep = test::sweep_record(fmt::format("dash-sweep-{:03}", i), id, i);
    // Long enough for pages of its own.
    for (int reading = 0; reading < 700; ++reading) {
      sweep.readings.push_back({Bearing<True>::degrees(reading % 360), 0.25 * reading});
    }
    content.sweeps.push_back(std::move(sweep));
  }
  return content;
}

std::string make_logbook(const std::string& path) {
  auto logbook = Logbook::open(path);
  REQUIRE(logbook);
  REQUIRE(logbook->merge(some_records()));
  REQUIRE(logbook->keep_settings("{\"night\":true}"));
  REQUIRE(logbook->keep_working_state("{\"search\":\"" + std::string(9'000, 's') + "\"}"));
  REQUIRE(logbook->keep_antenna({.antenna = safety::Antenna::Raised, .when = kNow}));
  return test::read_file(path);
}

std::string make_catalog(const std::string& path) {
  std::string text =
      "call_sign,raster,rf_channel,latitude_deg,longitude_deg,network,city,programs\n";
  for (int i = 0; i < 400; ++i) {
    text +=
        fmt::format("Q{:03},ATSC,{},{:.4f},{:.4f},Basin,Town {},{}.1|Basin;{}.2|Old Trails\n", i,
                    2 + i % 35, 30.0 + 0.04 * i, -120.0 + 0.07 * i, i, 2 + i % 60, 2 + i % 60);
  }
  const auto table = read_station_csv(text, {.name = "INVENTED", .date = "2026-06-01"});
  REQUIRE(table);
  {
    auto catalog = Catalog::open(path);
    REQUIRE(catalog);
    REQUIRE(catalog->replace_source(*table));
  }
  return test::read_file(path);
}

enum class Harm { zeros, noise, cut };

std::string harmed(std::string bytes, std::size_t page, Harm harm) {
  if (harm == Harm::cut) return bytes.substr(0, page * kPage_bytes);
  test::Dice dice(page);
  for (std::size_t i = 0; i < kPage_bytes; ++i) {
    bytes[page * kPage_bytes + i] = harm == Harm::zeros ? '\0' : static_cast<char>(dice.bits());
  }
  return bytes;
}

void write(const std::string& path, const std::string& bytes) {
  test::write_bytes(path, std::as_bytes(std::span(bytes)));
}

// Calls `check` for each page with one harm after the other; for every page and harm if
// MASTWISE_KILLS asks for a long test.
template <class Check>
void harm_each_page(const std::string& whole, std::size_t step, Check check) {
  const std::size_t pages = whole.size() / kPage_bytes;
  const bool all = std::getenv("MASTWISE_KILLS") != nullptr;
  if (all) step = 1;
  for (std::size_t page = 0; page < pages; page += step) {
    for (const Harm harm : {Harm::zeros, Harm::noise, Harm::cut}) {
      if (!all && (page / step) % 3 != static_cast<std::size_t>(harm)) continue;
      INFO("page " << page << " of " << pages << ", harm " << static_cast<int>(harm));
      check(page, harm, harmed(whole, page, harm));
    }
  }
}

template <class Record>
std::size_t lost(const std::vector<Record>& before, const std::vector<Record>& after) {
  for (const Record& record : after) {
    // Nothing is invented.
    if (std::find(before.begin(), before.end(), record) == before.end()) FAIL("a strange record");
  }
  return before.size() - after.size();
}

// The screen's text without its line breaks.
std::string read_aloud(const test::Stage& stage) {
  std::string text = stage.all_text();
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

bool says(const test::Stage& stage, const std::string& text) {
  INFO(read_aloud(stage));
  const bool found = read_aloud(stage).find(text) != std::string::npos;
  CHECK(found);
  return found;
}

std::vector<std::string> named(const fs::path& folder, const std::string& part) {
  std::vector<std::string> found;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().filename().string().find(part) != std::string::npos) {
      found.push_back(entry.path().string());
    }
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

TEST_CASE(
    "whichever page of the logbook is damaged, the rest is kept and the screen reports the loss") {
  const test::TemporaryFolder original;
  const std::string whole = make_logbook(original.file("logbook"));
  LogbookContent before = some_records();
  REQUIRE(*read_logbook(original.file("logbook")) == before);
  std::size_t rescued = 0, all_lost = 0, records_lost = 0;
  harm_each_page(whole, test::kSanitized ? 5 : 1,
                 [&](std::size_t page, Harm harm, const std::string& bytes) {
                   const test::TemporaryFolder folder;
                   const std::string path = folder.file("logbook");
                   write(path, bytes);
                   auto opened = service::open_logbook(path, kNow);
                   if (!opened) FAIL(opened.error().message());
                   REQUIRE(opened->logbook);
                   CHECK(opened->kept.antenna == safety::Antenna::Raised);
                   const auto after = opened->logbook->content();
                   REQUIRE(after);
                   if (!opened->rescued) {
                     CHECK(opened->notice.empty());
                     CHECK(*after == before);
                     CHECK(opened->kept.settings.look == LookChoice::Night);
                     return;
                   }
                   ++rescued;
                   const std::string aside = path + ".damaged-2026-07-02T000000Z";
                   CHECK(opened->notice.find(aside) != std::string::npos);
                   CHECK(test::read_file(aside) == bytes);
                   const std::size_t gone = lost(before.stops, after->stops) +
                                            lost(before.outcomes, after->outcomes) +
                                            lost(before.sweeps, after->sweeps);
                   const bool all = after->stops.empty() && after->outcomes.empty();
                   all_lost += all ? 1 : 0;
                   if (!all && harm != Harm::cut) records_lost = std::max(records_lost, gone);
                   // Only the first page leads to all others.
                   if (page > 0 && harm != Harm::cut) CHECK_FALSE(all);
                   CHECK(named(folder.path(), ".rescued").empty());
                   // It is a whole logbook now.
                   opened->logbook.reset();
                   const auto again = service::open_logbook(path, kNow);
                   REQUIRE(again);
                   CHECK_FALSE(again->rescued);
                 });
  CHECK(rescued > 0);
  WARN(whole.size() / kPage_bytes << " pages, " << rescued << " rescues, " << all_lost
                                  << " times nothing was readable, else at most " << records_lost
                                  << " records were lost");
}

TEST_CASE(
    "whichever page of the catalog is damaged, the rest is kept and the screen reports the loss") {
  const test::TemporaryFolder original;
  const std::string whole = make_catalog(original.file("catalog"));
  std::size_t rescued = 0, all_lost = 0, fewest = 400;
  harm_each_page(whole, test::kSanitized ? 11 : 2,
                 [&](std::size_t, Harm harm, const std::string& bytes) {
                   const test::TemporaryFolder folder;
                   const std::string path = folder.file("catalog");
                   write(path, bytes);
                   const std::string notice = service::check_catalog(path, kNow);
                   auto catalog = Catalog::open(path);
                   REQUIRE(catalog);
                   const auto count = catalog->count();
                   REQUIRE(count);
                   if (notice.empty()) {
                     CHECK(*count == 400);
                   } else {
                     ++rescued;
                     const std::string aside = path + ".damaged-2026-07-02T000000Z";
                     CHECK(notice.find(aside) != std::string::npos);
                     CHECK(test::read_file(aside) == bytes);
                     all_lost += *count == 0 ? 1 : 0;
                     if (*count > 0 && harm != Harm::cut) fewest = std::min(fewest, *count);
                   }
                   // Found by name and by place too.
                   const auto place = *Position::at_deg(38.0, -106.0);
                   const auto near = catalog->nearest(place, 2e7, 1'000);
                   REQUIRE(near);
                   CHECK(near->size() == *count);
                   const auto found = catalog->search("Basin", 1'000);
                   REQUIRE(found);
                   CHECK(found->size() == *count);
                 });
  CHECK(rescued > 0);
  WARN(whole.size() / kPage_bytes << " pages, " << rescued << " rescues, " << all_lost
                                  << " times no station was readable, else at least " << fewest
                                  << " of 400");
}

TEST_CASE("with the copy of the day before even a lost first page loses only that day") {
  const test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  make_logbook(path);
  {
    auto opened = service::open_logbook(path, kNow);  // makes the copy
    REQUIRE(opened);
    REQUIRE(opened->logbook->put(test::stop_record("dash-stop-today", 40.0, -110.0, 900)));
    REQUIRE(opened->logbook->keep_antenna({.antenna = safety::Antenna::Down, .when = kNow}));
  }
  write(path, harmed(test::read_file(path), 0, Harm::noise));
  const auto opened = service::open_logbook(path, kNow);
  REQUIRE(opened);
  CHECK(opened->rescued);
  CHECK(opened->records.stops.size() == some_records().stops.size());
  CHECK(opened->records.outcomes.size() == some_records().outcomes.size());
  CHECK(opened->kept.settings.look == LookChoice::Night);
  CHECK(opened->kept.antenna == safety::Antenna::Raised);  // unknown
}

TEST_CASE("a rescue that a power cut ended is finished at the next start") {
  const test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  make_logbook(path);
  // The damaged file is moved, its successor is complete but not in place yet.
  fs::rename(path, path + ".rescued");
  const auto opened = service::open_logbook(path, kNow);
  REQUIRE(opened);
  CHECK(opened->kept.antenna == safety::Antenna::Raised);
  CHECK(opened->records.stops.size() == some_records().stops.size());
}

TEST_CASE("the screen says what was damaged, what is left and where the old file is") {
  const test::TemporaryFolder folder;
  const std::string whole = make_logbook(folder.file("logbook"));
  SECTION("the logbook") {
    write(folder.file("logbook"), harmed(whole, 3, Harm::noise));
    test::Stage stage(test::kTablet, folder.path());
    CHECK(stage.model().safety.asking == Asking::StillUp);
    SECTION("which is still up") {
      stage.tap("refuse");
    }
    SECTION("which is down") {
      stage.confirm();
    }
    CHECK(says(stage, "The logbook was damaged. Check whether the antenna is up. Kept: "));
    CHECK(says(stage, folder.file("logbook.damaged-20")));
    CHECK(stage.model().logbook.log.stops.size() > 20);
  }
  SECTION("the catalog") {
    const std::string catalog = make_catalog(folder.file("catalog"));
    write(folder.file("catalog"), harmed(catalog, 8, Harm::zeros));
    test::Stage stage(test::kTablet, folder.path());
    stage.tap("refuse");  // the antenna is still up
    CHECK(says(stage, "The stations' file was damaged. Kept: "));
    CHECK(says(stage, folder.file("catalog.damaged-20")));
  }
}

TEST_CASE("a logbook damaged during the run gets back every record in memory") {
  const test::TemporaryFolder folder;
  const std::string path = folder.file("logbook");
  const std::string whole = make_logbook(path);
  auto opened = service::open_logbook(path, kNow);
  REQUIRE(opened);
  const Log known{.stops = opened->records.stops, .outcomes = opened->records.outcomes};
  shell::LogbookKeeper keeper(path, std::move(opened->logbook));
  fs::resize_file(path, 4 * kPage_bytes);
  const StopRecord added = test::stop_record("dash-stop-new", 40.0, -110.0, 900);
  const auto put = [&](Logbook& logbook) { return logbook.put(added); };
  CHECK_FALSE(keeper.write(put, known));
  REQUIRE(keeper.write(put, known));
  CHECK(keeper.take_notice().find("The logbook was damaged") != std::string::npos);
  const auto after = keeper.records();
  REQUIRE(after);
  CHECK(after->outcomes.size() == known.outcomes.size());
  REQUIRE(after->stops.size() == known.stops.size() + 1);
  CHECK(after->stops.front() == added);
  CHECK(std::vector(after->stops.begin() + 1, after->stops.end()) == known.stops);
}
