#include "core/import/station_fields.hpp"
#include "core/import/table_mapping.hpp"

#include <nlohmann/json.hpp>

namespace mastwise {
namespace {

using OrderedJson = nlohmann::ordered_json;

void put(OrderedJson& object, const char* key, const std::string& text) {
  if (!text.empty()) object[key] = text;
}

OrderedJson angle_json(const AngleRule& rule, bool latitude) {
  OrderedJson object;
  if (rule.notation == AngleNotation::os_grid) {
    object["notation"] = "OS grid";
    object["column"] = rule.column;
    return object;
  }
  if (rule.notation == AngleNotation::separate) {
    object["notation"] = "separate";
    object["degrees"] = rule.column;
    put(object, "minutes", rule.minutes_column);
    put(object, "seconds", rule.seconds_column);
  } else {
    const char* packed = latitude ? "DDMMSS" : "DDDMMSS";
    object["notation"] = rule.notation == AngleNotation::decimal ? "decimal" : packed;
    object["column"] = rule.column;
  }
  if (!rule.letter_column.empty()) {
    object["letter_column"] = rule.letter_column;
  } else if (rule.letter_in_cell) {
    object["positive"] = "letter";
  } else if (rule.positive_is_south_or_west) {
    object["positive"] = latitude ? "south" : "west";
  } else {
    object["positive"] = latitude ? "north" : "east";
  }
  if (rule.sixty_seconds_carry) object["sixty_seconds"] = "carry";
  return object;
}

OrderedJson fallback_json(const Fallback& fallback) {
  if (fallback.how == Fallback::How::value) return fallback.columns.front();
  OrderedJson object;
  object[fallback.how == Fallback::How::sum ? "sum" : "largest"] = fallback.columns;
  return object;
}

OrderedJson field_json(const std::string& name, const FieldRule& rule) {
  std::string unit(fields::unit_of(name, rule.factor));
  if (rule.scale != Scale::linear) unit = fields::unit_of(rule.scale);
  if (rule == FieldRule{.column = rule.column}) return rule.column;
  OrderedJson object{{"column", rule.column}};
  put(object, "unit", unit);
  if (!rule.unknown.empty()) object["unknown"] = rule.unknown;
  if (!rule.values.empty()) object["values"] = rule.values;
  for (const Fallback& one : rule.otherwise) object["otherwise"].push_back(fallback_json(one));
  if (rule.optional) object["optional"] = true;
  return object;
}

}  // namespace

std::string to_json(const TableMapping& mapping) {
  OrderedJson root;
  root["source"]["name"] = mapping.source.name;
  put(root["source"], "date", mapping.source.date);
  if (mapping.separator != '\0') root["separator"] = std::string(1, mapping.separator);
  if (mapping.comment != '\0') root["comment"] = std::string(1, mapping.comment);
  if (!mapping.columns.empty()) root["columns"] = mapping.columns;
  if (!mapping.where.empty()) root["where"] = mapping.where;
  if (!mapping.where_not.empty()) root["where_not"] = mapping.where_not;
  if (mapping.decimal_comma) root["decimal_comma"] = true;
  if (mapping.raster) root["raster"] = to_text(*mapping.raster);
  if (mapping.standard) root["standard"] = to_text(*mapping.standard);
  root["datum"] = to_text(mapping.datum);
  root["latitude"] = angle_json(mapping.latitude, true);
  root["longitude"] = angle_json(mapping.longitude, false);
  for (const auto& [name, rule] : mapping.fields) root["fields"][name] = field_json(name, rule);
  return root.dump(2, ' ', false, OrderedJson::error_handler_t::replace) + "\n";
}

}  // namespace mastwise
