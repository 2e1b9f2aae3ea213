#pragma once

#include "app/session/action.hpp"

#include <vector>

namespace mastwise::test {

// One of every action, with values that a careless reader or writer would lose.
std::vector<Action> every_action();

}  // namespace mastwise::test
