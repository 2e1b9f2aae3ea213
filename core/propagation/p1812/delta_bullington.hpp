#pragma once

#include "core/propagation/p1812/bullington.hpp"
#include "core/propagation/p1812/p1812.hpp"
#include "core/propagation/p1812/spherical_earth.hpp"

namespace mastwise::p1812 {

// The complete delta-Bullington diffraction loss (section 4.3.4) at one effective Earth radius.
// `view` is the ground with its clutter, seen from the antennas at their true altitudes; `smooth`
// is the same path over the smooth surface, with hts' and hrs' (37).
Diffraction delta_bullington(const Section& section, const BullingtonView& view, Line antennas,
                             const SphericalPath& smooth);

}  // namespace mastwise::p1812
