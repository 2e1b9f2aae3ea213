#pragma once

#include "core/reception/measurement.hpp"
#include "core/reception/survey.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace mastwise::reception {

// "11.3 km", "225 km", "7.0 mi".
std::string distance_words(double distance_m, Lengths lengths);
// "64 m", "210 ft".
std::string height_words(double height_m, Lengths lengths);

// "ridge 11.3 km out, 64 m above the line"; "the curve of the earth, ...".
std::string obstacle_words(const Obstacle& obstacle, Lengths lengths);

// Why a measured station has the chance it has, by falling decibels; what costs nothing that could
// be counted comes last. Costs below 1 dB are left out.
std::vector<Reason> reasons(const Receiver& receiver, std::span<const Station> stations,
                            std::span<const Measurement> measurements, std::size_t index,
                            Lengths lengths);

}  // namespace mastwise::reception
