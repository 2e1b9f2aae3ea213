#include "core/import/table_mapping.hpp"

#include "core/import/mapping_json.hpp"
#include "core/import/source_date.hpp"
#include "core/import/station_fields.hpp"
#include "core/text/words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise {
namespace {

using namespace mapping_json;

char character_at(const json& object, const std::string& key) {
  const std::string text = text_at(object, key, key);
  if (text.size() > 1 || text == "\"" || text == "\n" || text == "\r") {
    fail(key, fmt::format("\"{}\" is not a single plain character", text));
  }
  return text.empty() ? '\0' : text.front();
}

Source read_source(const json& root) {
  if (root.find("source") == root.end())
    fail("source", "this key is missing", "name the table's source");
  const json& object = root["source"];
  expect_object(object, "source", {"name", "date"});
  Source source{needed_text(object, "name", "source"), text_at(object, "date", "source")};
  if (const auto fault = source_date_fault(source.date)) fail("source", fault->what, fault->remedy);
  return source;
}

AngleNotation read_notation(const json& object, const std::string& where) {
  const std::string text = needed_text(object, "notation", where);
  if (text == "decimal") return AngleNotation::decimal;
  if (text == "DDMMSS" || text == "DDDMMSS") return AngleNotation::packed_dms;
  if (text == "separate") return AngleNotation::separate;
  if (text == "OS grid") return AngleNotation::os_grid;
  fail(where, fmt::format("the notation \"{}\" is not known", text),
       "choose one of: decimal, DDMMSS, DDDMMSS, separate, OS grid");
}

void read_sign(const json& object, const std::string& where, AngleRule& rule) {
  const bool latitude = where == "latitude";
  rule.letter_column = text_at(object, "letter_column", where);
  const std::string positive = text_at(object, "positive", where);
  if (positive.empty() != rule.letter_column.empty()) {
    if (positive.empty() || positive == (latitude ? "north" : "east")) return;
    rule.letter_in_cell = positive == "letter";
    rule.positive_is_south_or_west = positive == (latitude ? "south" : "west");
    if (rule.letter_in_cell || rule.positive_is_south_or_west) return;
  }
  fail(where, "the positive direction is missing",
       fmt::format("give either \"positive\": \"{}\", \"{}\" or \"letter\", or a \"letter_column\"",
                   latitude ? "north" : "east", latitude ? "south" : "west"));
}

AngleRule read_angle_rule(const json& root, const std::string& where) {
  if (root.find(where) == root.end()) fail(where, "this key is missing", "name its column");
  const json& object = root[where];
  expect_object(object, where,
                {"column", "notation", "positive", "letter_column", "degrees", "minutes", "seconds",
                 "sixty_seconds"});
  AngleRule rule;
  rule.notation = read_notation(object, where);
  const bool separate = rule.notation == AngleNotation::separate;
  rule.column = needed_text(object, separate ? "degrees" : "column", where);
  rule.minutes_column = text_at(object, "minutes", where);
  rule.seconds_column = text_at(object, "seconds", where);
  if (!separate && !(rule.minutes_column.empty() && rule.seconds_column.empty())) {
    fail(where, "minutes and seconds have columns only with the notation \"separate\"");
  }
  if (rule.notation == AngleNotation::os_grid) return rule;
  read_sign(object, where, rule);
  const std::string sixty = text_at(object, "sixty_seconds", where);
  if (!sixty.empty() && sixty != "carry" && sixty != "refuse") {
    fail(where, fmt::format("\"sixty_seconds\" cannot be \"{}\"", sixty), "write carry or refuse");
  }
  rule.sixty_seconds_carry = sixty == "carry";
  return rule;
}

void read_unknown(const json& object, const std::string& where, FieldRule& rule) {
  const auto found = object.find("unknown");
  if (found == object.end()) return;
  if (!found->is_array()) fail(where, "\"unknown\" is not a list", "write it in brackets, [ ]");
  for (const json& cell : *found) {
    if (!cell.is_string())
      fail(where, "\"unknown\" contains something other than text", "quote them");
    rule.unknown.push_back(cell.get<std::string>());
  }
}

void read_values(const json& object, const std::string& where, FieldRule& rule) {
  const auto found = object.find("values");
  if (found == object.end()) return;
  if (!found->is_object()) fail(where, "\"values\" is not an object", "write it in braces, { }");
  for (const auto& item : found->items()) {
    rule.values[item.key()] = text_at(*found, item.key(), where);
  }
}

std::vector<std::string> columns_in(const json& list, const std::string& where) {
  if (!list.is_array()) fail(where, "the columns are not a list", "write them in brackets, [ ]");
  std::vector<std::string> columns;
  for (const json& column : list) {
    if (!column.is_string()) fail(where, "a column is not text", "quote it");
    columns.push_back(column.get<std::string>());
  }
  return columns;
}

Fallback read_fallback(const json& given, const std::string& where) {
  if (given.is_string()) return {Fallback::How::value, {given.get<std::string>()}};
  expect_object(given, where, {"largest", "sum"});
  if (given.size() != 1) fail(where, "this is neither \"largest\" nor \"sum\"", "give one of them");
  const bool sum = given.begin().key() == "sum";
  Fallback fallback{sum ? Fallback::How::sum : Fallback::How::largest,
                    columns_in(given.begin().value(), where)};
  if (fallback.columns.size() < 2 || (sum && fallback.columns.size() > 2)) {
    fail(where, "the number of columns is wrong",
         "give two for a sum, two or more for the largest");
  }
  return fallback;
}

void read_fallbacks(const json& object, const std::string& where, FieldRule& rule) {
  const auto found = object.find("otherwise");
  if (found == object.end()) return;
  if (!found->is_array()) fail(where, "\"otherwise\" is not a list", "write it in brackets, [ ]");
  for (const json& one : *found) {
    rule.otherwise.push_back(read_fallback(one, where + ", otherwise"));
  }
}

FieldRule read_field(const std::string& name, const json& given) {
  const std::string where = "fields, " + name;
  if (given.is_string()) return FieldRule{.column = given.get<std::string>()};
  expect_object(given, where, {"column", "unit", "unknown", "values", "otherwise", "optional"});
  FieldRule rule{.column = needed_text(given, "column", where)};
  const std::string unit = text_at(given, "unit", where);
  if (const auto scale = fields::scale_of(name, unit)) {
    rule.scale = *scale;
  } else if (!unit.empty()) {
    const auto factor = fields::unit_factor(name, unit);
    if (!factor) {
      fail(where, fmt::format("this field has no unit \"{}\"", unit),
           "use m, ft for heights, kW, W, MW, dBW for powers, center MHz, low MHz for channels");
    }
    rule.factor = *factor;
  }
  read_unknown(given, where, rule);
  read_values(given, where, rule);
  read_fallbacks(given, where, rule);
  rule.optional = flag_at(given, "optional", where);
  return rule;
}

void read_fields(const json& root, TableMapping& mapping) {
  if (root.find("fields") == root.end())
    fail("fields", "this key is missing", "list the columns there");
  const Keys& known = fields::names();
  expect_object(root["fields"], "fields", known);
  for (const auto& item : root["fields"].items()) {
    mapping.fields[item.key()] = read_field(item.key(), item.value());
  }
  for (const char* needed : {"call_sign", "rf_channel"}) {
    if (mapping.fields.count(needed) == 0) {
      fail("fields", fmt::format("\"{}\" is missing", needed), "name its column");
    }
  }
  if (mapping.raster.has_value() == (mapping.fields.count("raster") == 1)) {
    fail("raster", "the channel plan must be given exactly once",
         "give \"raster\" for the whole table or its column among the fields");
  }
}

TableMapping read_mapping(const json& root) {
  expect_object(root, "whole",
                {"source", "separator", "comment", "decimal_comma", "columns", "where", "where_not",
                 "raster", "standard", "datum", "latitude", "longitude", "fields", "about"});
  TableMapping mapping;
  mapping.source = read_source(root);
  mapping.separator = character_at(root, "separator");
  mapping.comment = character_at(root, "comment");
  mapping.columns = texts_at(root, "columns", "columns");
  mapping.where = filter_at(root, "where", "whole");
  mapping.where_not = filter_at(root, "where_not", "whole");
  mapping.decimal_comma = flag_at(root, "decimal_comma", "decimal_comma");
  if (const std::string raster = text_at(root, "raster", "raster"); !raster.empty()) {
    mapping.raster = taken(parse_raster(raster), "raster");
  }
  if (const std::string standard = text_at(root, "standard", "standard"); !standard.empty()) {
    mapping.standard = taken(parse_broadcast_standard(standard), "standard");
  }
  mapping.datum = taken(parse_datum(needed_text(root, "datum", "datum")), "datum");
  mapping.latitude = read_angle_rule(root, "latitude");
  mapping.longitude = read_angle_rule(root, "longitude");
  const bool grid = mapping.latitude.notation == AngleNotation::os_grid;
  if (grid != (mapping.longitude.notation == AngleNotation::os_grid) ||
      (grid && mapping.latitude.column != mapping.longitude.column)) {
    fail("longitude", "a grid reference gives the latitude and the longitude",
         "name the same column and the notation \"OS grid\" for both");
  }
  read_fields(root, mapping);
  return mapping;
}

}  // namespace

bool one_of(const std::vector<std::string>& filter, std::string_view cell) {
  return std::any_of(filter.begin(), filter.end(), [&](const std::string& one) {
    if (one.empty() || one.back() != '*') return cell == one;
    if (one.size() > 2 && one.front() == '*') {
      return cell.find(std::string_view(one).substr(1, one.size() - 2)) != std::string_view::npos;
    }
    return cell.starts_with(std::string_view(one).substr(0, one.size() - 1));
  });
}

Result<TableMapping> parse_table_mapping(std::string_view text) {
  return read<TableMapping>(text, read_mapping);
}

}  // namespace mastwise
