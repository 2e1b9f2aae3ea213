#pragma once

#include "core/terrain/profile.hpp"
#include "core/terrain/tile.hpp"

#include <optional>
#include <vector>

namespace mastwise::reception {

// Two guesses of ground that is known in part. What is known stays in both.
struct GuessedGround {
  std::vector<double> smooth_m;  // gaps filled evenly from the heights on both sides
  std::vector<double> rough_m;   // in the gaps raised by hills like those around
};

// Fills the gaps of a profile from a station to a stop. `start_ground_m`: the station's site, if
// its height is known from elsewhere. False if the ground at the stop is unknown, or all of it.
//
// Smooth: straight between the known heights beside a gap. A gap that begins at the station begins
// with its site's height, or without it goes on level from the first known height.
// Rough: raised by 0.78 times the irregularity of a stretch as long as the gap, which is two
// standard deviations of a normal height [Algorithm (3.9); 0.78 = 2 / 2.56, the interdecile range
// of a normal distribution]. The rise begins at a known end and is complete after 1 km (own
// choice). The irregularity is that of the longest known stretch, but at least 90 m, which is hills
// [TR 82-100], unless the stretch is at least 20 km long (own choice).
bool guess_ground(const terrain::PathProfile& profile, std::optional<double> start_ground_m,
                  GuessedGround& guess);

// The cell of the longest gap's middle. The profile has a gap and begins at `start`.
terrain::TileCell cell_of_longest_gap(const terrain::PathProfile& profile, Position start);

}  // namespace mastwise::reception
