#pragma once

#include "core/import/table_mapping.hpp"
#include "core/stations/station.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The fields that a table can give a station, by the names of import_csv.hpp.
namespace mastwise::fields {

// Every name, in the order of import_csv.hpp; without the coordinates.
const std::vector<std::string_view>& names();
bool is_known(std::string_view name);

// Fields for the height of the antenna.
inline constexpr std::array kHeightFields{"antenna_amsl_m", "haat_m", "site_amsl_m"};

// Factor from the given unit to the field's unit: 0.3048 for a height in "ft". std::nullopt if the
// field has no such unit.
std::optional<double> unit_factor(std::string_view name, std::string_view unit);

// The unit of a field by its factor, for writing a mapping; "" where the factor is 1 or no unit's.
std::string_view unit_of(std::string_view name, double factor);

// The scale that a field's unit "dBW", "center MHz" or "low MHz" names; std::nullopt for others.
std::optional<Scale> scale_of(std::string_view name, std::string_view unit);
std::string_view unit_of(Scale scale);

// The finite number in a cell, with a decimal comma if allowed; std::nullopt otherwise.
std::optional<double> parse_number(std::string_view cell, bool decimal_comma);

struct Cell {
  std::string_view text = {};  // not empty
  double factor = 1.0;         // for numbers: to the field's unit
  Scale scale = Scale::linear;
  bool decimal_comma = false;
};

// Stores a cell in the station's field; returns the reason on failure, else an empty text. "site"
// has no field: it is only part of the identity.
std::string set(Station& station, std::string_view name, const Cell& cell);

// A station name that stays the same from table to table: its id, else facility and site, else call
// sign and channel.
std::string identity(const Station& station, std::string_view site);

}  // namespace mastwise::fields
