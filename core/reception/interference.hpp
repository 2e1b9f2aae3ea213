#pragma once

#include "core/reception/link_budget.hpp"
#include "core/reception/measurement.hpp"

#include <span>
#include <vector>

namespace mastwise::reception {

// A station that disturbs another one.
struct Disturbance {
  std::size_t station = 0;  // its number in the survey
  bool same_channel = false;
  // Exceeded for 10 % of time at the antenna's terminals, the axis on the disturber give or take
  // the heading's error.
  double on_axis_dbm = 0.0;
  double ratio_db = 0.0;      // protection that the wanted one needs against it
  double deviation_db = 0.0;  // over places and between models
};

// The stations that disturb the wanted one where the antenna's axis is on them, into `found`.
// `needed_dbm` is what the wanted one needs without them; what could not take 0.01 dB off its
// margin is left out.
void find_disturbers(std::span<const Station> stations, std::span<const Measurement> measurements,
                     std::size_t wanted, double needed_dbm, std::vector<Disturbance>& found);

// What the stations do to each other at the stop, the antenna being aimed at the wanted one.
//
// Overload: the median powers of all stations through the antenna's pattern, summed. Where they
// overload the amplifier, the wanted one is computed without it and the words tell to turn it off.
// Stations 40 dB and more below the limit on the antenna's axis are left out: 400 of them together
// would be 14 dB below it.
//
// Interference: the fields that stations on the same and on neighboring channels exceed for 10 %
// of time, through the pattern, weighted by protection.hpp. A station of the same call sign on the
// same channel, or one on the same channel within some 500 m, is the wanted one again and does not
// disturb itself. Their spreads over places and models count by their share in what disturbs, noise
// included.
class Interference {
 public:
  Interference(const LinkBudget& budget, std::span<const Station> stations)
      : budget_(budget), stations_(stations) {}

  // Weighs every measured station against every other; the others stay as they are.
  void weigh(std::span<Measurement> measurements);

 private:
  void find_strong(std::span<const Measurement> measurements);
  void check_overload(std::span<Measurement> measurements, std::size_t wanted);
  void add_up(std::span<Measurement> measurements, std::size_t wanted);
  double toward_db(const Measurement& wanted, const Measurement& other) const;

  const LinkBudget& budget_;
  std::span<const Station> stations_;
  std::vector<std::size_t> strong_ = {};
  std::vector<double> powers_dbm_ = {};
  std::vector<Disturbance> disturbers_ = {};
};

}  // namespace mastwise::reception
