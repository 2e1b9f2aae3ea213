#include "core/logbook/salvage.hpp"

#include "core/logbook/logbook_file.hpp"
#include "core/store/salvage.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace mastwise {
namespace {

using logbook_file::kTable;
using store::Database;
using store::Statement;

// A damaged tree may lead in a circle.
constexpr std::size_t kMostRows = 10'000'000;

// The fields of a record to select; '' for one that a table of an older version lacks.
template <class Record>
std::string columns(Database& database) {
  std::set<std::string> known;
  if (auto query = database.prepare("SELECT name FROM pragma_table_info(?)")) {
    query->bind(std::string_view(kTable<Record>));
    for (auto row = query->step(); row && *row; row = query->step()) known.insert(query->text(0));
  }
  std::string list;
  for (const auto& field : record_cells::fields<Record>()) {
    const std::string name(field.name);
    list += (list.empty() ? "" : ", ") + (known.contains(name) ? name : std::string("''"));
  }
  return list;
}

template <class Record>
void salvage(Database& database, std::vector<Record>& into, std::size_t& unreadable) {
  const std::size_t count = record_cells::fields<Record>().size();
  const std::size_t keys = record_cells::kKeyFields<Record>;
  const std::string query =
      "SELECT " + columns<Record>(database) + " FROM " + kTable<Record> + " ORDER BY ";
  std::map<std::vector<std::string>, Record> records;
  std::set<std::vector<std::string>> senseless;
  std::size_t rows = 0;
  const auto take = [&](const Statement& row) {
    std::vector<std::string> cells(count);
    for (std::size_t i = 0; i < count; ++i) cells[i] = row.text(static_cast<int>(i));
    std::vector<std::string> name(cells.begin(), cells.begin() + static_cast<std::ptrdiff_t>(keys));
    if (auto record = record_cells::read<Record>(cells)) {
      records.emplace(std::move(name), *std::move(record));
    } else {
      senseless.insert(std::move(name));
    }
    return ++rows < kMostRows;
  };
  store::read_from_both_ends(database, query + logbook_file::names<Record>(keys, "", ", "),
                             query + logbook_file::names<Record>(keys, " DESC", ", "), take);
  for (auto& [name, record] : records) into.push_back(std::move(record));
  unreadable += senseless.size();
}

// A record without its stop could not be kept: nobody would know where it was made.
template <class Record>
void drop_without_stop(const std::set<std::string>& stops, std::vector<Record>& records,
                       std::size_t& unreadable) {
  unreadable +=
      std::erase_if(records, [&](const Record& record) { return !stops.contains(record.stop_id); });
}

void salvage_changes(Database& database, std::vector<AntennaChange>& changes) {
  std::map<std::int64_t, AntennaChange> by_step;
  const std::string query = "SELECT " + std::string(logbook_file::kChangeColumns) +
                            ", step FROM antenna_changes ORDER BY step";
  store::read_from_both_ends(database, query, query + " DESC", [&](const Statement& row) {
    return by_step.emplace(row.integer(5), logbook_file::read_change(row)).second;
  });
  for (auto& [step, change] : by_step) changes.push_back(std::move(change));
}

}  // namespace

SalvagedLogbook salvage_logbook(const std::string& path) {
  SalvagedLogbook found;
  auto database = store::open_damaged(path);
  if (!database) return found;
  const std::string kept = "SELECT name, value FROM kept ORDER BY name";
  store::read_from_both_ends(*database, kept, kept + " DESC", [&](const Statement& row) {
    return found.kept.emplace(row.text(0), row.text(1)).second;
  });
  salvage_changes(*database, found.changes);
  salvage(*database, found.content.stops, found.unreadable);
  salvage(*database, found.content.outcomes, found.unreadable);
  salvage(*database, found.content.sweeps, found.unreadable);
  std::set<std::string> stops;
  for (const StopRecord& stop : found.content.stops) stops.insert(stop.id);
  drop_without_stop(stops, found.content.outcomes, found.unreadable);
  drop_without_stop(stops, found.content.sweeps, found.unreadable);
  return found;
}

}  // namespace mastwise
