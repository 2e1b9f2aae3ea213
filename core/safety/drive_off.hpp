#pragma once

#include <optional>

namespace mastwise::safety {

enum class Antenna { Down, Raised };

// The screen that the rig's motion selects.
enum class Drive {
  Parked,    // all screens
  Underway,  // one glanceable face
  Alarm,     // moving with the antenna up
};

// Below this speed the rig is stationary, km/h. A free choice: receivers at rest report some
// tenths.
inline constexpr double kStandingKmh = 1.0;
// If the receiver falls silent during the alarm, the rig counts as moving for this long after its
// last speed, seconds. A free choice: longer than the start of any tunnel, so that no driver is
// asked.
inline constexpr double kSilentTooLong_s = 120.0;

// The speed over ground, as a receiver reports it.
struct Motion {
  std::optional<double> speed_kmh = {};  // nothing without a fresh fix
  double silent_s = 0.0;                 // since the last fresh fix

  // Whether a fresh fix shows that the rig moves.
  bool moves() const { return speed_kmh && *speed_kmh >= kStandingKmh; }
};

// An unknown speed locks nothing. The alarm begins above 5 km/h and the glanceable face above 8
// km/h (figures of this design; that a driver must not operate a screen: NHTSA visual-manual
// guidelines, 78 FR 24817). `before` is the last result. The alarm lasts until the rig is
// stationary, or until the receiver has been silent too long: no touch ends it.
inline Drive drive_state(Antenna antenna, const Motion& motion, Drive before) {
  constexpr double kAlarmKmh = 5.0, kUnderwayKmh = 8.0;
  const double speed_kmh = motion.speed_kmh.value_or(0.0);
  if (antenna == Antenna::Down) return speed_kmh > kUnderwayKmh ? Drive::Underway : Drive::Parked;
  if (speed_kmh > kAlarmKmh) return Drive::Alarm;
  if (before != Drive::Alarm) return Drive::Parked;
  const bool over = motion.speed_kmh ? !motion.moves() : motion.silent_s >= kSilentTooLong_s;
  return over ? Drive::Parked : Drive::Alarm;
}

}  // namespace mastwise::safety
