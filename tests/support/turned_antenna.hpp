#pragma once

#include "core/sweep/live_sweep.hpp"
#include "tests/support/sweeps.hpp"

#include <functional>

namespace mastwise::test {

// An antenna that turns with a heading sensor on it, while a meter watches: what the collector is
// given, moment by moment. The meter's averaging is computed in steps of 10 ms, apart from the
// collector's shift by its time constant.
class TurnedAntenna {
 public:
  struct Habits {
    double smoothing_s = 1.0;        // time constant of the meter
    double delay_s = 0.0;            // from the antenna to the meter's line
    double noise = 0.0;              // of the meter's detector, one sigma of each value
    double heading_sigma_deg = 0.0;  // of the sensor
    milliseconds heading_every{200}, meter_every{250};
    double step = 0.0;  // of the meter's figures
  };

  // `shown`: the settled meter at a heading and second.
  TurnedAntenna(std::function<double(double heading_deg, double at_s)> shown, Habits habits,
                double heading_deg, std::uint64_t seed = 1)
      : shown_(std::move(shown)), habits_(habits), chance_(seed), heading_deg_(heading_deg) {
    smoothed_ = shown_(heading_deg_, 0.0);
  }

  // Turns at this rate for some seconds; `meter_on`: false while its line is silent.
  void turn(aim::LiveSweep& sweep, double rate_dps, double seconds, bool meter_on = true);

  double heading_deg() const { return heading_deg_; }
  Monotonic now() const { return now_; }

 private:
  std::function<double(double, double)> shown_;
  Habits habits_;
  Chance chance_;
  double heading_deg_;
  double smoothed_;
  Monotonic now_{};
  std::deque<double> late_ = {};  // smoothed values on their way
};

}  // namespace mastwise::test
