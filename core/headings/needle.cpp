#include "core/headings/needle.hpp"

#include <cstdlib>

namespace mastwise {

NeedleZone needle_zone(double inclination_deg) {
  if (inclination_deg >= kZoneEdge_deg) return NeedleZone::northern;
  if (inclination_deg <= -kZoneEdge_deg) return NeedleZone::southern;
  return NeedleZone::equator;
}

NeedleHere needle_here(std::optional<NeedleZone> made_for, double inclination_deg) {
  const NeedleZone made = made_for.value_or(NeedleZone::northern);
  const NeedleZone here = needle_zone(inclination_deg);
  if (made == NeedleZone::anywhere) return {here, NeedleSwing::free, false};
  // Zones from north to south: a needle from farther north has its weight at the south end.
  const int southward = static_cast<int>(here) - static_cast<int>(made);
  const NeedleSwing swing = southward == 0             ? NeedleSwing::free
                            : std::abs(southward) == 1 ? NeedleSwing::drags
                                                       : NeedleSwing::sticks;
  return {here, swing, southward < 0};
}

}  // namespace mastwise
