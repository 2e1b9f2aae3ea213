#pragma once

#include "app/data/state.hpp"
#include "app/service/known_tables.hpp"
#include "core/map/borders.hpp"

#include <string>

namespace mastwise {

// The way to read a table, by the model.
Result<sources::Way> way_of(const TableReading& reading);

// Identifies a table and reads its head; `reading`: the person's corrections. The answer contains
// any trouble.
TableLook look_into(const std::string& path, const std::optional<TableReading>& reading,
                    const sources::MappingMemory& memory, const CountriesNear& countries_near);

// Projects the samples onto planes around their middles, with coasts and borders. Without stations
// a map is empty.
void add_maps(TableLook& look, const map::Borders* borders);

// Adds coasts and borders to a check map on this plane.
void add_lines(CheckMap& map, const map::Projection& projection, const map::Borders* borders);

}  // namespace mastwise
