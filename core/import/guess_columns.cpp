#include "core/import/guess_columns.hpp"

#include "core/channels/channels.hpp"
#include "core/geo/os_grid.hpp"
#include "core/import/station_fields.hpp"
#include "core/import/table_angle.hpp"
#include "core/text/delimited.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <array>

namespace mastwise::guess {
namespace {

constexpr std::size_t kRows = 200;
constexpr double kMost = 0.9;  // share of the cells that must fit a way of writing
constexpr double kHalf = 0.5;  // and of those of a column whose name fits: some rows may be bad

struct Names {
  std::string_view field;
  std::vector<std::string_view> keys;  // best first
  bool with_unit = false;              // the header may name a unit behind
};

// Words that tables use; common practice, no source.
const std::vector<Names>& known_names() {
  static const std::vector<Names> kNames{
      {"call_sign", {"CALLSIGN", "CALL", "CALLLETTERS", "STATIONCALL", "FACCALLSIGN"}},
      {"rf_channel",
       {"RFCHANNEL", "CHANNEL", "CHAN", "CH", "RFCH", "RF", "PHYSICALCHANNEL", "CHANNELNUMBER",
        "TVCHANNEL"}},
      {"facility_id", {"FACILITYID", "FACID", "FACILITY", "LICENCENUMBER", "LICENSENUMBER"}},
      {"site", {"SITE", "SITEID", "SITENUMBER"}},
      {"name", {"NAME", "STATIONNAME", "STATION", "AREASERVED"}},
      {"network", {"NETWORK", "NETWORKAFFILIATION", "AFFILIATION", "PROGRAM", "BROADCASTER"}},
      {"multiplex", {"MULTIPLEX", "MUX", "SFN", "SFNID", "SFNNAME", "NETWORKID"}},
      {"city", {"CITY", "COMMUNITY", "TOWN", "COMMCITY", "COMMUNITYCITY"}},
      {"state", {"STATE", "ST", "PROVINCE", "COMMSTATE", "COMMUNITYSTATE"}},
      {"erp_kw",
       {"ERPKW", "ERPW", "ERP", "MAXERP", "MAXIMUMERP", "MAXERPW", "MAXERPKW", "POWERKW", "POWERW",
        "POWER", "ERPMAX"},
       true},
      {"antenna_amsl_m",
       {"RCAMSL", "ANTENNAAMSLM", "AMSL", "ANTENNAAMSL", "HEIGHTAMSL", "RCAMSLM",
        "RADIATIONCENTERAMSL"},
       true},
      {"haat_m", {"HAAT", "HAATM", "EFFECTIVEHEIGHT", "EHAAT"}, true},
      {"site_amsl_m",
       {"SITEAMSLM", "GROUNDELEVATION", "SITEELEVATION", "GROUNDLEVEL", "SITEAMSL"},
       true},
      {"polarization", {"POLARIZATION", "POLARISATION", "POL"}},
      {"virtual_channel",
       {"VIRTUALCHANNEL", "VIRTUAL", "TVVIRTUALCHANNEL", "VIRTUALCH", "VCHANNEL", "DISPLAYCHANNEL",
        "PSIPCHANNEL", "PSIP", "MAJORCHANNEL", "LOGICALCHANNEL", "LCN"}},
      {"language", {"LANGUAGE", "LANG"}},
      {"directional", {"DIRECTIONAL", "DA", "ANTENNAPATTERN", "DIRECTIONALANTENNA"}},
  };
  return kNames;
}

std::string key_of(std::string_view name) {
  std::string key;
  for (const char c : name) {
    if (words::is_letter(c) || words::is_digit(c)) key += words::upper(c);
  }
  return key;
}

struct AxisWords {
  Axis axis;
  std::array<std::string_view, 3> stems;
  char positive;
  char negative;
};
constexpr AxisWords kLatitude{Axis::latitude, {"LATITUDE", "LAT", "Y"}, 'N', 'S'};
constexpr AxisWords kLongitude{Axis::longitude, {"LONGITUDE", "LONG", "LON"}, 'E', 'W'};

// The column whose name combines a stem of the axis and one of the endings.
const Column* with_end(const std::vector<Column>& columns, const AxisWords& axis,
                       const std::vector<std::string_view>& ends) {
  for (const std::string_view stem : axis.stems) {
    for (const std::string_view end : ends) {
      for (const Column& column : columns) {
        const std::string before = std::string(stem) + std::string(end);
        const std::string behind = std::string(end) + std::string(stem);
        const std::string_view key = column.key;
        const bool fits = key == before || key == behind ||
                          (stem.size() > 2 && key.size() > before.size() &&
                           key.substr(key.size() - before.size()) == before);
        if (fits) return &column;
      }
    }
  }
  return nullptr;
}

bool has_letter(const Column& column, const AxisWords& axis) {
  return share(column, [&](const std::string& cell) {
           const char last = words::upper(cell.back());
           return last == axis.positive || last == axis.negative;
         }) >= kMost;
}

double readable(const Column& column, const AxisWords& axis, const AngleRule& rule,
                bool decimal_comma) {
  const double limit = axis.axis == Axis::latitude ? 90.0 : 180.0;
  return share(column, [&](const std::string& cell) {
    const auto angle = read_angle(axis.axis, rule, {.whole = cell}, decimal_comma);
    return angle && angle->degrees >= -limit && angle->degrees <= limit;
  });
}

bool all_positive(const Column& column) {
  return share(column, [](const std::string& cell) { return cell.front() != '-'; }) == 1.0;
}

// Degrees, minutes and seconds in separate columns.
std::optional<Angle> separate(const std::vector<Column>& columns, const AxisWords& axis) {
  const Column* degrees = with_end(columns, axis, {"DEG", "DEGREES", "D"});
  const Column* minutes = with_end(columns, axis, {"MIN", "MINUTES", "MM", "M"});
  const Column* seconds = with_end(columns, axis, {"SEC", "SECONDS", "SS", "S"});
  const Column* letter = with_end(columns, axis, {"DIR", "HEMISPHERE", "HEMI", "NS", "EW"});
  if (degrees == nullptr || minutes == nullptr) return std::nullopt;
  Angle angle{.rule = {.notation = AngleNotation::separate,
                       .column = degrees->name,
                       .minutes_column = minutes->name,
                       .seconds_column = seconds == nullptr ? std::string() : seconds->name,
                       .letter_column = letter == nullptr ? std::string() : letter->name}};
  angle.unsigned_all = letter == nullptr && all_positive(*degrees);
  return angle;
}

const std::vector<std::string_view>& usual_ends() {
  static const std::vector<std::string_view> kEnds{"",   "DEG", "DEGREES", "DECIMAL",
                                                   "DD", "DMS", "WGS84",   "NAD83"};
  return kEnds;
}

// Headers that say which way positive counts: "Lon W", "Latitude South".
const Column* with_far_end(const std::vector<Column>& columns, const AxisWords& axis) {
  return axis.axis == Axis::longitude ? with_end(columns, axis, {"W", "WEST"})
                                      : with_end(columns, axis, {"SOUTH"});
}

std::optional<Angle> in_one_column(const std::vector<Column>& columns, const AxisWords& axis,
                                   bool decimal_comma) {
  const Column* column = with_end(columns, axis, usual_ends());
  const Column* far = column == nullptr ? with_far_end(columns, axis) : nullptr;
  if (far != nullptr) column = far;
  if (column == nullptr) return std::nullopt;
  Angle angle{.rule = {.column = column->name, .letter_in_cell = has_letter(*column, axis)}};
  // The way of writing that most cells have. A decimal angle with five or more digits before its
  // point would be over 180 degrees.
  const double decimal = readable(*column, axis, angle.rule, decimal_comma);
  if (decimal < kMost) {
    AngleRule packed = angle.rule;
    packed.notation = AngleNotation::packed_dms;
    const double plain = readable(*column, axis, packed, decimal_comma);
    packed.sixty_seconds_carry = true;
    const double carried = readable(*column, axis, packed, decimal_comma);
    packed.sixty_seconds_carry = carried > plain;
    if (std::max(decimal, carried) < kHalf) return std::nullopt;
    if (carried > decimal) angle.rule = packed;
  }
  const bool positive = !angle.rule.letter_in_cell && all_positive(*column);
  angle.rule.positive_is_south_or_west = positive && far != nullptr;
  angle.unsigned_all = positive && far == nullptr;
  return angle;
}

// A column of British grid references, which is both axes.
std::optional<Angle> in_grid_references(const std::vector<Column>& columns) {
  for (const Column& column : columns) {
    const bool named = column.key.ends_with("NGR") || column.key.ends_with("GRIDREF") ||
                       column.key.ends_with("GRIDREFERENCE");
    if (!named) continue;
    const double read = share(
        column, [](const std::string& cell) { return static_cast<bool>(parse_os_grid(cell)); });
    if (read < kMost) continue;
    return Angle{.rule = {.notation = AngleNotation::os_grid, .column = column.name}};
  }
  return std::nullopt;
}

std::optional<Angle> find(const std::vector<Column>& columns, const AxisWords& axis,
                          bool decimal_comma) {
  if (auto angle = separate(columns, axis)) return angle;
  if (auto angle = in_one_column(columns, axis, decimal_comma)) return angle;
  return in_grid_references(columns);
}

std::string by_name(const std::vector<Column>& columns, const AxisWords& axis) {
  const Column* column = with_end(columns, axis, usual_ends());
  if (column == nullptr) column = with_far_end(columns, axis);
  if (column == nullptr) column = with_end(columns, axis, {"DEG", "DEGREES", "D"});
  return column == nullptr ? std::string() : column->name;
}

// Without a unit that the header names: "Site elevation (m)", "ERP [kW]".
std::string bare_key(const std::string& key) {
  for (const std::string_view unit :
       {"METERS", "METRES", "FEET", "DBW", "KW", "MW", "FT", "M", "W"}) {
    if (key.size() > unit.size() + 1 && key.ends_with(unit)) {
      return key.substr(0, key.size() - unit.size());
    }
  }
  return key;
}

}  // namespace

std::string_view whole_lines(std::string_view head) {
  const std::size_t end = head.find_last_of("\r\n");
  return end == std::string_view::npos ? head : head.substr(0, end + 1);
}

std::vector<Column> columns_of(std::string_view head, char& separator) {
  DelimitedReader rows(whole_lines(head), '\0', '#');
  separator = rows.separator();
  std::vector<Column> columns;
  const auto header = rows.next();
  if (!header || !header->fault.empty()) return columns;
  for (const std::string& name : header->cells) {
    const std::string key = key_of(name);
    columns.push_back({std::string(words::trimmed(name)), key, bare_key(key), {}});
  }
  for (std::size_t i = 0; i < kRows; ++i) {
    const auto row = rows.next();
    if (!row) break;
    if (!row->fault.empty() || row->cells.size() != columns.size()) continue;
    for (std::size_t at = 0; at < columns.size(); ++at) {
      const std::string_view cell = words::trimmed(row->cells[at]);
      if (!cell.empty()) columns[at].cells.emplace_back(cell);
    }
  }
  return columns;
}

std::vector<const Column*> named(const std::vector<Column>& columns, std::string_view field) {
  std::vector<const Column*> found;
  const auto& all = known_names();
  const auto names =
      std::find_if(all.begin(), all.end(), [&](const Names& one) { return one.field == field; });
  if (names == all.end()) return found;
  for (const std::string_view key : names->keys) {
    for (const Column& column : columns) {
      const bool fits = column.key == key || (names->with_unit && column.bare == key);
      if (fits && std::find(found.begin(), found.end(), &column) == found.end()) {
        found.push_back(&column);
      }
    }
  }
  return found;
}

std::map<std::string, std::string> usual_values(std::string_view field) {
  if (field == "directional") {
    return {{"DA", "yes"}, {"D", "yes"}, {"Y", "yes"}, {"yes", "yes"},
            {"ND", "no"},  {"N", "no"},  {"no", "no"}};
  }
  if (field == "polarization") {
    return {{"H", "horizontal"},
            {"V", "vertical"},
            {"E", "elliptical"},
            {"C", "elliptical"},
            {"M", "elliptical"}};
  }
  return {};
}

bool looks_like_call_sign(std::string_view cell) {
  const auto fits = [](char c) { return words::is_letter(c) || words::is_digit(c) || c == '-'; };
  return cell.size() >= 3 && cell.size() <= 12 && words::is_letter(cell.front()) &&
         std::all_of(cell.begin(), cell.end(), fits);
}

bool looks_like_channel(std::string_view cell) {
  const auto channel = parse_rf_channel(cell);
  return channel && channel->number >= 1 && channel->number <= 83;
}

std::optional<double> number(std::string_view cell, bool decimal_comma) {
  return fields::parse_number(cell, decimal_comma);
}

std::optional<Angle> find_latitude(const std::vector<Column>& columns, bool decimal_comma) {
  return find(columns, kLatitude, decimal_comma);
}

std::optional<Angle> find_longitude(const std::vector<Column>& columns, bool decimal_comma) {
  return find(columns, kLongitude, decimal_comma);
}

std::string latitude_column(const std::vector<Column>& columns) {
  return by_name(columns, kLatitude);
}

std::string longitude_column(const std::vector<Column>& columns) {
  return by_name(columns, kLongitude);
}

}  // namespace mastwise::guess
