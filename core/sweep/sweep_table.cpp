#include "core/sweep/sweep_table.hpp"

#include "core/import/station_fields.hpp"
#include "core/text/delimited.hpp"
#include "core/text/words.hpp"

#include <cstddef>
#include <string>

#include <fmt/format.h>

namespace mastwise::aim {
namespace {

constexpr std::size_t kMostRows = 360;
constexpr double kLongestWaitS = 3600.0;

struct Columns {
  std::optional<std::size_t> heading, reading, waiting;
};

Error at_line(std::size_t line, std::string what, std::string remedy) {
  return {
      .what = std::move(what), .where = fmt::format("line {}", line), .remedy = std::move(remedy)};
}

Result<Columns> read_columns(const DelimitedRow& row) {
  Columns columns;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const std::string_view name = words::trimmed(row.cells[i]);
    std::optional<std::size_t>* column = words::same_word(name, "heading_deg") ? &columns.heading
                                         : words::same_word(name, "reading")   ? &columns.reading
                                         : words::same_word(name, "waiting_s") ? &columns.waiting
                                                                               : nullptr;
    if (column == nullptr) continue;
    if (*column) {
      return at_line(row.line, fmt::format("the column \"{}\" appears twice", name),
                     "give each column once");
    }
    *column = i;
  }
  if (!columns.heading || !columns.reading) {
    return at_line(
        row.line,
        fmt::format("the column \"{}\" is missing", columns.heading ? "reading" : "heading_deg"),
        "begin the table with the line \"heading_deg,reading\"");
  }
  return columns;
}

bool says_nothing(std::string_view cell) {
  return cell.empty() || cell == "-" || words::same_word(cell, "nothing");
}

Result<Reading> read_row(const DelimitedRow& row, const Columns& columns, bool decimal_comma) {
  const auto cell = [&](std::size_t column) {
    return column < row.cells.size() ? words::trimmed(row.cells[column]) : std::string_view();
  };
  const std::string_view heading = cell(*columns.heading);
  const auto heading_deg = fields::parse_number(heading, decimal_comma);
  if (!heading_deg || *heading_deg < 0.0 || *heading_deg > 360.0) {
    return at_line(row.line, fmt::format("\"{}\" is not a heading", heading),
                   "headings go from 0 to 360 degrees");
  }
  Reading reading{.heading = Bearing<Dial>::degrees(*heading_deg), .value = std::nullopt};
  const std::string_view value = cell(*columns.reading);
  if (!says_nothing(value)) {
    reading.value = fields::parse_number(value, decimal_comma);
    if (!reading.value) {
      return at_line(row.line, fmt::format("\"{}\" is not a reading", value),
                     "give a number, or \"nothing\" where the receiver found no signal");
    }
  }
  const std::string_view waiting = columns.waiting ? cell(*columns.waiting) : std::string_view();
  if (!waiting.empty()) {
    const auto seconds = fields::parse_number(waiting, decimal_comma);
    if (!seconds || *seconds < 0.0 || *seconds > kLongestWaitS) {
      return at_line(row.line, fmt::format("\"{}\" is not a waiting time", waiting),
                     "give seconds, 0 to 3600, or leave it empty");
    }
    reading.waiting = milliseconds(static_cast<milliseconds::rep>(*seconds * 1000.0));
  }
  return reading;
}

}  // namespace

Result<std::vector<Reading>> read_sweep(std::string_view text) {
  DelimitedReader reader(text, '\0', '#');
  const bool decimal_comma = reader.separator() != ',';
  std::optional<Columns> columns;
  std::vector<Reading> readings;
  while (const auto row = reader.next()) {
    if (!row->fault.empty()) return at_line(row->line, row->fault, "");
    if (!columns) {
      const auto read = read_columns(*row);
      if (!read) return read.error();
      columns = *read;
      continue;
    }
    const auto reading = read_row(*row, *columns, decimal_comma);
    if (!reading) return reading.error();
    if (readings.size() == kMostRows) {
      return at_line(row->line, fmt::format("the sweep has more than {} readings", kMostRows),
                     "give the readings of one station and one sweep");
    }
    readings.push_back(*reading);
  }
  if (readings.empty()) {
    return Error{.what = "the sweep has no readings",
                 .remedy = "begin with a line \"heading_deg,reading\", then one reading per line"};
  }
  return readings;
}

}  // namespace mastwise::aim
