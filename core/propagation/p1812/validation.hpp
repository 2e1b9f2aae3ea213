#pragma once

#include "core/propagation/p1812/p1812.hpp"
#include "core/propagation/p1812/profile_scan.hpp"

#include <optional>

namespace mastwise::p1812 {

// The first input that is out of its range, or std::nullopt.
std::optional<Error> check_link(const Link& link);
std::optional<Error> check_percentages(const Percentages& percentages);

// Sizes, distances and zones. `check_ground` checks what needs a pass over the points.
std::optional<Error> check_profile(const Profile& profile);
std::optional<Error> check_ground(const Profile& profile, const GroundSums& sums);
std::optional<Error> check_clutter(const Profile& profile);

// Valid inputs near or beyond the tested range of the Recommendation; `section` is the profile's.
Warnings warn_about(const Profile& profile, const Section& section, const Link& link);

}  // namespace mastwise::p1812
