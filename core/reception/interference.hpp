#pragma once

#include "core/reception/link_budget.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/same_site.hpp"

#include <span>
#include <vector>

namespace mastwise::reception {

// The spread of the ratio of two signals from one site: what remains of both fadings between
// neighboring channels [own choice].
inline constexpr double kSameSiteDeviation_db = 2.0;

// A station that interferes with another one.
struct Disturbance {
  std::size_t station = 0;  // its index in the survey
  bool same_channel = false;
  // From the wanted station's site: it fades with the wanted signal.
  bool same_site = false;
  // At the antenna's terminals, with the axis on the interferer, including the heading error:
  // exceeded for 10 % of time, or from the same site the median.
  double on_axis_dbm = 0.0;
  double ratio_db = 0.0;      // required protection of the wanted station against it
  double deviation_db = 0.0;  // over places and between models
};

// Finds the stations that interfere with the wanted one if the antenna's axis is on them, and
// stores them in `found`. `needed_dbm` is the wanted station's requirement without them; stations
// that could not take 0.01 dB off its margin are left out.
void find_disturbers(std::span<const Station> stations, std::span<const Measurement> measurements,
                     std::size_t wanted, double needed_dbm, std::vector<Disturbance>& found);

// The mutual effects of stations at the stop, with the antenna aimed at the wanted one.
//
// Overload: the median powers of all stations through the antenna's pattern, summed. If they
// overload the amplifier, the wanted station is computed without it, and the reasons advise to turn
// it off. Stations 40 dB and more below the limit on the antenna's axis are left out: 400 of them
// together would be 14 dB below it.
//
// Interference from the wanted station's own site: both signals cross the same ground and fade
// together, so the wanted one keeps its median lead. With w the interferer's weighted share of the
// wanted power, D >= N + w D, and the requirement grows by 1 / (1 - w).
//
// Interference from elsewhere: the fields that stations on the same and on neighboring channels
// exceed for 10 % of time, through the pattern, weighted by protection.hpp. A station of the same
// call sign on the same channel, or one on the same channel within some 500 m, counts as the wanted
// one and does not interfere with itself. Spreads over places and models count by their share in
// the total of interference and noise.
class Interference {
 public:
  Interference(const LinkBudget& budget, std::span<const Station> stations)
      : budget_(budget), stations_(stations) {}

  // Computes the effects of all measured stations on each other.
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
