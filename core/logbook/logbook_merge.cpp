#include "core/logbook/logbook.hpp"
#include "core/logbook/logbook_file.hpp"
#include "core/store/backup.hpp"

#include <fmt/format.h>

namespace mastwise {
namespace {

using logbook_file::kTable;
using logbook_file::select;

template <class Record>
Result<Done> merge_records(store::Database& database, const std::vector<Record>& others,
                           MergeCounts& counts) {
  for (const Record& other : others) {
    if (const auto wrong = fault(other)) return *wrong;
    const auto own = logbook_file::find(database, other);
    if (!own) return own.error();
    if (*own && **own == other) {
      ++counts.same;
      continue;
    }
    if (*own && !record_cells::holds_over(other, **own)) {
      ++counts.kept;
      continue;
    }
    if (const auto done = logbook_file::write(database, other); !done) return done;
    ++(*own ? counts.renewed : counts.added);
  }
  return Done{};
}

Result<LogbookContent> read_content(store::Database& database) {
  // All records of one moment, even if another process writes meanwhile.
  const auto reading = store::Transaction::begin_reading(database);
  if (!reading) return reading.error();
  auto stops = select<StopRecord>(database, kTable<StopRecord>, "ORDER BY id");
  if (!stops) return stops.error();
  auto outcomes = select<OutcomeRecord>(database, kTable<OutcomeRecord>,
                                        "ORDER BY stop_id, source, station_id");
  if (!outcomes) return outcomes.error();
  auto sweeps = select<SweepRecord>(database, kTable<SweepRecord>, "ORDER BY id");
  if (!sweeps) return sweeps.error();
  return LogbookContent{
      .stops = *std::move(stops), .outcomes = *std::move(outcomes), .sweeps = *std::move(sweeps)};
}

// Of a file from elsewhere: a view of such a name could compute rows without end.
Result<LogbookContent> read_tables(store::Database& database) {
  const auto tables = database.integer(
      "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND rootpage > 0"
      " AND name IN ('stops', 'outcomes', 'sweeps')");
  if (!tables) return tables.error();
  if (*tables != 3) return Error{.what = "not a logbook", .where = database.path()};
  return read_content(database);
}

}  // namespace

Result<LogbookContent> Logbook::content() {
  return read_content(database_);
}

Result<MergeReport> Logbook::merge(const LogbookContent& other) {
  auto transaction = store::Transaction::begin(database_);
  if (!transaction) return transaction.error();
  MergeReport report;
  auto done = merge_records(database_, other.stops, report.stops);
  if (done) done = merge_records(database_, other.outcomes, report.outcomes);
  if (done) done = merge_records(database_, other.sweeps, report.sweeps);
  if (done) done = transaction->commit();
  if (!done) return done.error();
  return report;
}

Result<Done> Logbook::back_up(const std::string& path) {
  if (const auto saved = store::save_copy(database_, path); !saved) return saved;
  const auto own = content();
  if (!own) return own.error();
  const auto copy = read_logbook(path);
  if (!copy) return copy.error();
  if (*copy == *own) return Done{};
  return Error{.what = "the backup differs from the logbook",
               .where = path,
               .remedy = "try again, perhaps onto another disk"};
}

Result<LogbookContent> read_logbook(const std::string& path) {
  auto database = store::Database::open_reading(path);
  if (!database) return database.error();
  if (const auto whole = logbook_file::check(*database); !whole) {
    return Error{.what = whole.error().what, .where = path, .remedy = "use another backup"};
  }
  const auto version = database->integer("PRAGMA user_version");
  if (!version) return version.error();
  const auto kept = database->integer(
      "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = 'kept'");
  if (!kept) return kept.error();
  if (*version < 1 || *kept != 1) {
    return Error{.what = "not a logbook", .where = path};
  }
  if (*version > logbook_file::newest_version()) {
    return Error{.what = "the logbook was written by a newer version of Mastwise",
                 .where = path,
                 .remedy = "use that version"};
  }
  if (*version == logbook_file::newest_version()) return read_tables(*database);
  auto newest = logbook_file::newest_copy(*database);
  if (!newest) return newest.error();
  return read_tables(*newest);
}

}  // namespace mastwise
