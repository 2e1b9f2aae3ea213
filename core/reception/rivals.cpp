#include "core/reception/rivals.hpp"

#include "core/gear/decibels.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::reception {
namespace {

// A sum over equal steps of the standard normal distribution: for smooth functions it converges as
// fast as Gauss's rules [Davis and Rabinowitz, Methods of Numerical Integration, 1984,
// section 3.4].
template <std::size_t kCount>
struct NormalNodes {
  static constexpr std::size_t kSize = kCount;
  static constexpr double kMost = 4.0;  // deviations
  std::array<double, kSize> deviate = {};
  std::array<double, kSize> weight = {};

  NormalNodes() {
    double sum = 0.0;
    for (std::size_t i = 0; i < kSize; ++i) {
      deviate[i] = kMost * (2.0 * static_cast<double>(i) / (kSize - 1) - 1.0);
      weight[i] = std::exp(-0.5 * deviate[i] * deviate[i]);
      sum += weight[i];
    }
    for (double& each : weight) each /= sum;
  }
};

const NormalNodes<13> kNodes;
// The share of one's own site ends at 1, where the chance breaks off: finer steps.
const NormalNodes<41> kFineNodes;

// How far the sum of two powers is above the first, dB, if the second is `over_db` above it.
double rise_db(double over_db) {
  return gear::to_db(1.0 + gear::from_db(over_db));
}

}  // namespace

Level independent_sum(const Level& a, const Level& b) {
  const double variance_a = a.deviation_db * a.deviation_db;
  const double variance = variance_a + b.deviation_db * b.deviation_db;
  const double deviation_db = std::sqrt(variance);
  const double over_db = b.median_dbm - a.median_dbm;
  double mean_db = 0.0, square_db = 0.0, with_difference = 0.0;
  for (std::size_t i = 0; i < kNodes.kSize; ++i) {
    const double rise = rise_db(over_db + kNodes.deviate[i] * deviation_db);
    mean_db += kNodes.weight[i] * rise;
    square_db += kNodes.weight[i] * rise * rise;
    with_difference += kNodes.weight[i] * rise * kNodes.deviate[i] * deviation_db;
  }
  // The first power and the difference of both are correlated.
  const double together = variance > 0.0 ? -variance_a / variance * with_difference : 0.0;
  const double sum_variance = variance_a + square_db - mean_db * mean_db + 2.0 * together;
  return {a.median_dbm + mean_db, std::sqrt(std::max(0.0, sum_variance))};
}

Level joint_sum(const Level& a, const Level& b) {
  const Level& stronger = a.median_dbm >= b.median_dbm ? a : b;
  return {gear::to_db(gear::from_db(a.median_dbm) + gear::from_db(b.median_dbm)),
          stronger.deviation_db};
}

double Rivals::needed_dbm() const {
  double needed_mw = gear::from_db(needed_alone_dbm);
  for (const auto& each : {strongest, others}) {
    if (each) needed_mw += gear::from_db(each->median_dbm);
  }
  return gear::to_db(needed_mw) + gear::to_db(site.factor());
}

double Rivals::deviation_db() const {
  Level needed{needed_alone_dbm, 0.0};
  for (const auto& each : {strongest, others}) {
    if (each) needed = independent_sum(needed, *each);
  }
  return std::sqrt(site.variance() + needed.deviation_db * needed.deviation_db);
}

Requirement::Requirement(const Rivals& rivals)
    : alone_dbm_(rivals.needed_alone_dbm), site_(rivals.site) {
  if (rivals.strongest && rivals.others) {
    spread_out(*rivals.strongest, *rivals.others);
  } else if (rivals.strongest) {
    const Level& level = *rivals.strongest;
    const double alone_mw = gear::from_db(alone_dbm_);
    for (std::size_t i = 0; i < kNodes.kSize; ++i) {
      const double at_dbm = level.median_dbm + kNodes.deviate[i] * level.deviation_db;
      add(gear::to_db(alone_mw + gear::from_db(at_dbm)), kNodes.weight[i]);
    }
  } else {
    add(alone_dbm_, 1.0);
  }
}

void Requirement::add(double needed_dbm, double probability) {
  nodes_[count_++] = {needed_dbm, probability};
}

// Sorts the sums of both powers over equal steps of decibels; each counts for the two steps beside
// it, so that their mean stays.
void Requirement::spread_out(const Level& strongest, const Level& others) {
  constexpr double kStep_db = 1.5;
  std::array<double, kNodes.kSize> strongest_mw, others_mw;
  for (std::size_t i = 0; i < kNodes.kSize; ++i) {
    strongest_mw[i] =
        gear::from_db(strongest.median_dbm + kNodes.deviate[i] * strongest.deviation_db);
    others_mw[i] = gear::from_db(others.median_dbm + kNodes.deviate[i] * others.deviation_db);
  }
  const double alone_mw = gear::from_db(alone_dbm_);
  std::array<double, kMostNodes> probabilities{};
  for (std::size_t i = 0; i < kNodes.kSize; ++i) {
    for (std::size_t k = 0; k < kNodes.kSize; ++k) {
      const double over_db = gear::to_db(1.0 + (strongest_mw[i] + others_mw[k]) / alone_mw);
      const double steps = std::min(over_db / kStep_db, kMostNodes - 1.001);
      const auto step = static_cast<std::size_t>(steps);
      const double part = steps - static_cast<double>(step);
      const double probability = kNodes.weight[i] * kNodes.weight[k];
      probabilities[step] += (1.0 - part) * probability;
      probabilities[step + 1] += part * probability;
    }
  }
  for (std::size_t step = 0; step < kMostNodes; ++step) {
    if (probabilities[step] > 0.0) {
      add(alone_dbm_ + kStep_db * static_cast<double>(step), probabilities[step]);
    }
  }
}

// Against one required power and the station's own site.
double Requirement::over_site_percent(double wanted_dbm, double needed_dbm,
                                      const Spread& spread) const {
  // A small share never reaches 1, and its spread is one among others.
  constexpr double kSmallShare = 0.05;
  if (site_.share < kSmallShare) {
    Spread whole = spread;
    whole.deviation_db = std::sqrt(spread.deviation_db * spread.deviation_db + site_.variance());
    return reception::chance_percent(wanted_dbm - needed_dbm - gear::to_db(site_.factor()), whole);
  }
  const double share_deviation_db = std::sqrt(site_.spread) / site_.share;
  double sum = 0.0;
  for (std::size_t i = 0; i < kFineNodes.kSize; ++i) {
    const double left =
        1.0 - site_.share * gear::from_db(kFineNodes.deviate[i] * share_deviation_db);
    if (left <= 0.0) break;
    sum += kFineNodes.weight[i] *
           reception::chance_percent(wanted_dbm - needed_dbm + gear::to_db(left), spread);
  }
  return sum;
}

double Requirement::chance_percent(double wanted_dbm, const Spread& spread) const {
  double sum = 0.0;
  for (std::size_t i = 0; i < count_; ++i) {
    sum += nodes_[i].probability * over_site_percent(wanted_dbm, nodes_[i].needed_dbm, spread);
  }
  return sum;
}

}  // namespace mastwise::reception
