#include "core/reception/calibration.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace mastwise::reception {
namespace {

constexpr double kMile_m = 1609.344;

struct Row {
  double miles;
  std::array<double, 3> above_db;  // low VHF, high VHF, UHF
};

constexpr std::array<Row, 10> kProfile{{{0.0, {0.0, 0.0, 0.0}},
                                        {10.0, {2.0, 1.0, 3.5}},
                                        {20.0, {3.0, 1.0, 4.5}},
                                        {30.0, {1.0, 0.5, 5.5}},
                                        {40.0, {0.0, -1.5, 5.5}},
                                        {50.0, {-0.5, -1.5, 4.5}},
                                        {60.0, {-1.5, -3.5, 1.0}},
                                        {70.0, {-2.0, -3.5, -1.0}},
                                        {80.0, {-1.5, -4.0, -2.5}},
                                        {100.0, {-2.0, -4.0, -3.5}}}};
constexpr std::array<Row, 10> kIrregularityOnly{{{0.0, {0.0, 0.0, 0.0}},
                                                 {10.0, {4.5, 6.0, 10.5}},
                                                 {20.0, {3.5, 5.5, 13.0}},
                                                 {30.0, {2.0, 3.5, 14.0}},
                                                 {40.0, {1.0, 2.5, 14.0}},
                                                 {50.0, {0.5, 2.5, 13.0}},
                                                 {60.0, {1.0, 2.0, 10.0}},
                                                 {70.0, {0.5, 2.0, 7.0}},
                                                 {80.0, {0.5, 1.0, 4.0}},
                                                 {100.0, {-1.0, 0.0, 3.0}}}};

constexpr std::array kFrequencies_mhz{69.0, 194.0, 615.0};

// Between two bands: the lower one's index, and the part of the way to the next.
struct BetweenBands {
  std::size_t lower;
  double part;
};

BetweenBands between_bands(double frequency_mhz) {
  const double f = std::clamp(frequency_mhz, kFrequencies_mhz.front(), kFrequencies_mhz.back());
  const std::size_t lower = f < kFrequencies_mhz[1] ? 0 : 1;
  return {lower, std::log(f / kFrequencies_mhz[lower]) /
                     std::log(kFrequencies_mhz[lower + 1] / kFrequencies_mhz[lower])};
}

double at_row(const Row& row, BetweenBands bands) {
  const double low_db = row.above_db[bands.lower];
  return low_db + bands.part * (row.above_db[bands.lower + 1] - low_db);
}

}  // namespace

double above_measured_curves_db(Knowledge knowledge, double frequency_mhz, double distance_m) {
  const auto& rows = knowledge == Knowledge::profile ? kProfile : kIrregularityOnly;
  const BetweenBands bands = between_bands(frequency_mhz);
  const double miles = distance_m / kMile_m;
  const auto* const next =
      std::find_if(rows.begin(), rows.end(), [miles](const Row& row) { return row.miles > miles; });
  if (next == rows.end()) return at_row(rows.back(), bands);
  const Row& before = *(next - 1);
  const double from_db = at_row(before, bands);
  const double part = (miles - before.miles) / (next->miles - before.miles);
  return from_db + part * (at_row(*next, bands) - from_db);
}

double remaining_deviation_db(Knowledge knowledge) {
  return knowledge == Knowledge::profile ? 2.0 : 3.0;
}

}  // namespace mastwise::reception
