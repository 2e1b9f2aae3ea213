#pragma once

#include "core/geo/position.hpp"

#include <string>
#include <vector>

namespace mastwise {

// A possible stop from a file: its name there, and how the road gets there from the stop before.
struct AheadStop {
  Position position;
  std::string name = {};           // empty: unknown
  std::vector<Position> via = {};  // between the stop before and this one, as driven
  bool operator==(const AheadStop&) const = default;
};

}  // namespace mastwise
