#pragma once

#include "core/import/table_mapping.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Properties of a table's columns, for guess_mapping.
namespace mastwise::guess {

struct Column {
  std::string name = {};
  std::string key = {};                 // letters and digits of the name, in capitals
  std::string bare = {};                // the key without a unit at the end
  std::vector<std::string> cells = {};  // those that are not empty
};

// The columns of a head, with the cells of at most 200 rows that are as long as the header.
std::vector<Column> columns_of(std::string_view head, char& separator);

// The head without an incomplete last line.
std::string_view whole_lines(std::string_view head);

// Columns whose header fits the field (by the names of table_mapping.hpp), best first.
std::vector<const Column*> named(const std::vector<Column>& columns, std::string_view field);

// The share of the cells, 0 to 1, that pass the test; 0 without cells.
template <class Test>
double share(const Column& column, const Test& test) {
  std::size_t fitting = 0;
  for (const std::string& cell : column.cells) fitting += test(cell) ? 1 : 0;
  return column.cells.empty()
             ? 0.0
             : static_cast<double>(fitting) / static_cast<double>(column.cells.size());
}

// Maps trade words in the field's cells to Mastwise words; empty for fields without such words.
std::map<std::string, std::string> usual_values(std::string_view field);

bool looks_like_call_sign(std::string_view cell);
bool looks_like_channel(std::string_view cell);
std::optional<double> number(std::string_view cell, bool decimal_comma);

// How an axis is written, and whether all of its cells are positive without a letter.
struct Angle {
  AngleRule rule = {};
  bool unsigned_all = false;
};
std::optional<Angle> find_latitude(const std::vector<Column>& columns, bool decimal_comma);
std::optional<Angle> find_longitude(const std::vector<Column>& columns, bool decimal_comma);
// The column by its name alone, where its cells cannot be read; empty without one.
std::string latitude_column(const std::vector<Column>& columns);
std::string longitude_column(const std::vector<Column>& columns);

}  // namespace mastwise::guess
