#pragma once

#include "core/sky/sun.hpp"

#include <cstdint>
#include <vector>

// The times when a plumb line's shadow marks a heading, so that nobody has to measure an angle.
namespace mastwise::sky {

// How the shadow lies, from the line's foot outward, for a person who looks along the heading.
enum class ShadowLies : std::uint8_t { Along, Right, Against, Left };

struct SunMark {
  UtcTime time;
  ShadowLies lies;
  // How fast the shadow turns then, degrees a minute, clockwise over 0.
  double turn_deg_per_min;
  bool operator==(const SunMark&) const = default;
};

// The times from `from` to sunset when the shadow lies along `heading`, against it or square to it
// and can be used (see why_no_shadow()); those of the next day if there are none, in the order of
// time. Where the sun does not set, the times of 24 hours, or of 48 if there are none. Found in
// steps of ten minutes and by bisection to a second: in the tropics, where the azimuth can turn
// back, two times within the same ten minutes are missed. Source: that of sun_at().
std::vector<SunMark> sun_marks(Position position, UtcTime from, Bearing<True> heading);

}  // namespace mastwise::sky
