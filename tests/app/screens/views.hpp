#pragma once

#include "tests/support/stage.hpp"

#include <functional>
#include <vector>

namespace mastwise::test {

// A screen or cover of the program, and how to get there.
struct View {
  const char* name;
  std::function<void(Stage&)> reach;
};

const std::vector<View>& views();

// Does the act without a finger, and waits until nothing moves.
void press(Stage& stage, const Action& action);

}  // namespace mastwise::test
