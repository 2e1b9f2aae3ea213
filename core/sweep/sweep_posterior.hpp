#pragma once

#include "core/sweep/sweep_data.hpp"
#include "core/sweep/sweep_grid.hpp"
#include "core/sweep/sweep_level.hpp"

#include <vector>

namespace mastwise::aim {

// The probability of every peak and way of arrival, given the readings.
class SweepPosterior {
 public:
  // The total probability of one peak, whose grid cell is cell_deg() wide.
  struct Place {
    double peak_deg = 0.0;
    double mass = 0.0;
  };
  // One peak with one way of arrival.
  struct Point {
    double peak_deg = 0.0;
    std::size_t arrival = 0;
    float mass = 0.0F;
  };

  SweepPosterior(const SweepFitter& fitter, const SweepData& data);

  const std::vector<Place>& places() const { return places_; }
  double cell_deg() const { return cell_deg_; }
  // In the order of the fitter's arrivals.
  const std::vector<double>& arrival_masses() const { return arrival_masses_; }
  // Every point, including those without probability.
  std::vector<Point> points() const;
  Point likeliest() const;
  // Points evenly spaced in probability by their peaks, so that all have equal weight.
  std::vector<Point> samples(std::size_t count) const;

  // The turn from `from_deg` to `to_deg`, less than half the period of the pattern.
  double off_deg(double to_deg, double from_deg) const;

  // The mean of the probability cluster around the likeliest peak.
  double peak_deg() const { return peak_deg_; }
  double mean_square_deg2() const;
  // Half the width of the interval around the peak with that much of the probability.
  double half_width_deg(double probability) const;

  // In the first lane.
  LevelFit level_at(const Point& point) const;
  // The pattern's response at a heading, in dB.
  double response_db(const Point& point, double heading_deg) const;

 private:
  // Neighboring teeth of the comb, each split into `steps`.
  struct Stretch {
    double first_deg = 0.0;
    std::size_t count = 0;
    std::size_t steps = 1;
  };

  void search(const Stretch& stretch);
  Stretch around_the_peak(double sigma_deg) const;
  void score(std::size_t shift, std::size_t arrival);
  void normalize();
  double peak_of(std::size_t shift, std::size_t tooth) const;
  double log_prior(double peak_deg) const;
  void settle_peak();
  float* row(std::size_t shift, std::size_t arrival);
  const float* row(std::size_t shift, std::size_t arrival) const;

  const SweepFitter& fitter_;
  const SweepData& data_;
  double period_deg_;
  float evidence_;  // how much it counts
  double peak_deg_ = 0.0;
  double cell_deg_ = 0.0;
  Stretch stretch_ = {};
  std::size_t padded_ = 0;          // teeth in a row, rounded up to whole lanes
  std::vector<float> masses_ = {};  // by shift, arrival and tooth; first the logarithms
  std::vector<double> arrival_masses_ = {};
  std::vector<Place> places_ = {};
  SweepLookups lookups_ = {};
};

}  // namespace mastwise::aim
