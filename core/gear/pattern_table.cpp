#include "core/gear/pattern.hpp"
#include "core/import/station_fields.hpp"
#include "core/text/delimited.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>

#include <fmt/format.h>

namespace mastwise::gear {
namespace {

constexpr double kWidestGapDeg = 30.0;
constexpr double kMostExcessDb = 1.0;
constexpr double kLargestDb = 200.0;
constexpr double kLargestField = 1e9;

enum class Response { unsaid, decibels, field };

struct Row {
  double angle_deg;
  double value;
  std::size_t line;
};

struct Rows {
  Response response = Response::unsaid;
  std::vector<Row> rows = {};
};

std::string at_line(std::size_t line) {
  return fmt::format("line {}", line);
}

// Without any of the usual separators, blanks separate the columns.
DelimitedReader reader_of(std::string_view text) {
  const DelimitedReader usual(text, '\0', '#');
  DelimitedReader probe = usual;
  const auto first = probe.next();
  return first && first->cells.size() == 1 ? DelimitedReader(text, ' ', '#') : usual;
}

// The cells with content: a run of blanks is one separator, and spreadsheets leave separators after
// the last cell.
std::vector<std::string_view> cells_of(const DelimitedRow& row, char separator) {
  std::vector<std::string_view> cells;
  for (const std::string& cell : row.cells) {
    const std::string_view text = words::trimmed(cell);
    if (!text.empty() || separator != ' ') cells.push_back(text);
  }
  while (!cells.empty() && cells.back().empty()) cells.pop_back();
  return cells;
}

Result<Response> read_heading(std::string_view cell, std::size_t line) {
  const std::string heading = words::upper(cell);
  if (heading.find("DB") != std::string::npos) return Response::decibels;
  if (heading.find("FIELD") != std::string::npos) return Response::field;
  return Error{.what = fmt::format("the heading \"{}\" does not say what the numbers are", cell),
               .where = at_line(line),
               .remedy = "head the column with \"relative_db\" or \"relative_field\""};
}

Result<Row> read_row(const std::vector<std::string_view>& cells, bool decimal_comma,
                     std::size_t line) {
  const auto angle_deg = fields::parse_number(cells[0], decimal_comma);
  if (!angle_deg || std::fabs(*angle_deg) > 360.0) {
    return Error{.what = fmt::format("\"{}\" is not an angle in degrees", cells[0]),
                 .where = at_line(line),
                 .remedy = "angles go from -360 to 360"};
  }
  const auto value = fields::parse_number(cells[1], decimal_comma);
  if (!value) {
    return Error{.what = fmt::format("\"{}\" is not a number", cells[1]),
                 .where = at_line(line),
                 .remedy = "give the response in decibels or as the relative field"};
  }
  return Row{*angle_deg, *value, line};
}

Result<Rows> read_rows(std::string_view text) {
  DelimitedReader reader = reader_of(text);
  const bool decimal_comma = reader.separator() != ',';
  Rows table;
  bool begun = false;
  while (const auto row = reader.next()) {
    if (!row->fault.empty()) return Error{.what = row->fault, .where = at_line(row->line)};
    const auto cells = cells_of(*row, reader.separator());
    if (cells.empty()) continue;
    if (cells.size() != 2) {
      return Error{.what = fmt::format("expected 2 columns, found {}", cells.size()),
                   .where = at_line(row->line),
                   .remedy = "give the angle in degrees and the response, separated by a comma"};
    }
    const bool heading = !begun && !fields::parse_number(cells[1], decimal_comma);
    begun = true;
    if (heading) {
      const auto response = read_heading(cells[1], row->line);
      if (!response) return response.error();
      table.response = *response;
      continue;
    }
    const auto read = read_row(cells, decimal_comma, row->line);
    if (!read) return read.error();
    table.rows.push_back(*read);
  }
  if (table.rows.empty()) {
    return Error{.what = "the table has no rows",
                 .remedy = "give the angle in degrees and the response, one pair per line"};
  }
  return table;
}

Result<Response> response_of(const Rows& table) {
  if (table.response != Response::unsaid) return table.response;
  const auto any = [&](auto wanted) {
    return std::any_of(table.rows.begin(), table.rows.end(),
                       [&](const Row& row) { return wanted(row.value); });
  };
  if (any([](double value) { return value < 0.0; })) return Response::decibels;
  if (!any([](double value) { return value > 1.0; })) return Response::field;
  return Error{.what = "the numbers may be decibels or a field",
               .remedy = "head the column with \"relative_db\" or \"relative_field\""};
}

Result<Done> check_range(const Rows& table, Response response) {
  for (const Row& row : table.rows) {
    if (response == Response::decibels && std::fabs(row.value) > kLargestDb) {
      return Error{.what = fmt::format("{} dB is not a valid antenna response", row.value),
                   .where = at_line(row.line),
                   .remedy = "decibels go from -200 to 200"};
    }
    if (response == Response::field && (row.value < 0.0 || row.value > kLargestField)) {
      return Error{.what = fmt::format("{} is not a relative field", row.value),
                   .where = at_line(row.line),
                   .remedy = "the field is 1 on the axis and never below 0"};
    }
  }
  return Done{};
}

// All rows within [0, 360), sorted by angle. A repeated angle with the same value, as in tables
// that close the circle, counts once.
Result<std::vector<Row>> around_the_circle(std::vector<Row> rows) {
  const bool one_side = std::all_of(rows.begin(), rows.end(), [](const Row& row) {
    return row.angle_deg >= 0.0 && row.angle_deg <= 180.0;
  });
  const std::size_t given = rows.size();
  for (std::size_t i = 0; i < given; ++i) {
    if (one_side) rows.push_back({360.0 - rows[i].angle_deg, rows[i].value, rows[i].line});
  }
  for (Row& row : rows) row.angle_deg = fold_circle_deg(row.angle_deg);
  std::stable_sort(rows.begin(), rows.end(),
                   [](const Row& a, const Row& b) { return a.angle_deg < b.angle_deg; });

  std::vector<Row> circle;
  for (const Row& row : rows) {
    if (circle.empty() || circle.back().angle_deg != row.angle_deg) {
      circle.push_back(row);
    } else if (circle.back().value != row.value) {
      return Error{.what = fmt::format("{} degrees has both {} and {}", row.angle_deg,
                                       circle.back().value, row.value),
                   .where = at_line(std::max(row.line, circle.back().line)),
                   .remedy = "give each angle once"};
    }
  }
  return circle;
}

Result<Done> check_gaps(const std::vector<Row>& circle) {
  for (std::size_t i = 0; i < circle.size(); ++i) {
    const double from_deg = circle[i].angle_deg;
    const double to_deg = i + 1 < circle.size() ? circle[i + 1].angle_deg : 360.0;
    if (to_deg - from_deg > kWidestGapDeg) {
      return Error{
          .what = fmt::format("no row between {} and {} degrees", from_deg, to_deg),
          .remedy = fmt::format("give a row at least every {} degrees around the circle, or "
                                "from 0 to 180 for a symmetrical antenna",
                                kWidestGapDeg)};
    }
  }
  return Done{};
}

// The rows as fields, 1 on the axis.
Result<std::vector<Row>> relative_fields(std::vector<Row> circle, Response response) {
  const Row axis = circle.front();
  if (axis.angle_deg != 0.0 || (response == Response::field && axis.value == 0.0)) {
    return Error{.what = "no response on the axis, at 0 degrees",
                 .remedy = "count the angles from the strongest direction"};
  }
  for (Row& row : circle) {
    const double field = response == Response::field
                             ? row.value / axis.value
                             : std::pow(10.0, (row.value - axis.value) / 20.0);
    const double excess_db = 20.0 * std::log10(field);
    if (excess_db > kMostExcessDb) {
      return Error{
          .what = fmt::format("{} degrees is {:.1f} dB stronger than the axis, at 0 degrees",
                              row.angle_deg, excess_db),
          .where = at_line(row.line),
          .remedy = "count the angles from the strongest direction"};
    }
    row.value = std::min(field, 1.0);
  }
  return circle;
}

Result<std::vector<Row>> read_circle(std::string_view text) {
  const auto table = read_rows(text);
  if (!table) return table.error();
  const auto response = response_of(*table);
  if (!response) return response.error();
  if (const auto range = check_range(*table, *response); !range) return range.error();
  auto circle = around_the_circle(table->rows);
  if (!circle) return circle.error();
  auto relative = relative_fields(*std::move(circle), *response);
  if (!relative) return relative.error();
  if (const auto gaps = check_gaps(*relative); !gaps) return gaps.error();
  return relative;
}

}  // namespace

Result<Pattern> Pattern::from_table(std::string_view text) {
  const auto circle = read_circle(text);
  if (!circle) return circle.error();
  Pattern pattern;
  pattern.floor_db_ = -60.0;
  for (const Row& row : *circle) pattern.table_.push_back({row.angle_deg, row.value});
  return pattern;
}

}  // namespace mastwise::gear
