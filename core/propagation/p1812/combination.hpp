#pragma once

#include "core/propagation/p1812/p1812.hpp"

namespace mastwise::p1812 {

// Fj (57): 1 for a line-of-sight path, 0 for one far beyond the horizon. theta in mrad.
double angular_factor(double angular_distance_mrad);

// Fk (58): 1 near, 0 far. d in km.
double near_distance_factor(double distance_km);

// Lbc (63), the loss not exceeded for p percent of time and half of the locations, with all its
// terms, sections 4.2 to 4.6; p within [1, 50]. Adds Aht and Ahr.
Loss combine(const Path& path, double time_percent);

}  // namespace mastwise::p1812
