#pragma once

#include "core/logbook/record.hpp"
#include "core/reception/survey.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

// An outcome with the computed margin m and its deviation s, in dB, is an observation of the true
// margin, which is normal about m + b with the deviation s: steady above 0, breaking up down to
// kBreaksUp_db below, nothing further below (an ordered probit). b is the sum of the effects of
// band, gear and stop. Each is normal about 0 with the priors below, so that few outcomes move it
// little. The model allows for plainly wrong touches, so that one does not outweigh many. The
// estimate is the most probable b by Fisher scoring; its sigma is that of the normal distribution
// with the same curvature there (Laplace's approximation).
namespace mastwise::learning {

// A whole band differs because of the rig's noise and the model's error: the location spread of 5.5
// dB with 2.5 dB of model [common practice, no source for the sum].
constexpr double kBandPrior_db = 6.0;
// How far a roof antenna, its cable and amplifier differ from their figures [common practice].
constexpr double kGearPrior_db = reception::kUnlearnedGear_db;
// The common effect of one stop on all stations: half the variance of the 5.5 dB from spot to spot
// [common practice].
constexpr double kStopPrior_db = 4.0;
// From the last steady picture to none: the receiver's cliff of 1 dB plus the field's variation
// during observation [common practice].
constexpr double kBreaksUp_db = 3.0;
// Touches on the wrong outcome or the wrong station [common practice].
constexpr double kMistakes = 0.02;

// One outcome. Indexes count from 0.
struct Look {
  double margin_db = 0.0;     // as computed
  double deviation_db = 0.0;  // positive
  Outcome outcome = Outcome::nothing;
  std::size_t band = 0, gear = 0;  // indexes among the effects that many stops share
  std::size_t stop = 0;            // index among the stops
};

struct StopEffect {
  double effect_db = 0.0;
  double own_variance_db2 = 0.0;  // if the shared effects were certain
  std::vector<double> pull = {};  // share of each shared effect's error that it compensates
};

struct Effects {
  std::vector<double> shared_db = {};
  std::vector<double> covariance_db2 = {};  // of the shared effects, row by row
  std::vector<StopEffect> stops = {};

  // The variance of the sum of the shared effects of these indexes, and of a stop's.
  double variance_db2(std::span<const std::size_t> shared, const StopEffect* stop) const;
};

// `prior_db`: the prior's sigma for each shared effect. Cost: looks and stops times the square of
// the number of shared effects, for each of some ten rounds.
Effects estimate(std::span<const Look> looks, std::span<const double> prior_db,
                 std::size_t stop_count);

}  // namespace mastwise::learning
