#pragma once

#include <optional>

namespace mastwise::safety {

enum class Antenna { Down, Raised };

// What a moving rig makes of the screen.
enum class Drive {
  Parked,    // all screens
  Underway,  // one glanceable face
  Alarm,     // moving with the antenna up
};

// `speed_kmh`: over ground, or nothing when no fresh fix tells it; an unknown speed locks nothing.
// The alarm begins above 5 km/h and the glanceable face above 8 km/h (this design's figures; that a
// driver must not work a screen: NHTSA visual-manual guidelines, 78 FR 24817). `before` is the last
// answer: the alarm stays until the rig stops, below 1 km/h, or the antenna is confirmed down.
inline Drive drive_state(Antenna antenna, std::optional<double> speed_kmh, Drive before) {
  constexpr double kAlarmKmh = 5.0, kUnderwayKmh = 8.0, kStoppedKmh = 1.0;
  if (antenna == Antenna::Raised) {
    if (speed_kmh && *speed_kmh > kAlarmKmh) return Drive::Alarm;
    const bool stopped = speed_kmh && *speed_kmh < kStoppedKmh;
    if (before == Drive::Alarm && !stopped) return Drive::Alarm;
    return Drive::Parked;
  }
  return speed_kmh && *speed_kmh > kUnderwayKmh ? Drive::Underway : Drive::Parked;
}

}  // namespace mastwise::safety
