#pragma once

#include "core/gear/pattern.hpp"
#include "core/sweep/sweep.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <random>
#include <vector>

namespace mastwise::test {

// The same numbers on every machine: the engine's are fixed by the language's standard, those of
// its distributions are not.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}
  double uniform(double least, double most);
  double normal();  // Box and Muller, Annals of Mathematical Statistics 29 (1958), 610
  std::size_t below(std::size_t count);

 private:
  std::mt19937_64 engine_;
  std::optional<double> spare_ = {};
};

// A sweep as a person makes it, with the truth behind it.
struct MadeSweep {
  Bearing<Dial> peak;
  std::vector<aim::Reading> readings = {};
  // What the meter would show at a heading without noise, cut off at the ends of its scale.
  std::function<double(double heading_deg)> true_value = {};
};

// 8 to 14 readings in steps of 10 to 15 degrees about a heading up to 40 degrees off, on a quality
// meter that has 3 to 5.5 whole points a decibel and would show 60 to 115 at the peak, cut off at 0
// and 100. `noise_db` is one sigma. With a reflection: 6 to 12 dB below, 30 to 90 degrees to either
// side, adding its power.
MadeSweep quality_sweep(Chance& chance, const gear::Pattern& pattern, double noise_db,
                        bool reflection);

// The accuracy of the fits of many sweeps.
struct Coverage {
  std::size_t sweeps = 0;
  double covered = 0.0;  // the share with an error within the stated one
  double rms_error_deg = 0.0;
  double rms_sigma_deg = 0.0;
  double median_stated_deg = 0.0;
  double lobes = 0.0;  // the share with a reported second lobe
};

// Of the sweeps that `make` makes; those that cannot be fitted are left out.
Coverage coverage_of(const aim::SweepFitter& fitter, const gear::Pattern& pattern,
                     const aim::SweepOptions& options, std::size_t sweeps,
                     const std::function<MadeSweep()>& make);

Coverage coverage(const gear::Pattern& pattern, double noise_db, bool reflection,
                  std::size_t sweeps, std::uint64_t seed);

}  // namespace mastwise::test
