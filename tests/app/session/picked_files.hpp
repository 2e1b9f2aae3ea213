#pragma once

#include "tests/support/stage.hpp"

#include <string>

namespace mastwise::test {

// PRACTICE: invented. A table of so many rows in the folder that the stage searches; returns its
// path.
std::string put_table(Stage& stage, int rows);

// Open the import of such a table, and of a land cover raster.
void pick_table(Stage& stage);
void pick_cover(Stage& stage);
void pick_pack(Stage& stage);

}  // namespace mastwise::test
