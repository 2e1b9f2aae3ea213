#pragma once

#include "core/propagation/itm/itm.hpp"

#include <optional>

namespace mastwise::itm {

struct Scatter {
  double attenuation_db;     // A_scat (4.63)
  double frequency_gain_db;  // H_0 (4.64)
};

// Attenuation of tropospheric scatter; std::nullopt if both terminals are too low for it. `farther`
// is the result at a greater distance, which limits a runaway H_0. Source: Algorithm (4.60) to
// (4.67) and (6.9) to (6.14).
std::optional<Scatter> scatter(const Path& path, double distance_m,
                               const std::optional<Scatter>& farther = std::nullopt);

// The line of (4.1) beyond d_x; std::nullopt if there is no scatter. Needs the path's terminals,
// sums and diffraction fit. Source: Algorithm (4.52) to (4.59).
std::optional<ScatterFit> fit_scatter(const Path& path);

}  // namespace mastwise::itm
