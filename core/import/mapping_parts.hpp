#pragma once

#include "core/import/guess_mapping.hpp"
#include "core/import/table_mapping.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// One correctable part of a mapping: which column has a field, or how the field is read.
struct MappingPart {
  // A field by its name in table_mapping.hpp, "latitude", "longitude", "datum", or a detail of one:
  // "latitude.notation", "latitude.sign", "latitude.minutes", "latitude.seconds",
  // "latitude.letter", "erp_kw.unit", "heights.unit", "haat_m.zero".
  std::string name = {};
  std::string value = {};                  // the column or the reading; empty: not in the table
  std::vector<std::string> readings = {};  // empty: any of the table's columns
  bool needed = false;                     // no table can be read without it
  bool operator==(const MappingPart&) const = default;
};

// The correctable parts, in the order in which users check them.
std::vector<MappingPart> mapping_parts(const TableMapping& mapping);

// Chooses another column or reading for a part; an empty value removes a field that is not needed.
// `columns` are the table's, in its order. An unknown part or an invalid value changes nothing.
void correct(TableMapping& mapping, std::string_view part, const std::string& value,
             const std::vector<std::string>& columns);

// The part that a doubt refers to.
std::string part_of(const Doubt& doubt);

}  // namespace mastwise
