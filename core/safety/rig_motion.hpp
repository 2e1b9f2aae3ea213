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
// steps at a time. The tablet itself must lie or hang still: if the vertical turns in it, somebody
// holds it.
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
  // In the hand: the mean of a second is this far from that of the second before. A turn of the rig
  // or its brakes tilt the vertical, too, but for 0.2 of gravity at most.
  static constexpr double kInHand_deg = 12.0;

 private:
  void close_second();

  std::vector<motion::Vector> second_ = {};
  double began_s_ = 0.0;
  std::optional<motion::Vector> mean_ = {};  // of the second before
  int seconds_ = 0;                          // that shook, in a row
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
