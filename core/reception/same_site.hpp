#pragma once

namespace mastwise::reception {

// What stations of one site take of the wanted signal.
struct SameSite {
  double share = 0.0;   // of the wanted power, weighted by their ratios: the sum of w
  double spread = 0.0;  // sum of squares of w times deviation

  void add(double weighted_mw, double wanted_mw, double deviation_db) {
    const double w = weighted_mw / wanted_mw;
    share += w;
    spread += w * w * deviation_db * deviation_db;
  }
  // By how much the requirement grows; at 30 dB nothing comes in.
  double factor() const { return share < 0.999 ? 1.0 / (1.0 - share) : 1000.0; }
  // Square of the margin's deviation from it, dB^2.
  double variance() const { return spread * factor() * factor(); }
  bool operator==(const SameSite&) const = default;
};

}  // namespace mastwise::reception
