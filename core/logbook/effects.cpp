#include "core/logbook/effects.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::learning {
namespace {

double square(double value) {
  return value * value;
}

double normal_density(double z) {
  return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
}

double normal_distribution(double z) {
  return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

// The evidence of one outcome about the bias, at a given bias.
struct Evidence {
  double log_likelihood = 0.0;
  double slope = 0.0;        // of the log likelihood, 1/dB
  double information = 0.0;  // Fisher's, expected over the outcomes, 1/dB^2
};

Evidence evidence(const Look& look, double bias_db) {
  const double steady_z = (look.margin_db + bias_db) / look.deviation_db;
  const double some_z = (look.margin_db + bias_db + kBreaksUp_db) / look.deviation_db;
  const double steady = normal_distribution(steady_z);
  const double nothing = normal_distribution(-some_z);
  const double steady_slope = normal_density(steady_z) / look.deviation_db;
  const double some_slope = normal_density(some_z) / look.deviation_db;
  // In the order of Outcome.
  const double chances[] = {steady, std::max(0.0, 1.0 - steady - nothing), nothing};
  const double slopes[] = {steady_slope, some_slope - steady_slope, -some_slope};

  Evidence result;
  for (std::size_t i = 0; i < 3; ++i) {
    const double chance = (1.0 - kMistakes) * chances[i] + kMistakes / 3.0;
    const double slope = (1.0 - kMistakes) * slopes[i];
    result.information += square(slope) / chance;
    if (i != static_cast<std::size_t>(look.outcome)) continue;
    result.log_likelihood = std::log(chance);
    result.slope = slope / chance;
  }
  return result;
}

// A symmetric, positive definite matrix, row by row.
class Matrix {
 public:
  explicit Matrix(std::size_t size) : size_(size), values_(size * size, 0.0) {}
  double& operator()(std::size_t row, std::size_t column) { return values_[row * size_ + column]; }
  double operator()(std::size_t row, std::size_t column) const {
    return values_[row * size_ + column];
  }

  // Inverts by Gauss-Jordan without pivoting: the diagonal of a positive definite matrix stays
  // positive.
  std::vector<double> inverse() const {
    Matrix left = *this;
    Matrix right(size_);
    for (std::size_t i = 0; i < size_; ++i) right(i, i) = 1.0;
    for (std::size_t pivot = 0; pivot < size_; ++pivot) {
      const double scale = 1.0 / left(pivot, pivot);
      for (std::size_t i = 0; i < size_; ++i) {
        left(pivot, i) *= scale;
        right(pivot, i) *= scale;
      }
      for (std::size_t row = 0; row < size_; ++row) {
        const double factor = left(row, pivot);
        if (row == pivot || factor == 0.0) continue;
        for (std::size_t i = 0; i < size_; ++i) {
          left(row, i) -= factor * left(pivot, i);
          right(row, i) -= factor * right(pivot, i);
        }
      }
    }
    return right.values_;
  }

 private:
  std::size_t size_;
  std::vector<double> values_;
};

// Climbs to the most probable effects. The stops' part of the curvature is diagonal, since each
// outcome belongs to one stop. Eliminating it leaves a system as large as the shared effects.
class Climb {
 public:
  Climb(std::span<const Look> looks, std::span<const double> prior_db, std::size_t stop_count)
      : looks_(looks),
        prior_db_(prior_db),
        shared_db_(prior_db.size(), 0.0),
        stops_db_(stop_count, 0.0) {}

  Effects run() {
    constexpr int kMostRounds = 100;
    double height = log_posterior(shared_db_, stops_db_);
    bool climbing = true;
    for (int round = 0; round < kMostRounds && climbing; ++round) {
      measure();
      climbing = step(height);
    }
    measure();
    Effects effects{.shared_db = shared_db_, .covariance_db2 = covariance_db2_};
    for (std::size_t stop = 0; stop < stops_db_.size(); ++stop) {
      effects.stops.push_back({.effect_db = stops_db_[stop],
                               .own_variance_db2 = 1.0 / stop_curvature_[stop],
                               .pull = pull(stop)});
    }
    return effects;
  }

 private:
  double log_posterior(const std::vector<double>& shared_db,
                       const std::vector<double>& stops_db) const {
    double sum = 0.0;
    for (const Look& look : looks_) {
      const double bias_db = shared_db[look.band] + shared_db[look.gear] + stops_db[look.stop];
      sum += evidence(look, bias_db).log_likelihood;
    }
    for (std::size_t i = 0; i < shared_db.size(); ++i) {
      sum -= 0.5 * square(shared_db[i] / prior_db_[i]);
    }
    for (const double effect_db : stops_db) sum -= 0.5 * square(effect_db / kStopPrior_db);
    return sum;
  }

  // Slopes and curvatures at the present effects, and the shared effects' covariance.
  void measure() {
    const std::size_t count = shared_db_.size();
    shared_slope_.assign(count, 0.0);
    stop_slope_.assign(stops_db_.size(), 0.0);
    stop_curvature_.assign(stops_db_.size(), 1.0 / square(kStopPrior_db));
    between_.assign(stops_db_.size() * count, 0.0);
    Matrix curvature(count);
    for (std::size_t i = 0; i < count; ++i) {
      curvature(i, i) = 1.0 / square(prior_db_[i]);
      shared_slope_[i] = -shared_db_[i] / square(prior_db_[i]);
    }
    for (std::size_t stop = 0; stop < stops_db_.size(); ++stop) {
      stop_slope_[stop] = -stops_db_[stop] / square(kStopPrior_db);
    }
    for (const Look& look : looks_) {
      const Evidence found =
          evidence(look, shared_db_[look.band] + shared_db_[look.gear] + stops_db_[look.stop]);
      stop_slope_[look.stop] += found.slope;
      stop_curvature_[look.stop] += found.information;
      for (const std::size_t i : {look.band, look.gear}) {
        shared_slope_[i] += found.slope;
        between_[look.stop * count + i] += found.information;
        for (const std::size_t j : {look.band, look.gear}) curvature(i, j) += found.information;
      }
    }
    for (std::size_t stop = 0; stop < stops_db_.size(); ++stop) {
      const std::vector<double> share = pull(stop);
      for (std::size_t i = 0; i < count; ++i) {
        for (std::size_t j = 0; j < count; ++j) {
          curvature(i, j) -= share[i] * between_[stop * count + j];
        }
        shared_slope_[i] -= share[i] * stop_slope_[stop];
      }
    }
    covariance_db2_ = curvature.inverse();
  }

  std::vector<double> pull(std::size_t stop) const {
    const std::size_t count = shared_db_.size();
    std::vector<double> result(count);
    for (std::size_t i = 0; i < count; ++i) {
      result[i] = between_[stop * count + i] / stop_curvature_[stop];
    }
    return result;
  }

  // One step uphill, shortened until the likelihood rises. False at the top.
  bool step(double& height) {
    const std::size_t count = shared_db_.size();
    std::vector<double> shared_step(count, 0.0), stop_step(stops_db_.size(), 0.0);
    for (std::size_t i = 0; i < count; ++i) {
      for (std::size_t j = 0; j < count; ++j) {
        shared_step[i] += covariance_db2_[i * count + j] * shared_slope_[j];
      }
    }
    for (std::size_t stop = 0; stop < stops_db_.size(); ++stop) {
      double slope = stop_slope_[stop];
      for (std::size_t i = 0; i < count; ++i) slope -= between_[stop * count + i] * shared_step[i];
      stop_step[stop] = slope / stop_curvature_[stop];
    }
    constexpr double kShortest = 1.0 / 1024.0;
    for (double length = 1.0; length >= kShortest; length /= 2.0) {
      auto shared_db = shared_db_;
      auto stops_db = stops_db_;
      for (std::size_t i = 0; i < count; ++i) shared_db[i] += length * shared_step[i];
      for (std::size_t i = 0; i < stops_db.size(); ++i) stops_db[i] += length * stop_step[i];
      const double reached = log_posterior(shared_db, stops_db);
      if (!(reached > height)) continue;
      constexpr double kNoClimb = 1e-9;
      const bool worth = reached > height + kNoClimb;
      shared_db_ = std::move(shared_db);
      stops_db_ = std::move(stops_db);
      height = reached;
      return worth;
    }
    return false;
  }

  std::span<const Look> looks_;
  std::span<const double> prior_db_;
  std::vector<double> shared_db_, stops_db_;
  std::vector<double> shared_slope_ = {};  // after elimination of the stops' part
  std::vector<double> stop_slope_ = {};
  std::vector<double> stop_curvature_ = {};
  // Curvature between stops and shared effects, one row per stop.
  std::vector<double> between_ = {};
  std::vector<double> covariance_db2_ = {};
};

}  // namespace

double Effects::variance_db2(std::span<const std::size_t> shared, const StopEffect* stop) const {
  const std::size_t count = shared_db.size();
  std::vector<double> weights(count, 0.0);
  for (const std::size_t place : shared) weights[place] += 1.0;
  double variance = 0.0;
  if (stop != nullptr) {
    variance = stop->own_variance_db2;
    for (std::size_t i = 0; i < count; ++i) weights[i] -= stop->pull[i];
  }
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j < count; ++j) {
      variance += weights[i] * covariance_db2[i * count + j] * weights[j];
    }
  }
  return variance;
}

Effects estimate(std::span<const Look> looks, std::span<const double> prior_db,
                 std::size_t stop_count) {
  return Climb(looks, prior_db, stop_count).run();
}

}  // namespace mastwise::learning
