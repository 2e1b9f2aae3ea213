#include "core/logbook/logbook_file.hpp"

#include "core/store/backup.hpp"
#include "core/store/versions.hpp"
#include "core/text/iso_time.hpp"

#include <array>
#include <cstdio>

namespace mastwise::logbook_file {
namespace {

// Each step upgrades a file from the version of its index to the next. Released steps never change;
// a new version appends one.
constexpr std::array kMigrations{
    "CREATE TABLE kept (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;",

    "CREATE TABLE stops (id TEXT PRIMARY KEY, changed TEXT NOT NULL, tablet TEXT NOT NULL,"
    " deleted TEXT NOT NULL, latitude_deg TEXT NOT NULL, longitude_deg TEXT NOT NULL,"
    " arrived TEXT NOT NULL, left TEXT NOT NULL, name TEXT NOT NULL, note TEXT NOT NULL,"
    " surroundings TEXT NOT NULL, rig_heading_true_deg TEXT NOT NULL, gear TEXT NOT NULL,"
    " weather TEXT NOT NULL) WITHOUT ROWID;"
    "CREATE TABLE outcomes (stop_id TEXT NOT NULL REFERENCES stops (id), source TEXT NOT NULL,"
    " station_id TEXT NOT NULL, changed TEXT NOT NULL, tablet TEXT NOT NULL,"
    " deleted TEXT NOT NULL, call_sign TEXT NOT NULL, rf_channel TEXT NOT NULL,"
    " virtual_channel TEXT NOT NULL, band TEXT NOT NULL, heading_true_deg TEXT NOT NULL,"
    " outcome TEXT NOT NULL, tried TEXT NOT NULL, chance_percent TEXT NOT NULL,"
    " margin_db TEXT NOT NULL, deviation_db TEXT NOT NULL, gear TEXT NOT NULL,"
    " weather TEXT NOT NULL, temperature_c TEXT NOT NULL,"
    " PRIMARY KEY (stop_id, source, station_id)) WITHOUT ROWID;"
    "CREATE TABLE outcomes_before (step INTEGER PRIMARY KEY AUTOINCREMENT,"
    " stop_id TEXT NOT NULL, source TEXT NOT NULL,"
    " station_id TEXT NOT NULL, changed TEXT NOT NULL, tablet TEXT NOT NULL,"
    " deleted TEXT NOT NULL, call_sign TEXT NOT NULL, rf_channel TEXT NOT NULL,"
    " virtual_channel TEXT NOT NULL, band TEXT NOT NULL, heading_true_deg TEXT NOT NULL,"
    " outcome TEXT NOT NULL, tried TEXT NOT NULL, chance_percent TEXT NOT NULL,"
    " margin_db TEXT NOT NULL, deviation_db TEXT NOT NULL, gear TEXT NOT NULL,"
    " weather TEXT NOT NULL, temperature_c TEXT NOT NULL);"
    "CREATE INDEX outcomes_before_station ON outcomes_before (stop_id, source, station_id);"
    "CREATE TABLE sweeps (id TEXT PRIMARY KEY, stop_id TEXT NOT NULL REFERENCES stops (id),"
    " source TEXT NOT NULL, station_id TEXT NOT NULL, changed TEXT NOT NULL,"
    " tablet TEXT NOT NULL, deleted TEXT NOT NULL, band TEXT NOT NULL, taken TEXT NOT NULL,"
    " scale TEXT NOT NULL, readings TEXT NOT NULL, peak_true_deg TEXT NOT NULL,"
    " sigma_deg TEXT NOT NULL) WITHOUT ROWID;"
    "CREATE INDEX sweeps_stop ON sweeps (stop_id);",

    "CREATE TABLE antenna_changes (step INTEGER PRIMARY KEY AUTOINCREMENT, antenna TEXT NOT NULL,"
    " changed TEXT NOT NULL, latitude_deg REAL, longitude_deg REAL, confirmed TEXT NOT NULL);",

    "ALTER TABLE outcomes ADD COLUMN amplifier TEXT NOT NULL DEFAULT '';"
    "ALTER TABLE outcomes_before ADD COLUMN amplifier TEXT NOT NULL DEFAULT '';",
};

}  // namespace

// A page cut short reads as zeros and would quietly lose the raised antenna.
Result<Done> check(store::Database& database) {
  const auto found = database.damage();
  if (!found) return found.error();
  if (found->empty()) return Done{};
  return Error{.what = "the logbook is damaged: " + *found,
               .where = database.path(),
               .remedy = kDamagedRemedy,
               .damaged = true};
}

Result<Done> create(const std::string& path) {
  const std::string begun = path + ".new";
  for (const char* end : {"", "-journal"}) std::remove((begun + end).c_str());
  {
    auto database = store::Database::open(begun);
    if (!database) return database.error();
    if (const auto made = bring_up_to_date(*database); !made) return made;
  }
  return store::rename_file(begun, path);
}

Result<Done> bring_up_to_date(store::Database& database) {
  return store::bring_up_to_date(database, kMigrations, "logbook");
}

Result<store::Database> newest_copy(const store::Database& database) {
  auto copy = database.in_memory();
  if (!copy) return copy;
  if (const auto done = store::upgrade(*copy, kMigrations); !done) return done.error();
  return copy;
}

std::int64_t newest_version() {
  return static_cast<std::int64_t>(kMigrations.size());
}

}  // namespace mastwise::logbook_file
