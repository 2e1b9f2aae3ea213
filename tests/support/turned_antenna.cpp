#include "tests/support/turned_antenna.hpp"

#include <cmath>

namespace mastwise::test {

void TurnedAntenna::turn(aim::LiveSweep& sweep, double rate_dps, double seconds, bool meter_on) {
  constexpr milliseconds kStep{10};
  constexpr double kStep_s = 0.01;
  const auto late = static_cast<std::size_t>(std::lround(habits_.delay_s / kStep_s));
  const double part =
      habits_.smoothing_s > 0.0 ? 1.0 - std::exp(-kStep_s / habits_.smoothing_s) : 1.0;
  const auto steps = static_cast<int>(std::lround(seconds / kStep_s));
  for (int i = 0; i < steps; ++i) {
    now_ += kStep;
    heading_deg_ += rate_dps * kStep_s;
    const double at_s = static_cast<double>(now_.time_since_epoch().count()) / 1000.0;
    smoothed_ += part * (shown_(heading_deg_, at_s) - smoothed_);
    late_.push_back(smoothed_);
    if (late_.size() > late + 1) late_.pop_front();
    if (now_.time_since_epoch() % habits_.heading_every == milliseconds(0)) {
      const double read = heading_deg_ + habits_.heading_sigma_deg * chance_.normal();
      sweep.turn(now_, Bearing<Dial>::degrees(read));
    }
    if (meter_on && now_.time_since_epoch() % habits_.meter_every == milliseconds(0)) {
      double value = late_.front() + habits_.noise * chance_.normal();
      if (habits_.step > 0.0) value = habits_.step * std::round(value / habits_.step);
      sweep.read(now_, value);
    }
  }
}

}  // namespace mastwise::test
