#include "core/sweep/sweep.hpp"

#include "core/sweep/sweep_posterior.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::aim {
namespace {

constexpr double kLobeProbability = 0.9;
constexpr double kOtherFaceProbability = 0.025;
constexpr double kLostDb = 0.5;
constexpr std::size_t kLeastReadings = 3;
constexpr double kMostMore = 6.0;

// How far the antenna may be off before it loses this much, on the side with the steeper loss; at
// most `most_deg`.
double slack_deg(const gear::Pattern& pattern, double most_lost_db, double most_deg) {
  constexpr double kStepDeg = 0.1;
  double off = kStepDeg;
  const auto lost = [&](double degrees) {
    return -pattern.relative_db(Turn::clockwise_deg(degrees));
  };
  while (off < most_deg && std::max(lost(off + kStepDeg), lost(-off - kStepDeg)) < most_lost_db) {
    off += kStepDeg;
  }
  return off;
}

// The posterior's probability within the figure that is stated as 95 %, by the size of its own 95 %
// in beamwidths; chosen by simulation (foreign_sweeps_test.cpp and sweep_coverage_test.cpp), linear
// between these. Sharp peaks hold without a reserve; wide ones are wide enough.
double stated_probability(double error_beams) {
  struct Node {
    double beams, probability;
  };
  constexpr std::array kNodes{Node{0.07, 0.95}, Node{0.12, 0.974}, Node{0.2, 0.979},
                              Node{0.27, 0.945}, Node{0.6, 0.93}};
  if (error_beams <= kNodes.front().beams) return kNodes.front().probability;
  for (std::size_t i = 1; i < kNodes.size(); ++i) {
    const Node& from = kNodes[i - 1];
    const Node& to = kNodes[i];
    if (error_beams > to.beams) continue;
    const double part = (error_beams - from.beams) / (to.beams - from.beams);
    return from.probability + part * (to.probability - from.probability);
  }
  return kNodes.back().probability;
}

// The error falls with the root of the number of readings. `ratio`: of the error to the needed one.
int more_headings(std::size_t read, double ratio) {
  const auto count = static_cast<double>(read);
  const double wanted = std::ceil(count * (ratio * ratio - 1.0));
  const double least = std::max(static_cast<double>(kLeastReadings) - count, 1.0);
  return static_cast<int>(std::clamp(wanted, least, kMostMore));
}

}  // namespace

double forgiven_deg(const gear::Pattern& pattern) {
  constexpr double kHalfPowerDb = 3.0, kMostDeg = 45.0;
  return slack_deg(pattern, kHalfPowerDb, kMostDeg);
}

Result<SweepFit> SweepFitter::fit(std::span<const Reading> readings,
                                  const SweepOptions& options) const {
  const auto data = sweep_data(readings, options, pattern_);
  if (!data) return data.error();
  const SweepPosterior posterior(*this, *data);

  // Of two equal faces, the one closer to the sweep.
  const double middle_deg = data->arc_start_deg + data->arc_deg / 2.0;
  const double peak_deg = middle_deg + posterior.off_deg(posterior.peak_deg(), middle_deg);
  SweepFit fit{.peak = Bearing<Dial>::degrees(peak_deg),
               .sigma_deg = std::sqrt(posterior.mean_square_deg2()),
               .error95_deg = posterior.half_width_deg(
                   stated_probability(posterior.half_width_deg(0.95) / beamwidth_deg_)),
               .noise = 0.0,
               .other_face = std::nullopt,
               .second_lobe = std::nullopt,
               .enough = false,
               .more_headings = 0};

  double behind = 0.0;
  for (const auto& place : posterior.places()) {
    if (std::fabs(posterior.off_deg(place.peak_deg, peak_deg)) > 90.0) behind += place.mass;
  }
  const bool alike = combs_ < kCombs;
  if (alike || behind > kOtherFaceProbability) fit.other_face = fit.peak.reciprocal();

  // By side of the peak: the probability, and its means of direction and level.
  struct Side {
    double mass = 0.0, aside_deg = 0.0, relative_db = 0.0;
  };
  std::array<Side, 2> sides;
  for (std::size_t i = 0; i < arrivals_.size(); ++i) {
    const Arrival& arrival = arrivals_[i];
    if (!arrival.reflected) continue;
    const double mass = posterior.arrival_masses()[i];
    Side& side = sides[arrival.aside_deg > 0.0 ? 1 : 0];
    side.mass += mass;
    side.aside_deg += mass * arrival.aside_deg;
    side.relative_db += mass * arrival.relative_db;
  }
  const Side& side = sides[0].mass > sides[1].mass ? sides[0] : sides[1];
  if (side.mass > kLobeProbability) {
    fit.second_lobe =
        SecondLobe{.heading = fit.peak + Turn::clockwise_deg(side.aside_deg / side.mass),
                   .relative_db = side.relative_db / side.mass,
                   .probability = sides[0].mass + sides[1].mass};
  }

  fit.noise =
      std::sqrt(static_cast<double>(posterior.level_at(posterior.likeliest()).noise_variance[0])) *
      data->units_per_db;
  const double ratio = std::max(fit.sigma_deg / slack_deg(pattern_, kLostDb, 90.0),
                                fit.error95_deg / forgiven_deg(pattern_));
  fit.enough = readings.size() >= kLeastReadings && ratio <= 1.0;
  if (!fit.enough) fit.more_headings = more_headings(readings.size(), ratio);
  return fit;
}

}  // namespace mastwise::aim
