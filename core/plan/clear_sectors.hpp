#pragma once

#include "core/angles/bearing.hpp"
#include "core/plan/slack.hpp"

#include <cstddef>
#include <span>
#include <vector>

// Where around the rig nothing tall may stand, so that a pad and a nose heading can be chosen
// before the jacks go down.
namespace mastwise {

// The distance at which a neighbor's rig or a tree is assumed: the middle of the next site [our
// choice, no source].
inline constexpr double kNearObstacle_m = 10.0;

// How far the edge of an obstacle `near_m` (over 0) from the antenna must stay from the straight
// way to a far station to cost nothing, in m: 0.78 sqrt(wavelength * near_m / 2), about 0.55 of the
// first Fresnel zone's radius. `frequency_mhz` over 0. Source: Recommendation ITU-R P.526 section
// 4.1, (26) with the station far away, and (31), which holds above v = -0.78.
double clearance_m(double frequency_mhz, double near_m = kNearObstacle_m);

// The same as an angle at the antenna, degrees.
double clearance_deg(double frequency_mhz, double near_m = kNearObstacle_m);

// A wanted station as seen from the rig.
struct WantedWay {
  Bearing<True> bearing;
  double frequency_mhz = 0.0;  // over 0
};

// A sector that must stay clear.
struct ClearSector {
  HeadingArc arc;
  std::vector<std::size_t> ways = {};  // indexes of the wanted ways in it, clockwise
  // The clearance below the antenna that the lowest frequency in it needs, m: what is lower than
  // the antenna less this does no harm at kNearObstacle_m on a level way.
  double clearance_m = 0.0;
  bool operator==(const ClearSector&) const = default;
};

// The sectors to keep clear: around each wanted way its clearance and `direction_error_deg` (0 or
// more, one standard deviation of how well a person finds the direction) to either side; those that
// overlap or touch are one. Clockwise by their beginnings. How far the antenna may be turned off a
// station does not matter here: its wave comes from its bearing at any heading of the antenna.
std::vector<ClearSector> clear_sectors(std::span<const WantedWay> ways, double direction_error_deg);

// Arcs joined where they overlap or touch, clockwise by their beginnings; a full circle begins at
// north.
std::vector<HeadingArc> joined_arcs(std::vector<HeadingArc> arcs);

// The arcs between joined arcs, the widest first; the full circle without any.
std::vector<HeadingArc> gaps_between(const std::vector<HeadingArc>& joined);

// A sector fixed to the rig, clockwise from `from`.
struct RigSector {
  RigAngle from;
  double length_deg = 0.0;  // 0 to 360
  bool operator==(const RigSector&) const = default;
};

// A rig on the next site, seen from the middle of this one: 9 m of it at 8 m on each side are 29
// degrees to either side of abeam [our choice, no source].
RigSector neighbor_sector(bool right);

// The nose headings at which no occupied sector of the rig meets an arc, the widest range first. An
// arc's end that touches an occupied sector counts as meeting.
std::vector<HeadingArc> noses_that_clear(const std::vector<HeadingArc>& arcs,
                                         std::span<const RigSector> occupied);

}  // namespace mastwise
