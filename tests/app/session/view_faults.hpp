#pragma once

#include "tests/support/stage.hpp"

#include <string>
#include <vector>

namespace mastwise::test {

// Lines of a failed check.
std::string indented(const std::vector<std::string>& lines);

// What is wrong with the last frame, one line each; empty if nothing is: targets that are too small
// or too close, texts off the screen, cut at a side, wider than their button, in fine print where
// something can be touched, or over one another.
std::string view_faults(const Stage& stage, const Screen& screen);

}  // namespace mastwise::test
