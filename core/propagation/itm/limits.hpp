#pragma once

#include "core/propagation/itm/itm.hpp"
#include "core/propagation/itm/relief.hpp"

#include <optional>
#include <span>

namespace mastwise::itm {

// The fault of the input, or std::nullopt. It names the quantity, its value and its range.
std::optional<Error> check(const Link& link);
std::optional<Error> check(const TerrainProfile& profile);
std::optional<Error> check_heights(std::span<const double> heights_m, const Relief& relief);
std::optional<Error> check(const AreaTerrain& terrain, double distance_m);
std::optional<Error> check(const Variability& variability, const Percentages& percentages);

// The fault of the path so far: its refractivity, its ground.
std::optional<Error> check_medium(const Path& path);

// Why the reference attenuation is NaN or infinite, or std::nullopt if it is finite.
std::optional<Error> check_result(const Path& path);

// Warnings about a path whose terminals are computed. Source: TR 82-100, parameter ranges.
Warnings path_warnings(const Path& path);

// Warning about percentages, as standard normal deviates, that are too extreme to be reliable.
// Source: Algorithm 5, deviates to 3.1.
Warnings deviate_warnings(double time, double location, double situation);

}  // namespace mastwise::itm
