#pragma once

#include "app/model/intake.hpp"
#include "app/service/known_tables.hpp"
#include "core/map/borders.hpp"

#include <string>

namespace mastwise {

// The way to read a table as the model has it.
Result<sources::Way> way_of(const TableReading& reading);

// What a table seems to be, and what its head shows when read so; `reading`: as a person corrected
// it. Trouble is within the answer.
TableLook look_into(const std::string& path, const std::optional<TableReading>& reading,
                    const sources::MappingMemory& memory);

// Puts the sample onto a plane around its middle, with the coasts and borders there. Without
// stations there is no map.
void add_map(TableLook& look, const map::Borders* borders);

}  // namespace mastwise
