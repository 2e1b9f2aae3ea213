#include "core/import/joined_import.hpp"

#include "core/import/file_scan.hpp"
#include "core/import/row_reader.hpp"
#include "core/import/station_fields.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <limits>
#include <set>
#include <tuple>
#include <unordered_map>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

using Points = std::vector<TransmitPattern::Point>;
using Index = std::unordered_multimap<std::string, std::size_t>;

// An incomplete station: its cells so far, indexed as Join::columns_.
struct Joined {
  std::size_t line = 0;
  std::vector<std::string> cells = {};
};

// Which of several rows of one station is kept: the highest.
struct Rank {
  bool latest = false;
  std::string date = {};
  double erp_kw = 0.0;
  bool operator<(const Rank& other) const {
    return std::tie(latest, date, erp_kw) < std::tie(other.latest, other.date, other.erp_kw);
  }
  bool same_filing(const Rank& other) const { return latest == other.latest && date == other.date; }
};

std::string table_of(const std::string& column) {
  return column.substr(0, column.find('.'));
}

class Join {
 public:
  Join(TableFiles& files, const JoinedMapping& mapping, const JoinProgress& progress)
      : files_(files), mapping_(mapping), progress_(progress) {}

  Result<StationTable> read();

 private:
  void need(const std::string& column, bool optional = false);
  void need_all();
  std::size_t place(const std::string& column) const;
  Result<Done> count(std::size_t bytes);
  Result<Done> keep(std::string_view cell, std::string& into);
  Result<Done> read_first(const JoinedTable& table);
  Result<Done> read_next(const JoinedTable& table);
  Result<Done> read_patterns(const PatternTable& table);
  void note(const TableFile& file, const joined::ScanCounts& counts);
  // The wanted columns of the table, and the destination of their cells.
  std::pair<std::vector<joined::Wanted>, std::vector<std::size_t>> own_columns(
      const std::string& table) const;
  Index index(const std::string& column) const;
  Result<StationTable> stations();
  void put_pattern(const Joined& joined, Station& station);
  void put_notes(const Joined& joined, Station& station) const;
  Rank rank_of(const Joined& joined, const Station& station) const;
  void put(Station station, const Rank& rank, StationTable& table);
  bool lacks_file(const TableFile& file, const std::string& consequence);

  TableFiles& files_;
  const JoinedMapping& mapping_;
  const JoinProgress& progress_;
  std::vector<std::string> columns_ = {};       // "table.column"
  std::set<std::string> needed_ = {};           // the subset without which nothing can be read
  std::vector<std::string> for_stations_ = {};  // the subset that stations are read from
  std::vector<Joined> rows_ = {};
  std::unordered_map<std::string, Points> patterns_ = {};
  std::unordered_map<std::string, std::pair<std::size_t, Rank>> by_id_ = {};
  std::size_t kept_ = 0;
  std::size_t bad_patterns_ = 0;
  std::string bad_pattern_ = {};
  std::vector<std::string> remarks_ = {};
};

void Join::need(const std::string& column, bool optional) {
  if (column.empty()) return;
  if (!optional) needed_.insert(column);
  if (std::find(columns_.begin(), columns_.end(), column) == columns_.end()) {
    columns_.push_back(column);
  }
}

void Join::need_all() {
  for (const auto& [name, rule] : mapping_.stations.fields) {
    need(rule.column, rule.optional);
    for (const Fallback& fallback : rule.otherwise) {
      for (const std::string& column : fallback.columns) need(column, true);
    }
  }
  for (const AngleRule* rule : {&mapping_.stations.latitude, &mapping_.stations.longitude}) {
    need(rule->column);
    need(rule->minutes_column);
    need(rule->seconds_column);
    need(rule->letter_column);
  }
  for_stations_ = columns_;
  for (const JoinedTable& table : mapping_.tables) need(table.file.joins, table.optional);
  if (mapping_.latest) {
    for (const std::string* column :
         {&mapping_.latest->column, &mapping_.latest->equals, &mapping_.latest->date}) {
      need(*column, true);
    }
  }
  for (const JoinedNote& note : mapping_.notes) {
    for (const std::string& column : note.columns) need(column, true);
  }
  if (!mapping_.pattern) return;
  need(mapping_.pattern->file.joins);
  need(mapping_.pattern->rotation);
}

std::size_t Join::place(const std::string& column) const {
  return static_cast<std::size_t>(std::find(columns_.begin(), columns_.end(), column) -
                                  columns_.begin());
}

Result<Done> Join::count(std::size_t bytes) {
  kept_ += bytes;
  if (kept_ <= kMostKept) return Done{};
  return Error{.what = fmt::format("the import needs more than {} MB of memory", kMostKept >> 20),
               .remedy = "narrow \"where\" in the mapping to fewer rows"};
}

Result<Done> Join::keep(std::string_view cell, std::string& into) {
  into = cell;
  // Longer ones are allocated separately, with some overhead.
  constexpr std::size_t kWithinString = 15;
  return count(sizeof(std::string) + (cell.size() > kWithinString ? cell.size() + 16 : 0));
}

std::pair<std::vector<joined::Wanted>, std::vector<std::size_t>> Join::own_columns(
    const std::string& table) const {
  std::pair<std::vector<joined::Wanted>, std::vector<std::size_t>> own;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    if (table_of(columns_[i]) != table) continue;
    own.first.push_back({columns_[i].substr(table.size() + 1), needed_.count(columns_[i]) == 0});
    own.second.push_back(i);
  }
  return own;
}

Index Join::index(const std::string& column) const {
  Index index;
  const std::size_t at = place(column);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (!rows_[i].cells[at].empty()) index.emplace(rows_[i].cells[at], i);
  }
  return index;
}

void Join::note(const TableFile& file, const joined::ScanCounts& counts) {
  remarks_.push_back(fmt::format("{}: {} of {} records pass the mapping's filters", file.file,
                                 counts.passed, counts.records));
  if (counts.malformed > 0) {
    remarks_.push_back(fmt::format("{}: {} records have a wrong number of cells, or no end",
                                   file.file, counts.malformed));
  }
  if (!counts.missing.empty()) {
    remarks_.push_back(fmt::format("{}: missing columns, whose facts stay unknown: {}", file.file,
                                   fmt::join(counts.missing, ", ")));
  }
}

// A file that the import can do without.
bool Join::lacks_file(const TableFile& file, const std::string& consequence) {
  if (files_.has(file.file)) return false;
  remarks_.push_back(fmt::format("missing file {}: {}", file.file, consequence));
  return true;
}

Result<Done> Join::read_first(const JoinedTable& table) {
  const auto own = own_columns(table.name);
  const auto counts = joined::scan(files_, table.file, mapping_.format, own.first, progress_,
                                   [&](const joined::Row& row) -> Result<Done> {
                                     Joined joined{row.line, {}};
                                     joined.cells.resize(columns_.size());
                                     for (std::size_t i = 0; i < own.second.size(); ++i) {
                                       auto done = keep(row.cells[i], joined.cells[own.second[i]]);
                                       if (!done) return done;
                                     }
                                     rows_.push_back(std::move(joined));
                                     return Done{};
                                   });
  if (!counts) return counts.error();
  note(table.file, *counts);
  return Done{};
}

Result<Done> Join::read_next(const JoinedTable& table) {
  if (table.optional && lacks_file(table.file, "its facts stay unknown")) return Done{};
  auto own = own_columns(table.name);
  own.first.push_back({table.file.key});
  const Index known = index(table.file.joins);
  std::vector<std::pair<std::size_t, Joined>> next;  // with the number of the source row
  std::vector<bool> matched(rows_.size(), false);
  const auto take = [&](const joined::Row& row) -> Result<Done> {
    const auto range = known.equal_range(std::string(row.cells.back()));
    for (auto found = range.first; found != range.second; ++found) {
      Joined joined = rows_[found->second];
      if (matched[found->second]) kept_ += columns_.size() * sizeof(std::string);
      matched[found->second] = true;
      for (std::size_t i = 0; i < own.second.size(); ++i) {
        auto done = keep(row.cells[i], joined.cells[own.second[i]]);
        if (!done) return done;
      }
      next.emplace_back(found->second, std::move(joined));
    }
    return Done{};
  };
  const auto counts = joined::scan(files_, table.file, mapping_.format, own.first, progress_, take);
  if (!counts) return counts.error();
  note(table.file, *counts);
  std::size_t without = 0;
  const std::size_t joins = place(table.file.joins);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    if (matched[i]) continue;
    // A row that names nothing in an optional table has no match to lack.
    if (!table.optional || !rows_[i].cells[joins].empty()) ++without;
    if (table.optional) next.emplace_back(i, std::move(rows_[i]));
  }
  if (without > 0) {
    remarks_.push_back(fmt::format("{} rows have no match in {}{}", without, table.file.file,
                                   table.optional ? "" : " and are left out"));
  }
  std::stable_sort(next.begin(), next.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  rows_.clear();
  for (auto& one : next) rows_.push_back(std::move(one.second));
  return Done{};
}

Result<Done> Join::read_patterns(const PatternTable& table) {
  if (lacks_file(table.file, "the transmitting antennas' patterns stay unknown")) return Done{};
  const Index known = index(table.file.joins);
  std::size_t orphans = 0;
  const auto take = [&](const joined::Row& row) -> Result<Done> {
    const std::string key(row.cells[2]);
    if (known.find(key) == known.end()) {
      ++orphans;
      return Done{};
    }
    const auto azimuth = fields::parse_number(row.cells[0], false);
    const auto field = fields::parse_number(row.cells[1], false);
    // An unreadable number makes the pattern invalid: -1 is not a field.
    patterns_[key].push_back(
        {static_cast<float>(azimuth.value_or(-1.0)), static_cast<float>(field.value_or(-1.0))});
    return count(2 * sizeof(TransmitPattern::Point));
  };
  const auto counts =
      joined::scan(files_, table.file, mapping_.format,
                   {{table.azimuth}, {table.field}, {table.file.key}}, progress_, take);
  if (!counts) return counts.error();
  note(table.file, *counts);
  if (orphans > 0) {
    remarks_.push_back(
        fmt::format("{}: {} azimuths belong to no imported station", table.file.file, orphans));
  }
  return Done{};
}

void Join::put_pattern(const Joined& joined, Station& station) {
  if (!mapping_.pattern) return;
  const auto found = patterns_.find(joined.cells[place(mapping_.pattern->file.joins)]);
  if (found == patterns_.end()) return;
  double rotation_deg = 0.0;
  if (const std::string& column = mapping_.pattern->rotation; !column.empty()) {
    const std::string& cell = joined.cells[place(column)];
    const auto read = fields::parse_number(cell, false);
    rotation_deg = cell.empty() ? 0.0 : read.value_or(std::numeric_limits<double>::quiet_NaN());
  }
  auto pattern = TransmitPattern::from_points(found->second, rotation_deg);
  if (pattern) {
    station.pattern = std::move(pattern).value();
    return;
  }
  if (bad_patterns_++ == 0) {
    bad_pattern_ = fmt::format("{}: {}", station.call_sign, pattern.error().message());
  }
}

void Join::put_notes(const Joined& joined, Station& station) const {
  for (const JoinedNote& note : mapping_.notes) {
    for (const std::string& column : note.columns) {
      const std::string& cell = joined.cells[place(column)];
      if (cell.empty()) continue;
      station.notes.push_back({note.label, to_utf8(cell)});
      break;
    }
  }
}

Rank Join::rank_of(const Joined& joined, const Station& station) const {
  Rank rank{.erp_kw = station.erp_kw.value_or(0.0)};
  if (!mapping_.latest) return rank;
  const std::string& filing = joined.cells[place(mapping_.latest->column)];
  rank.latest = !filing.empty() && filing == joined.cells[place(mapping_.latest->equals)];
  rank.date = joined.cells[place(mapping_.latest->date)];
  return rank;
}

void Join::put(Station station, const Rank& rank, StationTable& table) {
  const auto known = by_id_.emplace(station.id, std::pair(table.stations.size(), rank));
  if (known.second) {
    table.stations.push_back(std::move(station));
    return;
  }
  auto& [index, kept] = known.first->second;
  const bool of_one_filing = rank.same_filing(kept);
  if (kept < rank) {
    std::swap(table.stations[index], station);
    kept = rank;
  }
  table.rejected.push_back(
      {station.provenance.line,
       of_one_filing
           ? fmt::format("the station {} is already listed with at least this power", station.id)
           : fmt::format("the station {} has a later filing", station.id)});
}

Result<StationTable> Join::stations() {
  DelimitedRow names;
  for (const std::string& column : for_stations_) names.cells.push_back(column);
  auto header = TableHeader::read(names);
  if (!header) return header.error();
  auto reader = RowReader::bind(mapping_.stations, std::move(header).value(), false);
  if (!reader) return reader.error();
  StationTable table{.source = mapping_.stations.source, .rows_read = rows_.size()};
  for (Joined& joined : rows_) {
    DelimitedRow row{.line = joined.line};
    for (std::size_t i = 0; i < for_stations_.size(); ++i) {
      row.cells.push_back(to_utf8(joined.cells[i]));
    }
    auto station = reader->read(row);
    if (!station) {
      table.rejected.push_back({row.line, station.error().message()});
      continue;
    }
    put_pattern(joined, *station);
    put_notes(joined, *station);
    const Rank rank = rank_of(joined, *station);
    put(std::move(station).value(), rank, table);
  }
  table.remarks = reader->remarks();
  table.remarks.insert(table.remarks.begin(), remarks_.begin(), remarks_.end());
  if (bad_patterns_ > 0) {
    table.remarks.push_back(fmt::format("{} antenna patterns could not be used; the first: {}",
                                        bad_patterns_, bad_pattern_));
  }
  return table;
}

Result<StationTable> Join::read() {
  need_all();
  for (std::size_t i = 0; i < mapping_.tables.size(); ++i) {
    const JoinedTable& table = mapping_.tables[i];
    if (const auto done = i == 0 ? read_first(table) : read_next(table); !done) {
      return done.error();
    }
  }
  if (mapping_.pattern) {
    if (const auto done = read_patterns(*mapping_.pattern); !done) return done.error();
  }
  auto table = stations();
  if (!table || !table->stations.empty()) return table;
  const std::string first =
      table->rejected.empty() ? std::string() : "; " + table->rejected.front().reason;
  return Error{.what = fmt::format("no stations remain: {}{}", fmt::join(remarks_, "; "), first),
               .remedy = "correct the mapping of the table that passes or matches nothing"};
}

}  // namespace

Result<StationTable> read_joined_tables(TableFiles& files, const JoinedMapping& mapping,
                                        const JoinProgress& progress) {
  return Join(files, mapping, progress).read();
}

}  // namespace mastwise
