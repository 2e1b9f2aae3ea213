#include "core/import/mapping_parts.hpp"

#include "core/import/guess_columns.hpp"
#include "core/import/station_fields.hpp"

#include <algorithm>
#include <array>

namespace mastwise {
namespace {

using Texts = std::vector<std::string>;

// The fields that users check first; other fields are shown if the mapping has them.
constexpr std::array kUsual{"network",     "name", "city",        "state",
                            "facility_id", "site", "directional", "polarization"};

constexpr const char* kDecimal = "decimal";
constexpr const char* kPacked = "DDMMSS";
constexpr const char* kSeparate = "in several columns";
constexpr const char* kOsGrid = "British grid";
constexpr const char* kLetterInCell = "by a letter in the cell";
constexpr const char* kLetterInColumn = "by a letter in a column";
constexpr const char* kNotKnown = "not known";
constexpr const char* kAsItIs = "as it is";

bool has(const Texts& texts, const std::string& text) {
  return std::find(texts.begin(), texts.end(), text) != texts.end();
}

bool needed_field(std::string_view name) {
  return name == "call_sign" || name == "rf_channel" || name == "raster";
}

bool is_height(std::string_view name) {
  return std::any_of(fields::kHeightFields.begin(), fields::kHeightFields.end(),
                     [&](const char* height) { return name == height; });
}

// The parts before and after the point of "latitude.sign".
struct PartName {
  std::string of, what;
};

PartName parted(std::string_view name) {
  const std::size_t point = name.find('.');
  if (point == std::string_view::npos) return {std::string(name), {}};
  return {std::string(name.substr(0, point)), std::string(name.substr(point + 1))};
}

std::string notation_of(const AngleRule& rule) {
  return rule.notation == AngleNotation::decimal      ? kDecimal
         : rule.notation == AngleNotation::packed_dms ? kPacked
         : rule.notation == AngleNotation::os_grid    ? kOsGrid
                                                      : kSeparate;
}

// The two directions in which an angle can increase, the usual one first.
std::array<const char*, 2> ways(bool latitude) {
  return latitude ? std::array{"north", "south"} : std::array{"east", "west"};
}

std::string sign_of(const AngleRule& rule, bool latitude) {
  if (!rule.letter_column.empty()) return kLetterInColumn;
  if (rule.letter_in_cell) return kLetterInCell;
  return ways(latitude)[rule.positive_is_south_or_west ? 1 : 0];
}

class Lister {
 public:
  explicit Lister(const TableMapping& mapping) : mapping_(mapping) {}

  void field(const std::string& name) {
    const auto rule = mapping_.fields.find(name);
    const bool there = rule != mapping_.fields.end();
    parts.push_back({.name = name,
                     .value = there ? rule->second.column : std::string(),
                     .needed = needed_field(name)});
  }
  void reading(const std::string& name, const std::string& value, Texts readings) {
    parts.push_back(
        {.name = name, .value = value, .readings = std::move(readings), .needed = true});
  }
  void angle(const std::string& name, const AngleRule& rule, bool latitude);
  void powers_and_heights();
  bool knows(const std::string& name) const {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const MappingPart& part) { return part.name == name; });
  }

  std::vector<MappingPart> parts;

 private:
  const FieldRule* rule_of(const std::string& name) const {
    const auto rule = mapping_.fields.find(name);
    return rule == mapping_.fields.end() ? nullptr : &rule->second;
  }

  const TableMapping& mapping_;
};

void Lister::angle(const std::string& name, const AngleRule& rule, bool latitude) {
  parts.push_back({.name = name, .value = rule.column, .needed = true});
  if (rule.notation == AngleNotation::separate) {
    parts.push_back({.name = name + ".minutes", .value = rule.minutes_column});
    parts.push_back({.name = name + ".seconds", .value = rule.seconds_column});
  }
  reading(name + ".notation", notation_of(rule), {kDecimal, kPacked, kSeparate, kOsGrid});
  if (rule.notation == AngleNotation::os_grid) return;
  const auto [plain, other] = ways(latitude);
  reading(name + ".sign", sign_of(rule, latitude), {plain, other, kLetterInCell, kLetterInColumn});
  if (!rule.letter_column.empty()) {
    parts.push_back({.name = name + ".letter", .value = rule.letter_column, .needed = true});
  }
}

void Lister::powers_and_heights() {
  field("erp_kw");
  if (const FieldRule* power = rule_of("erp_kw")) {
    const std::string unit(fields::unit_of("erp_kw", power->factor));
    reading("erp_kw.unit", unit.empty() ? "kW" : unit, {"kW", "W", "MW"});
  }
  const FieldRule* height = nullptr;
  for (const char* name : fields::kHeightFields) {
    field(name);
    if (height == nullptr) height = rule_of(name);
  }
  if (height == nullptr) return;
  const std::string unit(fields::unit_of("haat_m", height->factor));
  reading("heights.unit", unit.empty() ? "m" : unit, {"m", "ft"});
  for (const char* name : fields::kHeightFields) {
    if (const FieldRule* rule = rule_of(name)) {
      reading(std::string(name) + ".zero", rule->unknown.empty() ? kAsItIs : kNotKnown,
              {kNotKnown, kAsItIs});
    }
  }
}

Texts raster_names() {
  Texts names;
  for (const Raster raster :
       {Raster::atsc, Raster::europe, Raster::australia, Raster::japan, Raster::brazil}) {
    names.emplace_back(to_text(raster));
  }
  return names;
}

Texts standard_names() {
  Texts names{kNotKnown};
  for (const BroadcastStandard standard :
       {BroadcastStandard::atsc1, BroadcastStandard::atsc3, BroadcastStandard::dvb_t,
        BroadcastStandard::dvb_t2, BroadcastStandard::isdb_t}) {
    names.emplace_back(to_text(standard));
  }
  return names;
}

// The column right after the angle's last, the usual place of a letter.
std::string column_behind(const AngleRule& rule, const Texts& columns) {
  std::size_t last = 0;
  for (const std::string* name : {&rule.column, &rule.minutes_column, &rule.seconds_column}) {
    const auto found = std::find(columns.begin(), columns.end(), *name);
    if (found == columns.end()) continue;
    last = std::max(last, static_cast<std::size_t>(found - columns.begin()));
  }
  if (columns.empty()) return {};
  return columns[std::min(last + 1, columns.size() - 1)];
}

void correct_sign(AngleRule& rule, const std::string& value, bool latitude, const Texts& columns) {
  const auto [plain, other] = ways(latitude);
  const bool in_column = value == kLetterInColumn, in_cell = value == kLetterInCell;
  if (!in_column && !in_cell && value != plain && value != other) return;
  rule.letter_in_cell = in_cell;
  rule.letter_column = in_column ? column_behind(rule, columns) : std::string();
  rule.positive_is_south_or_west = value == other;
}

void correct_notation(AngleRule& rule, const std::string& value) {
  for (const AngleNotation notation : {AngleNotation::decimal, AngleNotation::packed_dms,
                                       AngleNotation::separate, AngleNotation::os_grid}) {
    AngleRule read = rule;
    read.notation = notation;
    if (notation_of(read) == value) rule.notation = notation;
  }
}

void correct_angle(AngleRule& rule, const std::string& what, const std::string& value,
                   bool latitude, const Texts& columns) {
  if (what == "notation") return correct_notation(rule, value);
  if (what == "sign") return correct_sign(rule, value, latitude, columns);
  const bool column = has(columns, value);
  if (what.empty() && column) rule.column = value;
  if (what == "letter" && column) rule.letter_column = value;
  if (what == "minutes" && (column || value.empty())) rule.minutes_column = value;
  if (what == "seconds" && (column || value.empty())) rule.seconds_column = value;
}

// A grid reference is both axes of one column.
void follow_grid(const AngleRule& corrected, AngleRule& other) {
  if (corrected.notation == AngleNotation::os_grid) {
    other = corrected;
  } else if (other.notation == AngleNotation::os_grid) {
    other.notation = corrected.notation;
  }
}

void correct_unit(TableMapping& mapping, const std::string& of, const std::string& unit) {
  for (auto& [name, rule] : mapping.fields) {
    if (name != of && !(of == "heights" && is_height(name))) continue;
    if (const auto factor = fields::unit_factor(name, unit)) rule.factor = *factor;
  }
}

void correct_zero(TableMapping& mapping, const std::string& of, const std::string& value) {
  const auto rule = mapping.fields.find(of);
  if (rule == mapping.fields.end()) return;
  if (value == kNotKnown) rule->second.unknown = zero_cells();
  if (value == kAsItIs) rule->second.unknown.clear();
}

void correct_field(TableMapping& mapping, const std::string& name, const std::string& value,
                   const Texts& columns) {
  if (!fields::is_known(name)) return;
  if (value.empty()) {
    if (!needed_field(name)) mapping.fields.erase(name);
    return;
  }
  if (!has(columns, value)) return;
  FieldRule& rule = mapping.fields[name];
  rule.column = value;
  rule.values = guess::usual_values(name);
  // An unexpected word must not cost the row.
  if (!rule.values.empty()) rule.values["*"] = "";
}

}  // namespace

std::vector<MappingPart> mapping_parts(const TableMapping& mapping) {
  Lister list(mapping);
  list.field("call_sign");
  list.field("rf_channel");
  list.angle("latitude", mapping.latitude, true);
  list.angle("longitude", mapping.longitude, false);
  list.reading("datum", std::string(to_text(mapping.datum)), {"WGS84", "NAD83", "NAD27"});
  if (mapping.raster) {
    list.reading("raster", std::string(to_text(*mapping.raster)), raster_names());
  } else {
    list.field("raster");
  }
  if (mapping.fields.count("standard") == 0) {
    const std::string standard(mapping.standard ? to_text(*mapping.standard) : kNotKnown);
    list.reading("standard", standard, standard_names());
  }
  list.powers_and_heights();
  for (const char* name : kUsual) list.field(name);
  for (const auto& [name, rule] : mapping.fields) {
    if (!list.knows(name)) list.field(name);
  }
  return std::move(list.parts);
}

void correct(TableMapping& mapping, std::string_view part, const std::string& value,
             const std::vector<std::string>& columns) {
  const auto [of, what] = parted(part);
  if (of == "latitude") {
    correct_angle(mapping.latitude, what, value, true, columns);
    return follow_grid(mapping.latitude, mapping.longitude);
  }
  if (of == "longitude") {
    correct_angle(mapping.longitude, what, value, false, columns);
    return follow_grid(mapping.longitude, mapping.latitude);
  }
  if (what == "unit") return correct_unit(mapping, of, value);
  if (what == "zero") return correct_zero(mapping, of, value);
  if (!what.empty()) return;
  if (of == "datum") {
    if (const auto datum = parse_datum(value)) mapping.datum = *datum;
  } else if (of == "raster" && mapping.raster) {
    if (const auto raster = parse_raster(value)) mapping.raster = *raster;
  } else if (of == "standard" && mapping.fields.count("standard") == 0) {
    const auto standard = parse_broadcast_standard(value);
    if (standard) mapping.standard = *standard;
    if (value == kNotKnown) mapping.standard.reset();
  } else {
    correct_field(mapping, of, value, columns);
  }
}

std::string part_of(const Doubt& doubt) {
  switch (doubt.kind) {
    case Doubt::Kind::latitude_sign:
    case Doubt::Kind::longitude_sign:
      return doubt.field + ".sign";
    case Doubt::Kind::power_unit:
    case Doubt::Kind::height_unit:
      return doubt.field + ".unit";
    case Doubt::Kind::zero_is_unknown:
      return doubt.field + ".zero";
    case Doubt::Kind::column:
    case Doubt::Kind::datum:
    case Doubt::Kind::raster:
      break;
  }
  return doubt.field;
}

}  // namespace mastwise
