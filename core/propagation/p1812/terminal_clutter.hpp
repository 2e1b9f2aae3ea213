#pragma once

#include "core/propagation/p1812/p1812.hpp"

namespace mastwise::p1812 {

// Height-gain terminal correction Ah of Recommendation ITU-R P.2108-1 section 3.1, dB: the loss
// from the top of the clutter down to a lower antenna; 0 for an antenna at or above the top. Add it
// to a loss calculated for an antenna at the top. f within [0.03, 3] GHz, height above ground in m,
// positive.
double terminal_clutter_loss_db(const TerminalClutter& clutter, double antenna_height_m,
                                double frequency_ghz);

}  // namespace mastwise::p1812
