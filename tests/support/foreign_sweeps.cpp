#include "tests/support/foreign_sweeps.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace mastwise::test {
namespace {

constexpr double kRadians = std::numbers::pi / 180.0;

// An antenna as it is mounted, in place of its nominal pattern.
class MountedAntenna {
 public:
  MountedAntenna(Chance& chance, const ForeignSweeps& kind)
      : nominal_(kind.nominal),
        narrower_(1.0 / chance.uniform(1.0 - kind.width_off, 1.0 + kind.width_off)) {
    for (std::size_t i = 0; i < kWaves; ++i) {
      ripple_[i] = {kind.ripple_db * chance.uniform(0.0, 1.0), chance.uniform(0.0, 360.0)};
      lobes_[i] = {kind.lobes_db * chance.uniform(0.0, 1.0), chance.uniform(0.0, 360.0)};
    }
  }

  double power(double off_deg) const {
    const double folded = fold_half_circle_deg(off_deg);
    const double scaled = std::clamp(folded * narrower_, -180.0, 180.0);
    double db = nominal_.relative_db(Turn::clockwise_deg(scaled));
    // Behind the beam, away from the axis, a real antenna has lobes.
    const double aside = std::clamp((std::fabs(folded) - 70.0) / 40.0, 0.0, 1.0);
    for (std::size_t i = 0; i < kWaves; ++i) {
      const double wave = static_cast<double>(i + 2);
      db += ripple_[i].db * std::cos((wave * folded + ripple_[i].phase_deg) * kRadians);
      db += aside * lobes_[i].db * std::cos((2.0 * wave * folded + lobes_[i].phase_deg) * kRadians);
    }
    return std::pow(10.0, db / 10.0);
  }

 private:
  static constexpr std::size_t kWaves = 4;
  struct Wave {
    double db = 0.0, phase_deg = 0.0;
  };
  gear::Pattern nominal_;
  double narrower_;
  std::array<Wave, kWaves> ripple_ = {}, lobes_ = {};
};

// A meter's units for a level relative to the peak's.
struct ForeignMeter {
  double at_peak, per_db, least, most, step;
};

ForeignMeter foreign_meter(Chance& chance, const ForeignSweeps& kind) {
  constexpr std::array kPoints{2.0, 5.0, 10.0}, kDecibels{0.1, 0.5, 1.0};
  const std::size_t coarse = chance.below(kPoints.size());
  switch (kind.scale) {
    case aim::Scale::quality_percent:
      return {chance.uniform(55.0, 110.0), chance.uniform(2.5, 6.0), 0.0, 100.0,
              kind.coarse ? kPoints[coarse] : 1.0};
    case aim::Scale::bars_of_5:
      return {chance.uniform(3.0, 5.5), chance.uniform(0.15, 0.3), 0.0, 5.0, 1.0};
    case aim::Scale::bars_of_10:
      return {chance.uniform(6.0, 11.0), chance.uniform(0.3, 0.6), 0.0, 10.0, 1.0};
    case aim::Scale::decibel:
      break;
  }
  return {chance.uniform(-60.0, -30.0), 1.0, -300.0, 300.0,
          kind.coarse ? kDecibels[coarse] : kDecibels[0]};
}

// This sweep's share of each trouble.
ForeignSweeps drawn(Chance& chance, const ForeignSweeps& most) {
  ForeignSweeps kind = most;
  kind.most_noise_db = chance.uniform(most.least_noise_db, most.most_noise_db);
  for (double* trouble : {&kind.width_off, &kind.ripple_db, &kind.lobes_db, &kind.gust_share,
                          &kind.drift_db, &kind.heading_sigma_deg}) {
    *trouble *= chance.uniform(0.0, 1.0);
  }
  return kind;
}

}  // namespace

MadeSweep foreign_sweep(Chance& chance, const ForeignSweeps& most) {
  const ForeignSweeps kind = drawn(chance, most);
  const MountedAntenna antenna(chance, kind);
  const ForeignMeter meter = foreign_meter(chance, kind);
  const double peak_deg = chance.uniform(0.0, 360.0);
  const bool reflected = chance.uniform(0.0, 1.0) < kind.reflected_share;
  const double aside_deg = (chance.below(2) == 0 ? -1.0 : 1.0) * chance.uniform(25.0, 110.0);
  const double part = reflected ? std::pow(10.0, -chance.uniform(5.0, 15.0) / 10.0) : 0.0;
  const auto signal_db = [=](double heading_deg) {
    const double off_deg = heading_deg - peak_deg;
    return 10.0 * std::log10(antenna.power(off_deg) + part * antenna.power(off_deg - aside_deg));
  };
  MadeSweep sweep{.peak = Bearing<Dial>::degrees(peak_deg)};
  sweep.true_value = [=](double heading_deg) {
    return std::clamp(meter.at_peak + meter.per_db * signal_db(heading_deg), meter.least,
                      meter.most);
  };

  const double beam_deg = kind.nominal.half_power_beamwidth_deg().value_or(90.0);
  const std::size_t count = 9 + chance.below(8);
  const double step_deg = chance.uniform(0.15, 0.3) * std::max(beam_deg, 40.0);
  const double middle_deg = peak_deg + chance.uniform(-0.6, 0.6) * beam_deg;
  const double drift_db = kind.drift_db * chance.uniform(-1.0, 1.0);
  const bool back = chance.below(2) == 0;  // to the right, or to the left
  double gust_db = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t place = back ? count - 1 - i : i;
    const double steps = static_cast<double>(place) - static_cast<double>(count - 1) / 2.0;
    const double read_deg = std::round(middle_deg + step_deg * steps);
    const double true_deg = read_deg + kind.heading_sigma_deg * chance.normal();
    const bool goes_on = gust_db > 0.0 && chance.below(3) == 0;
    if (!goes_on) {
      gust_db = chance.uniform(0.0, 1.0) < kind.gust_share ? chance.uniform(2.0, 10.0) : 0.0;
    }
    const double passed = static_cast<double>(i) / static_cast<double>(count - 1);
    const double level_db =
        signal_db(true_deg) + drift_db * passed - gust_db + kind.most_noise_db * chance.normal();
    const double shown = meter.at_peak + meter.per_db * level_db;
    const double stepped = meter.step * std::round(shown / meter.step);
    sweep.readings.push_back({.heading = Bearing<Dial>::degrees(read_deg),
                              .value = std::clamp(stepped, meter.least, meter.most)});
  }
  return sweep;
}

Coverage foreign_coverage(const ForeignSweeps& kind, std::size_t sweeps, std::uint64_t seed) {
  const auto fitter = aim::SweepFitter::for_pattern(kind.nominal);
  Chance chance(seed);
  return coverage_of(*fitter, kind.nominal, {.scale = kind.scale}, sweeps,
                     [&] { return foreign_sweep(chance, kind); });
}

}  // namespace mastwise::test
