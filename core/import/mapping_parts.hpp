#pragma once

#include "core/import/guess_mapping.hpp"
#include "core/import/table_mapping.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// One thing that a person can correct in a mapping: which column has a field, or how it is read.
struct MappingPart {
  // A field by its name in table_mapping.hpp, "latitude", "longitude", "datum", or one of these
  // with what of it is meant: "latitude.notation", "latitude.sign", "latitude.minutes",
  // "latitude.seconds", "latitude.letter", "erp_kw.unit", "heights.unit", "haat_m.zero".
  std::string name = {};
  std::string value = {};                  // the column or the reading; empty: not in the table
  std::vector<std::string> readings = {};  // empty: any of the table's columns
  bool needed = false;                     // no table can be read without it
  bool operator==(const MappingPart&) const = default;
};

// What can be corrected, in the order that a person looks at it.
std::vector<MappingPart> mapping_parts(const TableMapping& mapping);

// Takes another column or reading for a part; an empty value takes the field out where it is not
// needed. `columns` are the table's, in its order. What is no part or no value of it changes
// nothing.
void correct(TableMapping& mapping, std::string_view part, const std::string& value,
             const std::vector<std::string>& columns);

// The part that a doubt is about.
std::string part_of(const Doubt& doubt);

}  // namespace mastwise
