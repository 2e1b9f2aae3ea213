#pragma once

#include "core/reception/prospect.hpp"

#include <array>

namespace mastwise::reception {

// How the loss beyond free space is divided among the obstacles and the rest of the ground, in dB.
struct GroundCosts {
  std::array<double, Obstacles::kMost> obstacle_db = {};  // in the order of the outlook's obstacles
  double rest_db = 0.0;
};

// The worst edge counts as the Bullington construction counts a whole path of that one edge
// [Recommendations ITU-R P.526 section 4.5 and P.1812 (21)], the others as knife edges. Together
// they cost no more than `excess_db`, which is at least 0; the rest is the ground's, or the earth
// curve's if that is the worst edge.
GroundCosts ground_costs(const Outlook& outlook, double excess_db);

}  // namespace mastwise::reception
