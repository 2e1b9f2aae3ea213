#pragma once

#include "core/sweep/sweep_data.hpp"
#include "core/sweep/sweep_lanes.hpp"

#include <vector>

namespace mastwise::aim {

// The evidence about level, slope and noise for a given peak and way of arrival, for neighboring
// peaks: a normal-inverse-gamma posterior, in the units of SweepData.
struct LevelFit {
  Lanes level, slope;  // slope 1: the typical one
  Lanes level_variance, covariance, slope_variance;
  Lanes noise_variance;
  Lanes log_evidence;
};

// Positions of the readings' responses in a table, for the peak of the first lane.
struct SweepLookups {
  struct Lookup {
    std::size_t near, next;  // entries of the table
    float part;              // from `near` to `next`
    float response_db(const float* table, std::size_t lane) const {
      return table[near + lane] + part * (table[next + lane] - table[near + lane]);
    }
  };
  std::vector<Lookup> exact = {};
  std::vector<Lookup> censored = {};
};

SweepLookups::Lookup look_up(double peak_deg, double heading_deg);
void look_up(SweepLookups& lookups, const SweepData& data, double peak_deg);

// The censored readings are added one after another, each with its probability and the moments of
// level and slope after it (assumed-density filtering; the probit form of Tobin 1958). A slope
// below zero reduces the evidence by the squares of its sigmas, which bounds its probability of
// being positive.
void fit_level(LevelFit& fit, const SweepData& data, const SweepLookups& lookups,
               const float* table);

}  // namespace mastwise::aim
