#include "core/propagation/p1812/terminal_clutter.hpp"

#include "core/propagation/p1812/knife_edge.hpp"

#include <cmath>
#include <numbers>

namespace mastwise::p1812 {

double terminal_clutter_loss_db(const TerminalClutter& clutter, double antenna_height_m,
                                double frequency_ghz) {
  if (clutter.kind == TerminalClutter::Kind::none) return 0.0;
  if (antenna_height_m >= clutter.height_m) return 0.0;
  if (clutter.kind == TerminalClutter::Kind::open) {
    const double slope = 21.8 + 6.2 * std::log10(frequency_ghz);      // Kh2 (2f)
    return -slope * std::log10(antenna_height_m / clutter.height_m);  // (2b)
  }
  const double below_m = clutter.height_m - antenna_height_m;  // hdif (2d)
  const double angle_deg =
      std::atan(below_m / clutter.street_width_m) * 180.0 / std::numbers::pi;          // (2e)
  const double v = 0.342 * std::sqrt(frequency_ghz) * std::sqrt(below_m * angle_deg);  // (2c), (2g)
  return knife_edge_loss_db(v) - 6.03;                                                 // (2a)
}

}  // namespace mastwise::p1812
