#pragma once

#include "app/parking/state.hpp"

#include <optional>
#include <vector>

// Which of the wanted stations the painted sides leave clear.
namespace mastwise {

// What an obstacle may cost a station that still counts as clear, dB [our choice: the least that a
// reason tells].
inline constexpr double kStillClear_db = 1.0;

// The stations that decide how to park, with the antenna in use: what is pinned, else all networks
// that would be likely here if nothing stood around. Empty if the answer is not that of the whole
// survey here.
std::optional<std::vector<WantedSight>> wanted_sights(const StationsAnswer& answer);

// How each stands: blocked by a painted obstacle, or by a neighbor expected beside the rig on a
// side that nobody has painted; unseen if its side is not painted otherwise. The verdict counts
// networks. A better nose leaves fewer of them blocked; without a known nose there is none.
ParkVerdict judge(std::vector<WantedSight>& wanted, const reception::ObstacleRing& ring,
                  Neighbors neighbors, const std::optional<RigHeading>& nose);

}  // namespace mastwise
