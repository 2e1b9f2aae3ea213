#include "core/import/joined_mapping.hpp"

#include "core/import/mapping_json.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>

namespace mastwise {
namespace {

using namespace mapping_json;

// The tables read so far, to check the table of a column "table.column".
using Names = std::set<std::string>;

void check_column(const std::string& column, const Names& names, const std::string& where) {
  const std::size_t dot = column.find('.');
  if (dot != std::string::npos && names.count(column.substr(0, dot)) > 0) return;
  fail(where, fmt::format("\"{}\" is not a column of an earlier table", column),
       fmt::format("write \"table.column\"; the tables are: {}", fmt::join(names, ", ")));
}

TableFile read_file(const json& object, const std::string& where, const Names& before) {
  TableFile file{.file = needed_text(object, "file", where),
                 .columns = texts_at(object, "columns", where),
                 .where = filter_at(object, "where", where),
                 .where_not = filter_at(object, "where_not", where)};
  if (before.empty()) return file;
  file.key = needed_text(object, "key", where);
  file.joins = needed_text(object, "joins", where);
  check_column(file.joins, before, where);
  return file;
}

std::vector<JoinedTable> read_tables(const json& root, Names& names) {
  const json& list = root.at("tables");
  if (!list.is_array() || list.empty()) fail("tables", "this is not a list of tables");
  std::vector<JoinedTable> tables;
  for (const json& object : list) {
    const std::string where = fmt::format("tables, number {}", tables.size() + 1);
    expect_object(object, where,
                  {"name", "file", "key", "joins", "where", "where_not", "optional", "columns"});
    JoinedTable table{.name = needed_text(object, "name", where)};
    if (names.count(table.name) > 0 || table.name.find('.') != std::string::npos) {
      fail(where, fmt::format("\"{}\" cannot be a table name", table.name),
           "give each table a different name without a dot");
    }
    table.file = read_file(object, where + ", " + table.name, names);
    table.optional = flag_at(object, "optional", where);
    names.insert(table.name);
    tables.push_back(std::move(table));
  }
  return tables;
}

PatternTable read_pattern(const json& object, const Names& names) {
  const std::string where = "pattern";
  expect_object(
      object, where,
      {"file", "key", "joins", "where", "where_not", "columns", "azimuth", "field", "rotation"});
  PatternTable pattern{.file = read_file(object, where, names),
                       .azimuth = needed_text(object, "azimuth", where),
                       .field = needed_text(object, "field", where),
                       .rotation = text_at(object, "rotation", where)};
  if (!pattern.rotation.empty()) check_column(pattern.rotation, names, where);
  return pattern;
}

LatestRule read_latest(const json& object, const Names& names) {
  const std::string where = "latest";
  expect_object(object, where, {"column", "equals", "date"});
  LatestRule latest{needed_text(object, "column", where), needed_text(object, "equals", where),
                    needed_text(object, "date", where)};
  for (const std::string& column : {latest.column, latest.equals, latest.date}) {
    check_column(column, names, where);
  }
  return latest;
}

std::vector<JoinedNote> read_notes(const json& object, const Names& names) {
  if (!object.is_object()) fail("notes", "this is not an object", "write it in braces, { }");
  std::vector<JoinedNote> notes;
  for (const auto& item : object.items()) {
    JoinedNote note{item.key(), texts_at(object, item.key(), "notes")};
    for (const std::string& column : note.columns) check_column(column, names, "notes");
    notes.push_back(std::move(note));
  }
  return notes;
}

void check_columns(const TableMapping& stations, const Names& names) {
  for (const auto& [name, rule] : stations.fields) {
    check_column(rule.column, names, "fields, " + name);
    for (const Fallback& fallback : rule.otherwise) {
      for (const std::string& column : fallback.columns) {
        check_column(column, names, "fields, " + name);
      }
    }
  }
  for (const AngleRule* rule : {&stations.latitude, &stations.longitude}) {
    for (const std::string* column :
         {&rule->column, &rule->minutes_column, &rule->seconds_column, &rule->letter_column}) {
      if (!column->empty()) check_column(*column, names, "latitude and longitude");
    }
  }
}

JoinedMapping read_joined(const json& root) {
  if (!root.is_object()) fail("whole", "this is not an object", "write it in braces, { }");
  if (root.find("tables") == root.end()) fail("tables", "this key is missing", "list the files");
  json plain = root;
  for (const char* key : {"tables", "pattern", "record_end", "latest", "notes"}) plain.erase(key);
  JoinedMapping mapping;
  auto stations = parse_table_mapping(plain.dump());
  if (!stations) throw Fault{stations.error()};
  mapping.stations = std::move(stations).value();
  if (mapping.stations.separator == '\0') fail("separator", "this key is missing", "add it");
  mapping.format.separator = mapping.stations.separator;
  mapping.format.record_end = text_at(root, "record_end", "record_end");
  if (mapping.format.record_end.size() > 8) fail("record_end", "this is longer than 8 characters");
  Names names;
  mapping.tables = read_tables(root, names);
  if (const auto found = root.find("pattern"); found != root.end()) {
    mapping.pattern = read_pattern(*found, names);
  }
  if (const auto found = root.find("latest"); found != root.end()) {
    mapping.latest = read_latest(*found, names);
  }
  if (const auto found = root.find("notes"); found != root.end()) {
    mapping.notes = read_notes(*found, names);
  }
  check_columns(mapping.stations, names);
  return mapping;
}

}  // namespace

Result<JoinedMapping> parse_joined_mapping(std::string_view text) {
  return read<JoinedMapping>(text, read_joined);
}

bool is_joined_mapping(std::string_view text) {
  const json root = read_json(text);
  return root.is_object() && root.find("tables") != root.end();
}

}  // namespace mastwise
