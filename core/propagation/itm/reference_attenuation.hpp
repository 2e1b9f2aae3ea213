#pragma once

#include "core/propagation/itm/itm.hpp"

namespace mastwise::itm {

// Fills in the fits, the range and A_ref of a path whose terminals and sums are computed.
// `mode_height_product_m2` is C of (4.11). Source: Algorithm (4.1) to (4.8).
void attenuate(Path& path, double mode_height_product_m2);

}  // namespace mastwise::itm
