#pragma once

#include "core/sweep/sweep_data.hpp"
#include "core/sweep/sweep_lanes.hpp"

#include <vector>

namespace mastwise::aim {

// What the readings say of level, slope and noise where the peak and the way of arrival are given,
// for neighboring peaks: a normal-inverse-gamma posterior, in the units of SweepData.
struct LevelFit {
  Lanes level, slope;  // slope 1: the typical one
  Lanes level_variance, covariance, slope_variance;
  Lanes noise_variance;
  Lanes log_evidence;
};

// Where the readings' responses stand in a table, for the peak of the first lane.
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

// The censored readings come in one after another, each as its probability and with the moments of
// level and slope that it leaves (assumed-density filtering; the probit form of Tobin 1958). A
// slope below zero counts against the evidence by the squares of its sigmas, which bounds its
// probability of being positive.
void fit_level(LevelFit& fit, const SweepData& data, const SweepLookups& lookups,
               const float* table);

}  // namespace mastwise::aim
