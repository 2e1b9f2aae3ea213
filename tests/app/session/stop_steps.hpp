#pragma once

#include "tests/support/stage.hpp"

// What a person does on Here before a view is measured.
namespace mastwise::test {

// One side of each kind around the rig.
void paint_sides(Stage& stage);

// The receiver's position, for half a minute, with its scatter.
void stand_parked(Stage& stage);

}  // namespace mastwise::test
