#include "app/service/damaged_files.hpp"
#include "core/import/import_csv.hpp"
#include "platform/raster_import.hpp"
#include "tests/support/dice.hpp"
#include "tests/support/logbook_records.hpp"
#include "tests/support/made_tiles.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"
#include "tests/support/temporary_folder.hpp"

#include <array>
#include <chrono>
#include <cstdlib>
#include <functional>
#include <thread>

#include <catch2/catch.hpp>
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

// Kills at random moments: nothing that was acknowledged is lost, and each file is the old or the
// new one. MASTWISE_KILLS=500 repeats it more often than the usual test.
using namespace mastwise;
namespace fs = std::filesystem;
using std::chrono::duration;

namespace {

// Of each of the five kinds of work.
int kills_of_each() {
  const char* wanted = std::getenv("MASTWISE_KILLS");
  const int all = wanted != nullptr ? std::atoi(wanted) : test::kSanitized ? 10 : 40;
  return std::max(1, all / 5);
}

// Work in a child process that acknowledges its steps, counted from 1.
class KilledWorker {
 public:
  using Acknowledge = std::function<void(int)>;

  explicit KilledWorker(const std::function<void(const Acknowledge&)>& work) {
    REQUIRE(::pipe(ends_.data()) == 0);
    child_ = ::fork();
    REQUIRE(child_ >= 0);
    if (child_ == 0) {
      work([this](int step) {
        if (::write(ends_[1], &step, sizeof(step)) != sizeof(step)) ::_exit(1);
      });
      ::_exit(0);
    }
    ::close(ends_[1]);
  }

  // Kills it after a time, and returns the last step that it acknowledged, 0 if none.
  int kill_after(double seconds) {
    std::this_thread::sleep_for(duration<double>(seconds));
    ::kill(child_, SIGKILL);
    int status = 0;
    REQUIRE(::waitpid(child_, &status, 0) == child_);
    REQUIRE((WIFSIGNALED(status) || WEXITSTATUS(status) == 0));
    int last = 0;
    for (int step = 0; ::read(ends_[0], &step, sizeof(step)) == sizeof(step);) last = step;
    ::close(ends_[0]);
    return last;
  }

 private:
  std::array<int, 2> ends_{};
  pid_t child_ = -1;
};

// How much longer the work takes under the sanitizers.
const double kSlower = test::kSanitized ? 10.0 : 1.0;

// A moment to kill at; later with each kill that came before anything was done, as on a slow
// machine.
double moment(test::Dice& dice, double most_s, int too_early) {
  return kSlower * dice.between(0.0, most_s * (1.0 + too_early));
}

// The time that the whole work takes in a child.
double seconds_of(const std::function<void(const KilledWorker::Acknowledge&)>& work) {
  const auto began = std::chrono::steady_clock::now();
  int status = 0;
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    work([](int) {});
    ::_exit(0);
  }
  REQUIRE(::waitpid(child, &status, 0) == child);
  REQUIRE(WIFEXITED(status));
  REQUIRE(WEXITSTATUS(status) == 0);
  return duration<double>(std::chrono::steady_clock::now() - began).count();
}

StationTable table_of(int stations) {
  std::string text = "call_sign,raster,rf_channel,latitude_deg,longitude_deg\n";
  for (int i = 0; i < stations; ++i) text += fmt::format("Q{:03},ATSC,23,44.0,-71.0\n", i);
  return *read_station_csv(text, {.name = "INVENTED", .date = "2026-06-01"});
}

// Logbooks of the older versions, with the same content as far as they can have it.
void make_old_logbook(const std::string& path, int version) {
  if (version > 1) {
    auto logbook = Logbook::open(path);
    REQUIRE(logbook);
    LogbookContent content;
    for (int i = 0; i < 20; ++i) {
      const std::string id = fmt::format("stop-{:02}", i);
      content.stops.push_back(test::stop_record(id, 44.0, -71.0, i));
      content.outcomes.push_back(test::outcome_record(id, "QAAB", Outcome::steady, i));
    }
    REQUIRE(logbook->merge(content));
  }
  auto database = store::Database::open(path);
  REQUIRE(database);
  if (version == 1) {
    REQUIRE(database->run(
        "CREATE TABLE kept (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID"));
  } else {
    REQUIRE(
        database->run("ALTER TABLE outcomes DROP COLUMN amplifier;"
                      "ALTER TABLE outcomes_before DROP COLUMN amplifier"));
  }
  if (version == 2) REQUIRE(database->run("DROP TABLE antenna_changes"));
  REQUIRE(database->run(fmt::format("PRAGMA user_version = {}", version)));
  REQUIRE(database->run("INSERT OR REPLACE INTO kept VALUES ('antenna', 'raised')"));
}

}  // namespace

TEST_CASE("kills during saves of settings lose none that was acknowledged") {
  const test::TemporaryFolder folder;
  test::Dice dice(1);
  const std::string path = folder.file("logbook");
  int before = 0, between = 0;
  for (int kill = 0; kill < kills_of_each(); ++kill) {
    KilledWorker worker([&](const KilledWorker::Acknowledge& acknowledge) {
      auto logbook = Logbook::open(path);
      for (int step = before + 1;; ++step) {
        if (!logbook || !logbook->keep_settings(std::to_string(step))) ::_exit(1);
        acknowledge(step);
      }
    });
    const int told =
        std::max(before, worker.kill_after(moment(dice, 0.1, between == 0 ? kill : 0)));
    const auto opened = service::open_logbook(path, test::at_second(0));
    REQUIRE(opened);
    CHECK_FALSE(opened->rescued);
    auto logbook = Logbook::open(path);
    REQUIRE(logbook);
    const int kept = std::atoi(logbook->settings()->value_or("0").c_str());
    CHECK((kept == told || kept == told + 1));
    between += told > before ? 1 : 0;
    before = kept;
  }
  CHECK(between > 0);
}

TEST_CASE("kills during writes of records lose none that was acknowledged, and keep their order") {
  const test::TemporaryFolder folder;
  test::Dice dice(2);
  const std::string path = folder.file("logbook");
  int before = 0, between = 0;
  for (int kill = 0; kill < kills_of_each(); ++kill) {
    KilledWorker worker([&](const KilledWorker::Acknowledge& acknowledge) {
      auto logbook = Logbook::open(path);
      for (int step = before + 1;; ++step) {
        const std::string id = fmt::format("stop-{:06}", step);
        if (!logbook || !logbook->put(test::stop_record(id, 44.0, -71.0, step)) ||
            !logbook->put(test::outcome_record(id, "QAAB", Outcome::steady, step)) ||
            !logbook->keep_antenna(
                {.antenna = safety::Antenna::Raised, .when = test::at_second(0)})) {
          ::_exit(1);
        }
        acknowledge(step);
      }
    });
    const int told =
        std::max(before, worker.kill_after(moment(dice, 0.2, between == 0 ? kill : 0)));
    auto logbook = Logbook::open(path);
    REQUIRE(logbook);
    const auto content = logbook->content();
    REQUIRE(content);
    const int stops = static_cast<int>(content->stops.size());
    CHECK((stops == told || stops == told + 1));
    CHECK(static_cast<int>(content->outcomes.size()) >= told);
    for (int step = 1; step <= told; ++step) {
      const auto at = static_cast<std::size_t>(step - 1);
      if (content->stops[at].id != fmt::format("stop-{:06}", step)) FAIL("lost: " << step);
      if (content->outcomes[at].stop_id != content->stops[at].id) FAIL("lost outcome " << step);
    }
    if (told > 0) CHECK(*logbook->antenna() == safety::Antenna::Raised);
    between += told > before ? 1 : 0;
    // What was under way is finished by the next one.
    before = told;
  }
  CHECK(between > 0);
}

TEST_CASE("kills during a migration from each older version leave the old logbook or the new one") {
  test::Dice dice(3);
  for (const int version : {1, 2, 3}) {
    const auto open = [](const std::string& path) {
      return [path](const KilledWorker::Acknowledge& acknowledge) {
        if (!Logbook::open(path)) ::_exit(1);
        acknowledge(1);
      };
    };
    const test::TemporaryFolder trial;
    make_old_logbook(trial.file("logbook"), version);
    const double seconds = seconds_of(open(trial.file("logbook")));
    for (int kill = 0; kill < (kills_of_each() + 2) / 3; ++kill) {
      INFO("version " << version << ", kill " << kill);
      const test::TemporaryFolder folder;
      const std::string path = folder.file("logbook");
      make_old_logbook(path, version);
      KilledWorker worker(open(path));
      worker.kill_after(dice.between(0.0, 1.2 * seconds));
      const auto opened = service::open_logbook(path, test::at_second(0));
      REQUIRE(opened);
      CHECK_FALSE(opened->rescued);
      CHECK(opened->logbook);
      CHECK(opened->kept.antenna == safety::Antenna::Raised);
      CHECK(opened->records.stops.size() == (version > 1 ? 20u : 0u));
      CHECK(opened->records.outcomes.size() == opened->records.stops.size());
      CHECK(fs::exists(fmt::format("{}.version-{}", path, version)));
    }
  }
}

TEST_CASE("kills during imports of stations leave one whole table") {
  const test::TemporaryFolder folder;
  test::Dice dice(4);
  const std::string path = folder.file("catalog");
  const StationTable odd = table_of(40), even = table_of(90);
  int before = 0, between = 0;
  for (int kill = 0; kill < kills_of_each(); ++kill) {
    KilledWorker worker([&](const KilledWorker::Acknowledge& acknowledge) {
      auto catalog = Catalog::open(path);
      for (int step = before + 1;; ++step) {
        if (!catalog || !catalog->replace_source(step % 2 == 1 ? odd : even)) ::_exit(1);
        acknowledge(step);
      }
    });
    const int told =
        std::max(before, worker.kill_after(moment(dice, 0.08, between == 0 ? kill : 0)));
    CHECK(service::check_catalog(path, test::at_second(0)) == "");
    auto catalog = Catalog::open(path);
    REQUIRE(catalog);
    const std::size_t count = *catalog->count();
    const auto after = [&](int step) { return step == 0 ? 0u : step % 2 == 1 ? 40u : 90u; };
    CHECK((count == after(told) || count == after(told + 1)));
    const auto near = catalog->nearest(*Position::at_deg(44.0, -71.0), 1'000.0, 1'000);
    REQUIRE(near);
    CHECK(near->size() == count);
    between += told > before ? 1 : 0;
    before = count == after(told) ? told : told + 1;
  }
  CHECK(between > 0);
}

TEST_CASE("kills during an import of terrain leave the old tile or the new one") {
  const test::TemporaryFolder stick, trial;
  test::Dice dice(5);
  const fs::path raster = stick / "N45E007.hgt";
  const auto tile = [](double height_m) {
    return test::made_tile_bytes({45, 7}, 1201, [=](double, double) { return height_m; });
  };
  // The old tile has a void that the new heights fill.
  std::vector<std::byte> old = tile(100.0);
  old[5000] = std::byte{0x80};
  old[5001] = std::byte{0x00};
  test::write_bytes(raster, tile(100.0));
  const auto import = [&](const fs::path& folder) {
    return [folder, raster](const KilledWorker::Acknowledge& acknowledge) {
      if (!platform::import_raster(raster, folder, [](double) { return true; })) ::_exit(1);
      acknowledge(1);
    };
  };
  test::write_bytes(trial / "N45E007.hgt", old);
  const double seconds = seconds_of(import(trial.path()));
  const std::string imported = test::read_file(trial / "N45E007.hgt");
  const std::string before(reinterpret_cast<const char*>(old.data()), old.size());
  REQUIRE(imported != before);
  for (int kill = 0; kill < kills_of_each(); ++kill) {
    const test::TemporaryFolder folder;
    const fs::path path = folder / "N45E007.hgt";
    test::write_bytes(path, old);
    KilledWorker worker(import(folder.path()));
    const int told = worker.kill_after(dice.between(0.0, 1.1 * seconds));
    const std::string now = test::read_file(path);
    CHECK((now == imported || (now == before && told == 0)));
    // The next import goes through and leaves nothing of the first one behind.
    REQUIRE(platform::import_raster(raster, folder.path(), [](double) { return true; }));
    CHECK(test::read_file(path) == imported);
    CHECK(folder.content().size() == 1);
  }
}
