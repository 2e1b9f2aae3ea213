#pragma once

#include "core/logbook/record.hpp"
#include "core/logbook/record_cells.hpp"
#include "core/store/sqlite.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The logbook's file: its versions, and records as rows of texts (see record_cells.hpp).
namespace mastwise::logbook_file {

constexpr const char* kDamagedRemedy =
    "start the Mastwise window: it moves the file aside and keeps what can be read";

// Fails on a damaged file.
Result<Done> check(store::Database& database);
Result<Done> bring_up_to_date(store::Database& database);
// A copy in memory that has the newest version, whatever older version the file has.
Result<store::Database> newest_copy(const store::Database& database);
std::int64_t newest_version();

// Writes a new, empty logbook. The name appears only once the file is complete, so that an empty
// file of that name is a damaged one.
Result<Done> create(const std::string& path);

// The columns of a change of the antenna, and the change in a row that begins with them.
constexpr const char* kChangeColumns = "antenna, changed, latitude_deg, longitude_deg, confirmed";
AntennaChange read_change(const store::Statement& row);

// The table of each type of record.
template <class Record>
constexpr const char* kTable = "";
template <>
inline constexpr const char* kTable<StopRecord> = "stops";
template <>
inline constexpr const char* kTable<OutcomeRecord> = "outcomes";
template <>
inline constexpr const char* kTable<SweepRecord> = "sweeps";
// The outcomes before each touch on this tablet.
constexpr const char* kOutcomesBefore = "outcomes_before";

// "id, changed, ..." of the first `count` fields, each followed by `after`.
template <class Record>
std::string names(std::size_t count, std::string_view after, std::string_view between) {
  std::string result;
  for (const auto& field : record_cells::fields<Record>().first(count)) {
    result += (result.empty() ? "" : std::string(between)) + std::string(field.name);
    result += after;
  }
  return result;
}

// The records that match a condition with its texts.
template <class Record, class... Texts>
Result<std::vector<Record>> select(store::Database& database, const std::string& table,
                                   const std::string& condition, const Texts&... texts) {
  const std::size_t count = record_cells::fields<Record>().size();
  auto query = database.prepare("SELECT " + names<Record>(count, "", ", ") + " FROM " + table +
                                " " + condition);
  if (!query) return query.error();
  query->bind(std::string_view(texts)...);
  std::vector<Record> found;
  std::vector<std::string> cells(count);
  while (true) {
    const auto row = query->step();
    if (!row) return row.error();
    if (!*row) return found;
    for (std::size_t i = 0; i < count; ++i) cells[i] = query->text(static_cast<int>(i));
    auto record = record_cells::read<Record>(cells);
    if (!record) {
      return Error{.what = "the logbook is damaged: " + record.error().message(),
                   .where = database.path(),
                   .remedy = kDamagedRemedy,
                   .damaged = true};
    }
    found.push_back(*std::move(record));
  }
}

// The record of the same name, deleted or not.
template <class Record>
Result<std::optional<Record>> find(store::Database& database, const Record& named) {
  const std::size_t keys = record_cells::kKeyFields<Record>;
  const std::vector<std::string> cells = record_cells::cells(named);
  const std::string condition = "WHERE " + names<Record>(keys, " = ?", " AND ");
  Result<std::vector<Record>> found = std::vector<Record>();
  if constexpr (record_cells::kKeyFields<Record> == 1) {
    found = select<Record>(database, kTable<Record>, condition, cells[0]);
  } else {
    found = select<Record>(database, kTable<Record>, condition, cells[0], cells[1], cells[2]);
  }
  if (!found) return found.error();
  return found->empty() ? std::nullopt : std::optional(std::move(found->front()));
}

// Writes a record into a table, replacing the one of its name.
template <class Record>
Result<Done> write(store::Database& database, const Record& record,
                   const std::string& table = kTable<Record>) {
  const std::size_t count = record_cells::fields<Record>().size();
  std::string marks = "?";
  for (std::size_t i = 1; i < count; ++i) marks += ", ?";
  auto insert = database.prepare("INSERT OR REPLACE INTO " + table + " (" +
                                 names<Record>(count, "", ", ") + ") VALUES (" + marks + ")");
  if (!insert) return insert.error();
  return insert->bind_texts(record_cells::cells(record)).run();
}

}  // namespace mastwise::logbook_file
