#pragma once

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

// Where a table can say how high the antenna is.
inline constexpr std::array kHeightFields{"antenna_amsl_m", "haat_m", "site_amsl_m"};

// What a number in the given unit is multiplied by to be in the field's own: 0.3048 for a height in
// "ft". Nothing where the field has no such unit.
std::optional<double> unit_factor(std::string_view name, std::string_view unit);

// The unit of a field by its factor, for writing a mapping; "" where the factor is 1 or no unit's.
std::string_view unit_of(std::string_view name, double factor);

// The finite number that a cell holds, with a decimal comma where allowed; else nothing.
std::optional<double> parse_number(std::string_view cell, bool decimal_comma);

struct Cell {
  std::string_view text = {};  // not empty
  double factor = 1.0;         // for numbers: to our unit
  bool decimal_comma = false;
};

// Puts a cell into the station's field; the reason when it cannot, else an empty text.
// "site" has no field of its own: it only makes the identity.
std::string set(Station& station, std::string_view name, const Cell& cell);

// A name for the station that stays the same from table to table: its id, else facility and site,
// else call sign and channel.
std::string identity(const Station& station, std::string_view site);

}  // namespace mastwise::fields
