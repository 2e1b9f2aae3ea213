#include "core/sweep/sweep_level.hpp"

#include "core/sweep/sweep_grid.hpp"

namespace mastwise::aim {
namespace {

struct Sums {
  Lanes x = {}, xx = {}, xv = {};
};

// Conditions the fit on sign * (level + slope * response + noise - limit) > 0.
void absorb(LevelFit& fit, const Lanes& response_db, float limit, float sign) {
  const LogNormal& normal = LogNormal::table();
  Lanes toward_level, toward_slope, closeness, z, logarithm, slope;
  for (std::size_t i = 0; i < kLanes; ++i) {
    toward_level[i] = fit.level_variance[i] + fit.covariance[i] * response_db[i];
    toward_slope[i] = fit.covariance[i] + fit.slope_variance[i] * response_db[i];
    const float variance =
        fit.noise_variance[i] + toward_level[i] + response_db[i] * toward_slope[i];
    closeness[i] = lane_inverse_root(variance);
    z[i] = sign * (fit.level[i] + fit.slope[i] * response_db[i] - limit) * closeness[i];
  }
  for (std::size_t i = 0; i < kLanes; ++i) {
    const auto value = normal.at(z[i]);
    logarithm[i] = value.logarithm;
    slope[i] = value.slope;
  }
  for (std::size_t i = 0; i < kLanes; ++i) {
    const float shift = sign * slope[i] * closeness[i];
    const float shrink = slope[i] * (slope[i] + z[i]) * closeness[i] * closeness[i];
    fit.log_evidence[i] += logarithm[i];
    fit.level[i] += toward_level[i] * shift;
    fit.slope[i] += toward_slope[i] * shift;
    fit.level_variance[i] -= toward_level[i] * toward_level[i] * shrink;
    fit.covariance[i] -= toward_level[i] * toward_slope[i] * shrink;
    fit.slope_variance[i] -= toward_slope[i] * toward_slope[i] * shrink;
  }
}

void solve(LevelFit& fit, const SweepData& data, const Sums& sums) {
  const float worth = data.noise_worth + data.weight_sum;
  const float prior = data.noise_worth * data.noise_variance;
  const float level_information = data.level_information + data.weight_sum;
  for (std::size_t i = 0; i < kLanes; ++i) {
    const float x = sums.x[i], xx = sums.xx[i], xv = sums.xv[i];
    const float over = data.value_sum - x;  // the remainder after a slope of 1, and its products
    const float over_x = xv - xx;
    const float over_over = data.square_sum - 2.0F * xv + xx;
    const float slope_information = data.slope_information + xx;
    const float determinant = level_information * slope_information - x * x;
    const float level = (slope_information * over - x * over_x) / determinant;
    const float slope = (level_information * over_x - x * over) / determinant;
    const float residual = std::max(over_over - level * over - slope * over_x, 0.0F);
    const float variance = (prior + residual) / worth;
    fit.level[i] = level;
    fit.slope[i] = 1.0F + slope;
    fit.level_variance[i] = variance * slope_information / determinant;
    fit.covariance[i] = -variance * x / determinant;
    fit.slope_variance[i] = variance * level_information / determinant;
    fit.noise_variance[i] = variance;
    fit.log_evidence[i] =
        -0.5F * lane_log(determinant) - 0.5F * worth * lane_log(1.0F + residual / prior);
  }
}

}  // namespace

SweepLookups::Lookup look_up(double peak_deg, double heading_deg) {
  const double behind = fold_circle_deg(peak_deg - heading_deg);
  const auto whole = static_cast<std::size_t>(behind);
  return {table_entry(whole), table_entry(whole + 1),
          static_cast<float>(behind - static_cast<double>(whole))};
}

void look_up(SweepLookups& lookups, const SweepData& data, double peak_deg) {
  lookups.exact.clear();
  lookups.censored.clear();
  for (const auto& reading : data.exact) {
    lookups.exact.push_back(look_up(peak_deg, reading.heading_deg));
  }
  for (const auto& reading : data.censored) {
    lookups.censored.push_back(look_up(peak_deg, reading.heading_deg));
  }
}

void fit_level(LevelFit& fit, const SweepData& data, const SweepLookups& lookups,
               const float* table) {
  Sums sums;
  for (std::size_t j = 0; j < lookups.exact.size(); ++j) {
    const auto lookup = lookups.exact[j];
    const float value = data.exact[j].value;
    const float weight = data.exact[j].weight;
    for (std::size_t i = 0; i < kLanes; ++i) {
      const float x = lookup.response_db(table, i);
      const float weighted = weight * x;
      sums.x[i] += weighted;
      sums.xx[i] += weighted * x;
      sums.xv[i] += weighted * value;
    }
  }
  solve(fit, data, sums);
  for (std::size_t j = 0; j < lookups.censored.size(); ++j) {
    Lanes response_db;
    for (std::size_t i = 0; i < kLanes; ++i) {
      response_db[i] = lookups.censored[j].response_db(table, i);
    }
    const bool above = data.censored[j].side == SweepData::Beyond::above;
    absorb(fit, response_db, data.censored[j].limit, above ? 1.0F : -1.0F);
  }
  for (std::size_t i = 0; i < kLanes; ++i) {
    const float below_zero = std::min(fit.slope[i], 0.0F);
    fit.log_evidence[i] -= 0.5F * below_zero * below_zero / fit.slope_variance[i];
  }
}

}  // namespace mastwise::aim
