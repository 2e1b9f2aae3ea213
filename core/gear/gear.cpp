#include "core/gear/gear.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace mastwise::gear {
namespace {

struct CablePoint {
  double frequency_mhz;
  double loss_db_per_100_m;
};

// Common practice, no source: RG-6 with a solid shield as sold for houses.
constexpr std::array<CablePoint, 4> kRg6{
    {{55.0, 5.0}, {211.0, 10.0}, {470.0, 15.0}, {700.0, 18.0}}};
constexpr double kRg59OverRg6 = 1.3;    // common practice, no source: 25 to 35 % more
constexpr double kTwoWaySplitDb = 3.5;  // common practice, no source: 3 dB and the splitter's loss

double rg6_loss_db_per_100_m(double frequency_mhz) {
  const double root = std::sqrt(frequency_mhz);
  const auto root_of = [](const CablePoint& point) { return std::sqrt(point.frequency_mhz); };
  if (frequency_mhz <= kRg6.front().frequency_mhz) {
    return kRg6.front().loss_db_per_100_m * root / root_of(kRg6.front());
  }
  for (std::size_t i = 1; i < kRg6.size(); ++i) {
    const CablePoint& from = kRg6[i - 1];
    const CablePoint& to = kRg6[i];
    if (frequency_mhz > to.frequency_mhz) continue;
    const double part = (root - root_of(from)) / (root_of(to) - root_of(from));
    return from.loss_db_per_100_m + part * (to.loss_db_per_100_m - from.loss_db_per_100_m);
  }
  return kRg6.back().loss_db_per_100_m * root / root_of(kRg6.back());
}

}  // namespace

const BandAntenna& Antenna::in(Band band) const {
  switch (band) {
    case Band::low_vhf:
      return low_vhf;
    case Band::high_vhf:
      return high_vhf;
    case Band::uhf:
      return uhf;
  }
  return uhf;
}

std::string_view to_text(CableType type) {
  return type == CableType::rg6 ? "RG-6" : "RG-59";
}

double Cable::loss_db(double frequency_mhz) const {
  const double more = type == CableType::rg59 ? kRg59OverRg6 : 1.0;
  return more * rg6_loss_db_per_100_m(frequency_mhz) * length_m / 100.0;
}

double split_loss_db(int outlets) {
  double loss_db = 0.0;
  for (int served = 1; served < std::min(outlets, 1024); served *= 2) loss_db += kTwoWaySplitDb;
  return loss_db;
}

Gear switched_off(Gear gear) {
  if (gear.amplifier) gear.off_loss_db = gear.amplifier->off_loss_db;
  gear.amplifier.reset();
  return gear;
}

}  // namespace mastwise::gear
