#include "core/logbook/logbook_csv.hpp"

#include "core/logbook/record_cells.hpp"
#include "core/text/delimited.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <charconv>
#include <map>
#include <tuple>
#include <utility>

#include <fmt/format.h>

namespace mastwise {
namespace {

using record_cells::fields;

constexpr std::string_view kDeleted = "deleted";
constexpr std::string_view kNotDeleted = "no";
constexpr std::string_view kStopId = "stop_id";

// The fields that have columns.
// Tables of older versions lack this column.
constexpr std::string_view kAddedLater = "amplifier";

std::vector<std::string> stop_columns() {
  std::vector<std::string> names;
  for (const auto& field : fields<StopRecord>()) {
    if (field.name != kDeleted) names.push_back("stop_" + std::string(field.name));
  }
  return names;
}
std::vector<std::string> outcome_columns() {
  std::vector<std::string> names;
  for (const auto& field : fields<OutcomeRecord>()) {
    if (field.name != kDeleted && field.name != kStopId) names.emplace_back(field.name);
  }
  return names;
}

void add_cell(std::string& line, std::string_view cell) {
  if (!line.empty()) line += ',';
  const bool plain =
      cell.find_first_of(",\"\r\n") == std::string_view::npos && cell == words::trimmed(cell);
  if (plain) {
    line += cell;
    return;
  }
  line += '"';
  for (const char c : cell) {
    if (c == '"') line += '"';
    line += c;
  }
  line += '"';
}

// As many decimals as the figure means: a tenth of a meter, degree, decibel or point. The store
// keeps them all.
int decimals_of(std::string_view name) {
  if (name == "latitude_deg" || name == "longitude_deg") return 6;
  for (const char* rounded : {"rig_heading_true_deg", "heading_true_deg", "chance_percent",
                              "margin_db", "deviation_db", "temperature_c"}) {
    if (name == rounded) return 1;
  }
  return -1;
}

std::string rounded(std::string_view name, std::string cell) {
  const int decimals = decimals_of(name);
  double value = 0.0;
  const auto [end, trouble] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (decimals < 0 || trouble != std::errc{} || end != cell.data() + cell.size()) return cell;
  std::string text = fmt::format("{:.{}f}", value, decimals);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  if (text == "-0") return "0";
  if (name == "longitude_deg" && text == "180") return "-180";
  return name.ends_with("heading_true_deg") && text == "360" ? "0" : text;
}

std::string line_of(const StopRecord& stop, const OutcomeRecord* outcome) {
  std::string line;
  for (const auto& field : fields<StopRecord>()) {
    if (field.name != kDeleted) add_cell(line, rounded(field.name, field.get(stop)));
  }
  for (const auto& field : fields<OutcomeRecord>()) {
    if (field.name == kDeleted || field.name == kStopId) continue;
    add_cell(line, outcome == nullptr ? std::string() : rounded(field.name, field.get(*outcome)));
  }
  return line + "\r\n";
}

class TableReader {
 public:
  explicit TableReader(std::string_view text) : rows_(text, ',') {}
  Result<LogbookTable> read();

 private:
  std::optional<Error> read_header();
  std::string read_row(const DelimitedRow& row);
  std::string cell(const DelimitedRow& row, const std::string& column) const {
    const auto place = places_.find(column);
    return place == places_.end() ? std::string() : row.cells[place->second];
  }

  DelimitedReader rows_;
  std::map<std::string, std::size_t, std::less<>> places_ = {};
  std::size_t columns_ = 0;
  std::map<std::string, StopRecord> stops_ = {};
  std::map<std::tuple<std::string, std::string, std::string>, OutcomeRecord> outcomes_ = {};
};

std::optional<Error> TableReader::read_header() {
  const auto header = rows_.next();
  if (!header) return Error{.what = "the table is empty"};
  columns_ = header->cells.size();
  for (std::size_t i = 0; i < columns_; ++i) {
    places_.try_emplace(std::string(words::trimmed(header->cells[i])), i);
  }
  std::string missing;
  for (const auto& names : {stop_columns(), outcome_columns()}) {
    for (const std::string& name : names) {
      if (places_.count(name) == 0 && name != kAddedLater)
        missing += (missing.empty() ? "" : ", ") + name;
    }
  }
  if (missing.empty()) return std::nullopt;
  return Error{.what = "missing column " + missing,
               .where = "line 1",
               .remedy = "choose a table that Mastwise exported"};
}

// Keeps the newer version.
template <class Key, class Record>
void keep(std::map<Key, Record>& records, const Key& key, Record record) {
  const auto [place, added] = records.try_emplace(key, record);
  if (!added && record_cells::holds_over(record, place->second)) place->second = std::move(record);
}

// Why a row cannot be read; empty if it can.
std::string TableReader::read_row(const DelimitedRow& row) {
  if (!row.fault.empty()) return row.fault;
  if (row.cells.size() != columns_) {
    return fmt::format("the row has {} cells, but the header has {}", row.cells.size(), columns_);
  }
  std::vector<std::string> cells;
  for (const auto& field : fields<StopRecord>()) {
    const bool deleted = field.name == kDeleted;
    cells.push_back(deleted ? std::string(kNotDeleted)
                            : cell(row, "stop_" + std::string(field.name)));
  }
  auto stop = record_cells::read<StopRecord>(cells);
  if (!stop) return stop.error().message();

  bool tried = false;
  cells.clear();
  for (const auto& field : fields<OutcomeRecord>()) {
    const bool deleted = field.name == kDeleted;
    cells.push_back(deleted ? std::string(kNotDeleted) : cell(row, std::string(field.name)));
    tried = tried || (!deleted && field.name != kStopId && !cells.back().empty());
  }
  if (tried) {
    auto outcome = record_cells::read<OutcomeRecord>(cells);
    if (!outcome) return outcome.error().message();
    keep(outcomes_, std::tuple(outcome->stop_id, outcome->source, outcome->station_id), *outcome);
  }
  keep(stops_, stop->id, *stop);
  return {};
}

Result<LogbookTable> TableReader::read() {
  if (const auto wrong = read_header()) return *wrong;
  LogbookTable table;
  while (const auto row = rows_.next()) {
    ++table.rows_read;
    std::string reason = read_row(*row);
    if (!reason.empty()) table.rejected.push_back({.line = row->line, .reason = std::move(reason)});
  }
  for (auto& [id, stop] : stops_) table.content.stops.push_back(std::move(stop));
  for (auto& [key, outcome] : outcomes_) table.content.outcomes.push_back(std::move(outcome));
  return table;
}

}  // namespace

std::string logbook_csv(const LogbookContent& content) {
  std::string text;
  for (const auto& names : {stop_columns(), outcome_columns()}) {
    for (const std::string& name : names) add_cell(text, name);
  }
  text += "\r\n";
  std::vector<StopRecord> stops = content.stops;
  std::stable_sort(stops.begin(), stops.end(),
                   [](const StopRecord& a, const StopRecord& b) { return a.arrived < b.arrived; });
  for (const StopRecord& stop : stops) {
    if (stop.mark.deleted) continue;
    bool tried = false;
    for (const OutcomeRecord& outcome : content.outcomes) {
      if (outcome.mark.deleted || outcome.stop_id != stop.id) continue;
      text += line_of(stop, &outcome);
      tried = true;
    }
    if (!tried) text += line_of(stop, nullptr);
  }
  return text;
}

Result<LogbookTable> read_logbook_csv(std::string_view text) {
  return TableReader(text).read();
}

}  // namespace mastwise
