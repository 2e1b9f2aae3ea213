#pragma once

#include <array>
#include <cstdint>
#include <optional>

// Whether a compass needle swings free where the field dips: its maker balanced it for one zone.
namespace mastwise {

// What a needle was balanced for.
enum class NeedleZone : std::uint8_t {
  northern,
  equator,
  southern,
  anywhere,  // a needle that swings free at any dip
};
inline constexpr std::array kNeedleZones{NeedleZone::northern, NeedleZone::equator,
                                         NeedleZone::southern, NeedleZone::anywhere};

// The zone of a place, never `anywhere`, by the inclination there, degrees, in [-90, 90], positive
// where the north end dips: northern from kZoneEdge_deg, southern from -kZoneEdge_deg. Makers
// balance needles for two to seven zones and publish no common limits; three zones and their limit
// are common practice, no source.
NeedleZone needle_zone(double inclination_deg);
inline constexpr double kZoneEdge_deg = 30.0;

enum class NeedleSwing : std::uint8_t {
  free,
  drags,   // made for the next zone: one end sinks, and it may touch the housing
  sticks,  // made for the other hemisphere
};

struct NeedleHere {
  NeedleZone zone;     // of the place
  NeedleSwing swing;   // common practice, no source
  bool north_end_low;  // the end that sinks, unless it swings free
  bool operator==(const NeedleHere&) const = default;
};

// How a needle swings at an inclination as in needle_zone(). Until its zone is known it counts as
// made for the northern one.
NeedleHere needle_here(std::optional<NeedleZone> made_for, double inclination_deg);

}  // namespace mastwise
