#pragma once

#include "tests/support/stage.hpp"

#include <functional>
#include <vector>

namespace mastwise::test {

// A screen or cover, and the actions that open it.
struct View {
  const char* name;
  std::function<void(Stage&)> reach;
};

const std::vector<View>& views();

// Those of Path, Plan and Peak that are not among the usual ones; part of views().
std::vector<View> signal_views();

// Applies the action without a finger, and waits until nothing moves.
void press(Stage& stage, const Action& action);

}  // namespace mastwise::test
