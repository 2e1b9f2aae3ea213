#pragma once

#include "core/angles/bearing.hpp"
#include "core/motion/sensor_lines.hpp"
#include "core/time.hpp"

#include <optional>
#include <utility>
#include <vector>

// Signs that the rig drives, from what it does to the sensors on board. They only lead to a
// question; a speed over ground decides where there is one.
namespace mastwise::safety {

// By the tablet's accelerometer: driving shakes without a pause, a rig at rest does so for a few
// steps at a time. Only a tablet that has lain or hung still tells of the rig, until it is taken
// up: a person who walks with it shakes it more than a road.
class ShakeWatch {
 public:
  // A sample each 0.05 to 0.3 s. Returns whether the rig shakes as when driving.
  bool add(const motion::Sample& acceleration);
  bool shakes() const { return seconds_ >= kSecondsNeeded; }
  void forget() { *this = {}; }
  bool operator==(const ShakeWatch&) const = default;

  // In each of so many seconds in a row the deviation from the mean is at least kShake_mps2, root
  // mean square of all three axes. Our choices on simulated rigs (tests/core/safety): ISO 2631-1
  // calls up to 0.315 m/s^2 not uncomfortable, which a ride on a good road is [from memory].
  static constexpr int kSecondsNeeded = 8;
  static constexpr double kShake_mps2 = 0.16;
  // Still: for so many seconds in a row it does not shake, and the vertical turns in it by no more
  // than this from one to the next. Our choices, no source.
  static constexpr int kSecondsStill = 3;
  static constexpr double kStill_deg = 1.0;
  // Taken up: for two seconds in a row the vertical is this far from where it was when still. A
  // turn of the rig or its brakes tilt it, too, but for 0.2 of gravity at most.
  static constexpr double kTakenUp_deg = 12.0;

 private:
  void close_second();

  std::vector<motion::Vector> second_ = {};
  double began_s_ = 0.0;
  std::optional<motion::Vector> mean_ = {};   // of the second before
  std::optional<motion::Vector> still_ = {};  // when it was last still, until it is taken up
  int seconds_still_ = 0;                     // in a row
  bool tilted_ = false;                       // the second before, by kTakenUp_deg
  int seconds_ = 0;                           // that shook, in a row
};

// By a heading sensor that is fixed to the rig: all readings of the last kStays are farther than
// kTurned_deg from the middle one of those kWithin to kWithin - kEarly ago. A truck that passes the
// rig turns the sensor for a moment only.
class TurnWatch {
 public:
  // A reading of the sensor, by any north. Returns whether the rig turns.
  bool add(double heading_deg, Monotonic now);
  bool turns() const { return turns_; }
  void forget() { *this = {}; }
  bool operator==(const TurnWatch&) const = default;

  static constexpr double kTurned_deg = 20.0;  // our choices, no source
  static constexpr milliseconds kWithin{20'000};
  static constexpr milliseconds kEarly{6'000};
  static constexpr milliseconds kStays{4'000};

 private:
  std::vector<std::pair<Monotonic, double>> read_ = {};  // of the last kWithin
  bool turns_ = false;
};

}  // namespace mastwise::safety
