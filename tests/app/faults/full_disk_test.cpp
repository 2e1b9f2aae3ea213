#include "app/service/damaged_files.hpp"
#include "app/service/logbook_files.hpp"
#include "app/shell/logbook_keeper.hpp"
#include "core/import/import_csv.hpp"
#include "platform/atomic_save.hpp"
#include "tests/support/faulty_disk.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/stage.hpp"

#include <algorithm>
#include <cstdlib>
#include <set>

#include <catch2/catch.hpp>
#include <fmt/format.h>

// For every n, the n-th write fails, once or with all after it; then there is space again.
using namespace mastwise;
using test::FaultyDisk;
using Fails = FaultyDisk::Fails;

namespace {

const UtcTime kFull = test::at_second(0);

// Calls `attempt` with a faulty disk on a new folder, for each failing call until none fails; for
// some of them unless MASTWISE_KILLS asks for a long test.
// `prepare` fills the folder before, `verify` looks at it afterward with a disk in order.
template <class Prepare, class Attempt, class Verify>
int fail_each_call(Prepare prepare, Attempt attempt, Verify verify) {
  int tried = 0;
  const int step = std::getenv("MASTWISE_KILLS") != nullptr ? 1 : test::kSanitized ? 13 : 5;
  for (const Fails fails : {Fails::once, Fails::from_then_on}) {
    bool failed = true;
    for (int call = 1; failed; call += step, ++tried) {
      INFO("call " << call << (fails == Fails::once ? " fails once" : " and later ones fail"));
      const test::TemporaryFolder folder;
      prepare(folder);
      {
        FaultyDisk disk(folder.path().string(), call, fails);
        attempt(folder);
        failed = disk.failed();
      }
      verify(folder);
      REQUIRE(call < 2'000);
    }
  }
  return tried;
}

// The message of a write that the disk refused: it names the file and says what to do.
void check_message(const Error& error, const std::string& file) {
  INFO(error.message());
  CHECK(error.where.find(file) != std::string::npos);
  CHECK_FALSE(error.remedy.empty());
}

std::set<std::string> names(const test::TemporaryFolder& folder) {
  std::set<std::string> found;
  for (const auto& [name, bytes] : folder.content()) {
    if (name != "logbook-journal" && name != "logbook.backup") found.insert(name);
  }
  return found;
}

}  // namespace

TEST_CASE("settings and records that were acknowledged survive whichever write the disk refuses") {
  std::set<std::string> attempted;  // from the last acknowledged one on
  std::vector<std::string> stops;
  const auto prepare = [&](const test::TemporaryFolder& folder) {
    attempted = {"first"};
    stops.clear();
    auto logbook = Logbook::open(folder.file("logbook"));
    REQUIRE(logbook);
    REQUIRE(logbook->keep_settings("first"));
  };
  const auto attempt = [&](const test::TemporaryFolder& folder) {
    shell::LogbookKeeper keeper(folder.file("logbook"), {});
    for (int i = 0; i < 2; ++i) {
      const std::string id = "stop-" + std::to_string(i);
      const auto settings =
          keeper.write([&](Logbook& logbook) { return logbook.keep_settings(id); }, {});
      if (settings) attempted.clear();
      attempted.insert(id);
      if (!settings) check_message(settings.error(), "logbook");
      const auto stop = keeper.write(
          [&](Logbook& logbook) { return logbook.put(test::stop_record(id, 44.0, -71.0, i)); }, {});
      if (stop) stops.push_back(id);
      if (!stop) check_message(stop.error(), "logbook");
    }
  };
  const auto verify = [&](const test::TemporaryFolder& folder) {
    auto opened = service::open_logbook(folder.file("logbook"), kFull);
    REQUIRE(opened);
    CHECK_FALSE(opened->rescued);
    // A write whose last flush fails is told as failed and is in the file: it is repeated.
    const auto settings = opened->logbook->settings();
    REQUIRE(settings);
    CHECK(attempted.contains(settings->value_or("none")));
    std::vector<std::string> found;
    const auto content = opened->logbook->content();
    REQUIRE(content);
    for (const StopRecord& stop : content->stops) found.push_back(stop.id);
    CHECK(std::includes(found.begin(), found.end(), stops.begin(), stops.end()));
    for (int i = 0; i < 2; ++i) {
      const std::string id = "stop-" + std::to_string(i);
      REQUIRE(opened->logbook->put(test::stop_record(id, 44.0, -71.0, i)));
    }
    CHECK(opened->logbook->content()->stops.size() == 2);
    CHECK(names(folder) == std::set<std::string>{"logbook"});
  };
  CHECK(fail_each_call(prepare, attempt, verify) > 3);
}

TEST_CASE("a migration that the disk refuses leaves the old logbook, and is made up for later") {
  const auto prepare = [](const test::TemporaryFolder& folder) {
    auto first = store::Database::open(folder.file("logbook"));
    REQUIRE(first);
    REQUIRE(
        first->run("CREATE TABLE kept (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;"
                   "INSERT INTO kept VALUES ('antenna', 'raised'), ('settings', '{}');"
                   "PRAGMA user_version = 1;"));
  };
  const auto attempt = [](const test::TemporaryFolder& folder) {
    const auto opened = service::open_logbook(folder.file("logbook"), kFull);
    // It goes on in memory with what the old file has.
    // A journal that cannot be rolled back hides the file until the disk works again.
    if (!opened) return check_message(opened.error(), "logbook");
    CHECK(opened->kept.antenna == safety::Antenna::Raised);
    if (opened->logbook) return;
    REQUIRE(opened->unwritable);
    check_message(*opened->unwritable, "logbook");
    CHECK(opened->notice.find("Nothing can be saved") != std::string::npos);
  };
  const auto verify = [](const test::TemporaryFolder& folder) {
    auto opened = service::open_logbook(folder.file("logbook"), kFull);
    REQUIRE(opened);
    REQUIRE(opened->logbook);
    CHECK(opened->kept.antenna == safety::Antenna::Raised);
    CHECK(opened->logbook->content()->stops.empty());
    auto backup = store::Database::open_reading(folder.file("logbook.version-1"));
    REQUIRE(backup);
    CHECK(*backup->integer("SELECT count(*) FROM kept") == 2);
    CHECK(names(folder) == std::set<std::string>{"logbook", "logbook.version-1"});
  };
  CHECK(fail_each_call(prepare, attempt, verify) > 3);
}

TEST_CASE("a first start on a full disk works in memory and leaves no half logbook") {
  const auto attempt = [](const test::TemporaryFolder& folder) {
    const auto opened = service::open_logbook(folder.file("logbook"), kFull);
    REQUIRE(opened);
    CHECK(opened->kept.antenna == safety::Antenna::Down);
    if (!opened->logbook) check_message(*opened->unwritable, "logbook");
  };
  const auto verify = [](const test::TemporaryFolder& folder) {
    const auto opened = service::open_logbook(folder.file("logbook"), kFull);
    REQUIRE(opened);
    REQUIRE(opened->logbook);
    CHECK_FALSE(opened->rescued);
    CHECK(names(folder) == std::set<std::string>{"logbook"});
  };
  CHECK(fail_each_call([](const auto&) {}, attempt, verify) > 3);
}

TEST_CASE("an import that the disk refuses leaves the catalog as it was") {
  const auto table = [](int stations, const char* date) {
    std::string text = "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n";
    for (int i = 0; i < stations; ++i) text += fmt::format("Q{:03},ATSC,23,44.0,-71.0\n", i);
    return *read_station_csv(text, {.name = "INVENTED", .date = date});
  };
  const StationTable before = table(20, "2026-06-01"), after = table(60, "2026-07-01");
  bool done = false;
  const auto prepare = [&](const test::TemporaryFolder& folder) {
    done = false;
    auto catalog = Catalog::open(folder.file("catalog"));
    REQUIRE(catalog);
    REQUIRE(catalog->replace_source(before));
  };
  const auto attempt = [&](const test::TemporaryFolder& folder) {
    auto catalog = Catalog::open(folder.file("catalog"));
    if (!catalog) return check_message(catalog.error(), "catalog");
    const auto imported = catalog->replace_source(after);
    done = static_cast<bool>(imported);
    if (!imported) check_message(imported.error(), "catalog");
  };
  const auto verify = [&](const test::TemporaryFolder& folder) {
    CHECK(service::check_catalog(folder.file("catalog"), kFull).empty());
    auto catalog = Catalog::open(folder.file("catalog"));
    REQUIRE(catalog);
    CHECK(*catalog->count() == (done ? 60u : 20u));
    REQUIRE(catalog->replace_source(after));
    CHECK(*catalog->count() == 60);
  };
  CHECK(fail_each_call(prepare, attempt, verify) > 3);
}

TEST_CASE("an export that the disk refuses leaves the earlier file and no half one") {
  using sources::LogbookForm;
  for (const LogbookForm form : {LogbookForm::table, LogbookForm::waypoints, LogbookForm::backup}) {
    bool done = false;
    const auto prepare = [&](const test::TemporaryFolder& folder) {
      std::filesystem::create_directory(folder / "stick");
      const std::string_view text = "an earlier file";
      test::write_bytes(folder / "stick/export", std::as_bytes(std::span(text)));
      auto logbook = Logbook::open(folder.file("logbook"));
      REQUIRE(logbook);
      REQUIRE(logbook->put(test::stop_record("stop-1", 44.0, -71.0)));
    };
    const auto attempt = [&](const test::TemporaryFolder& folder) {
      auto logbook = Logbook::open(folder.file("logbook"));
      if (!logbook) return check_message(logbook.error(), "logbook");
      const auto content = logbook->content();
      REQUIRE(content);
      const auto written = sources::give_out(*logbook, *content, form, folder.file("stick/export"));
      done = static_cast<bool>(written);
      if (!written) check_message(written.error(), "stick/export");
    };
    const auto verify = [&](const test::TemporaryFolder& folder) {
      CHECK(names(folder) == std::set<std::string>{"logbook", "stick", "stick/export"});
      const std::string bytes = test::read_file(folder / "stick/export");
      if (form == LogbookForm::backup && bytes != "an earlier file") {
        CHECK(read_logbook(folder.file("stick/export"))->stops.size() == 1);
      }
      CHECK((bytes != "an earlier file" || !done));
      if (!done && form != LogbookForm::backup) {
        // Only the flush of the folder's name may fail after the file is in place.
        CHECK((bytes == "an earlier file" || bytes.size() > 40));
      }
    };
    CHECK(fail_each_call(prepare, attempt, verify) > 3);
  }
}

TEST_CASE("a rescue that the disk refuses leaves the damaged file and goes on in memory") {
  std::string bytes;
  const auto prepare = [&](const test::TemporaryFolder& folder) {
    {
      auto logbook = Logbook::open(folder.file("logbook"));
      REQUIRE(logbook);
      REQUIRE(logbook->keep_antenna({.antenna = safety::Antenna::Raised, .when = kFull}));
      for (int i = 0; i < 40; ++i) {
        StopRecord stop = test::stop_record("stop-" + std::to_string(i), 44.0, -71.0, i);
        stop.note = std::string(300, 'n');
        REQUIRE(logbook->put(stop));
      }
    }
    bytes = test::read_file(folder / "logbook");
    bytes.resize(bytes.size() - 4096);
    test::write_bytes(folder / "logbook", std::as_bytes(std::span(bytes)));
  };
  const auto attempt = [](const test::TemporaryFolder& folder) {
    const auto opened = service::open_logbook(folder.file("logbook"), kFull);
    REQUIRE(opened);
    CHECK(opened->kept.antenna == safety::Antenna::Raised);
    CHECK_FALSE(opened->notice.empty());
  };
  const auto verify = [&](const test::TemporaryFolder& folder) {
    auto opened = service::open_logbook(folder.file("logbook"), kFull);
    REQUIRE(opened);
    REQUIRE(opened->logbook);
    CHECK(opened->kept.antenna == safety::Antenna::Raised);
    CHECK(opened->records.stops.size() > 20);
    bool aside = false;
    for (const auto& [name, content] : folder.content()) {
      aside |= name.find("damaged") != std::string::npos && content == bytes;
      CHECK(name.find("rescued") == std::string::npos);
    }
    CHECK(aside);
  };
  CHECK(fail_each_call(prepare, attempt, verify) > 3);
}

TEST_CASE("a paper card that the disk refuses names its folder and leaves no half file") {
  const test::TemporaryFolder folder;
  test::Stage stage(test::kTablet, folder.path());
  stage.tap("place Aim");
  stage.tap("plan");
  const std::string cards = folder.file("cards");
  std::filesystem::create_directory(cards);
  bool failed = true;
  for (int call = 1; failed; ++call) {
    INFO("call " << call);
    REQUIRE(call < 100);
    {
      FaultyDisk disk(cards, call, Fails::once);
      stage.session().act(act::SavePaper{});
      failed = disk.failed();
    }
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(cards)) {
      CHECK(entry.path().extension() == ".pdf");
      CHECK(test::read_file(entry.path()).ends_with("%%EOF\n"));
      ++files;
      std::filesystem::remove(entry.path());
    }
    // The flush of the folder may fail after the card is in place.
    if (stage.model().trouble.empty()) {
      CHECK(files == 1);
    } else {
      CHECK(stage.model().trouble.find(cards) != std::string::npos);
      CHECK(stage.model().trouble.find("free space") != std::string::npos);
      CHECK(files == 0);
    }
    stage.set(act::Show{Place::Aim});
  }
}
