#include "app/service/damaged_files.hpp"

#include "app/words/files.hpp"
#include "core/catalog/catalog.hpp"
#include "core/logbook/salvage.hpp"
#include "core/text/iso_time.hpp"
#include "platform/atomic_save.hpp"
#include "platform/files.hpp"

#include <array>
#include <chrono>
#include <filesystem>
#include <system_error>
#include <utility>

namespace mastwise::service {
namespace {

namespace fs = std::filesystem;

// Files that belong to a database, before the database itself: a journal left behind would be
// played into the file that takes its place.
constexpr std::array kCompanions{"-journal", "-wal", "-shm", ""};

void remove(const std::string& database) {
  std::error_code ignored;
  for (const char* end : kCompanions) fs::remove(database + end, ignored);
}

// "logbook.damaged-2026-07-02T180405Z": letters and digits that every system allows in a name.
std::string name_aside(const std::string& path, UtcTime now) {
  std::string name = path + ".damaged-";
  for (const char c : iso_utc_seconds(now)) {
    if (c != ':') name += c;
  }
  while (platform::exists(name)) name += "x";
  return name;
}

Result<Done> move_aside(const std::string& path, const std::string& aside) {
  for (const char* end : kCompanions) {
    if (!platform::exists(path + end)) continue;
    if (const auto moved = platform::put_in_place(path + end, aside + end); !moved) return moved;
  }
  return Done{};
}

// Where the file that replaces a damaged one is made. It has all its content before the damaged
// file is moved, so without that one it is the file to go on with.
std::string name_of_rescued(const std::string& path) {
  return path + ".rescued";
}

void finish_rescue(const std::string& path) {
  const std::string rescued = name_of_rescued(path);
  if (platform::exists(path) || !platform::exists(rescued)) return;
  if (platform::put_in_place(rescued, path)) remove(rescued);  // its empty journal
}

Result<std::string> put_rescued_in_place(const std::string& path, UtcTime now) {
  const std::string rescued = name_of_rescued(path), aside = name_aside(path, now);
  if (const auto moved = move_aside(path, aside); !moved) return moved.error();
  if (const auto placed = platform::put_in_place(rescued, path); !placed) return placed.error();
  remove(rescued);  // its empty journal
  return aside;
}

std::string name_of_backup(const std::string& path) {
  return path + ".backup";
}

// A copy of the day before: damage to the first page alone makes a whole file unreadable. Without
// room for it the logbook goes on.
void back_up_daily(Logbook& logbook, const std::string& path) {
  const std::string backup = name_of_backup(path);
  std::error_code missing;
  const auto written = fs::last_write_time(backup, missing);
  const auto age = fs::file_time_type::clock::now() - written;
  if (!missing && std::chrono::abs(age) < kOneDay) return;
  static_cast<void>(logbook.back_up(backup));
}

Result<std::string> rescue(const SalvagedLogbook& salvaged, const std::string& path, UtcTime now) {
  const std::string rescued = name_of_rescued(path), backup = name_of_backup(path);
  remove(rescued);
  {
    auto logbook = Logbook::open(rescued);
    if (!logbook) return logbook.error();
    if (const auto done = logbook->restore(salvaged); !done) return done.error();
    if (const auto earlier = read_logbook(backup)) {
      if (const auto done = logbook->merge(*earlier); !done) return done.error();
    }
  }
  return put_rescued_in_place(path, now);
}

struct RescuedCatalog {
  std::string aside;
  std::size_t stations = 0;
};

Result<RescuedCatalog> rescue_catalog(const std::string& path, UtcTime now) {
  const std::string rescued = name_of_rescued(path);
  remove(rescued);
  std::size_t stations = 0;
  {
    const SalvagedCatalog salvaged = Catalog::salvage(path);
    auto catalog = Catalog::open(rescued);
    if (!catalog) return catalog.error();
    for (const StationTable& table : salvaged.stations) {
      if (const auto done = catalog->replace_source(table); !done) return done.error();
      stations += table.stations.size();
    }
    for (const ProgramTable& table : salvaged.programs) {
      if (const auto done = catalog->replace_programs(table); !done) return done.error();
    }
  }
  const auto aside = put_rescued_in_place(path, now);
  if (!aside) return aside.error();
  return RescuedCatalog{.aside = *aside, .stations = stations};
}

Result<OpenedLogbook> read_all(Result<Logbook> logbook) {
  if (!logbook) return logbook.error();
  auto kept = read_kept(*logbook);
  if (!kept) return kept.error();
  // All records, so that damage inside one is found now.
  if (const auto whole = logbook->content(); !whole) return whole.error();
  auto records = read_records(*logbook);
  if (!records) return records.error();
  return OpenedLogbook{
      .logbook = *std::move(logbook), .kept = *std::move(kept), .records = *std::move(records)};
}

// In memory only, until the file can be written.
Result<OpenedLogbook> in_memory(const SalvagedLogbook& salvaged, const Error& unwritable) {
  auto logbook = Logbook::open(store::kInMemory);
  if (!logbook) return logbook.error();
  if (const auto done = logbook->restore(salvaged); !done) return done.error();
  auto opened = read_all(std::move(logbook));
  if (!opened) return opened;
  opened->logbook.reset();
  opened->unwritable = unwritable;
  opened->notice = words::logbook_unwritable(unwritable.message());
  return opened;
}

}  // namespace

Result<LogbookRecords> read_records(Logbook& logbook) {
  auto stops = logbook.stops();
  if (!stops) return stops.error();
  auto outcomes = logbook.outcomes();
  if (!outcomes) return outcomes.error();
  return LogbookRecords{.stops = *std::move(stops), .outcomes = *std::move(outcomes)};
}

Result<OpenedLogbook> open_logbook(const std::string& path, UtcTime now) {
  finish_rescue(path);
  auto opened = read_all(Logbook::open(path));
  // A write that failed once may have left a journal, which the second try rolls back.
  if (!opened && !opened.error().damaged) opened = read_all(Logbook::open(path));
  if (opened) {
    const auto writable = opened->logbook->check_writable();
    if (!writable) opened->notice = words::logbook_unwritable(writable.error().message());
    if (writable && !opened->records.stops.empty()) back_up_daily(*opened->logbook, path);
    return opened;
  }
  const Error why = opened.error();
  const bool missing = !why.damaged && !platform::exists(path);
  // Of a newer version, or nothing that can be read now.
  if (!why.damaged && !missing && !read_logbook(path)) return why;
  SalvagedLogbook salvaged = missing ? SalvagedLogbook{} : salvage_logbook(path);
  if (!why.damaged) {
    salvaged.antenna_if_lost = safety::Antenna::Down;  // as in a whole logbook
    return in_memory(salvaged, why);
  }
  // Settings of the day before, but never the antenna's state.
  for (const auto& [name, value] : salvage_logbook(name_of_backup(path)).kept) {
    if (name != SalvagedLogbook::kAntenna) salvaged.kept.try_emplace(name, value);
  }
  const auto aside = rescue(salvaged, path, now);
  if (!aside) return in_memory(salvaged, aside.error());
  auto read = read_all(Logbook::open(path));
  if (!read) return read;
  read->rescued = true;
  read->notice =
      words::logbook_rescued(*aside, read->records.stops.size(), read->records.outcomes.size());
  return read;
}

std::string check_catalog(const std::string& path, UtcTime now) {
  finish_rescue(path);
  const auto whole = Catalog::check(path);
  if (whole) return {};
  if (!whole.error().damaged) return whole.error().message();
  const auto kept = rescue_catalog(path, now);
  return kept ? words::catalog_rescued(kept->aside, kept->stations)
              : words::catalog_damaged(kept.error().message());
}

}  // namespace mastwise::service
