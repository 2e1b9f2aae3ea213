#include "core/propagation/p1812/zones.hpp"

#include <algorithm>

namespace mastwise::p1812 {

namespace {

// The longest stretch whose points all satisfy a condition.
class LongestStretch {
 public:
  void step(bool inside, double length_km) {
    current_km_ = inside ? current_km_ + length_km : 0.0;
    longest_km_ = std::max(longest_km_, current_km_);
  }
  double longest_km() const { return longest_km_; }

 private:
  double current_km_ = 0.0;
  double longest_km_ = 0.0;
};

}  // namespace

ZoneShares share_zones(const Section& section, std::span<const Zone> zones) {
  if (zones.empty()) return {0.0, section.length_km, section.length_km};
  LongestStretch land;
  LongestStretch inland;
  double sea_km = 0.0;
  double start_km = 0.0;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    const double end_km = i + 1 < zones.size()
                              ? 0.5 * (section.distance_km(i) + section.distance_km(i + 1))
                              : section.length_km;
    const double length_km = end_km - start_km;
    if (zones[i] == Zone::sea) sea_km += length_km;
    land.step(zones[i] != Zone::sea, length_km);
    inland.step(zones[i] == Zone::inland, length_km);
    start_km = end_km;
  }
  return {std::min(sea_km / section.length_km, 1.0), land.longest_km(), inland.longest_km()};
}

}  // namespace mastwise::p1812
