#include "core/sweep/sweep_posterior.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace mastwise::aim {
namespace {

constexpr float kNever = -1e30F;
// The antenna on the roof is not quite its nominal pattern, and gusts are not normal noise, so full
// weight of the evidence is too sure of itself [coarsened posterior: Miller and Dunson, Journal of
// the American Statistical Association 114 (2019), 1113-1125; the values are by simulation, see
// foreign_sweeps_test.cpp and live_coverage_test.cpp].
constexpr double kCoarse = 0.8;
// A reading near another sees the antenna's deviation from its pattern once more, so it counts
// less.
constexpr double kRepeated = 0.2, kNearDeg = 6.0, kMostNearDeg = 8.0, kNearBeams = 0.115;
constexpr double kOutsideSweep = -2.302;  // log(1/10)
constexpr double kFallOffDeg = 15.0;
constexpr double kFinestSteps = 12.0;
constexpr double kNegligible = 1e-5;  // of the probability

std::size_t distinct(const std::vector<double>& headings_deg, double near_deg) {
  std::vector<double> kept;
  for (const double heading_deg : headings_deg) {
    const bool known = std::any_of(kept.begin(), kept.end(), [&](double one) {
      return std::fabs(fold_half_circle_deg(heading_deg - one)) < near_deg;
    });
    if (!known) kept.push_back(heading_deg);
  }
  return kept.size();
}

float evidence_of(const SweepData& data, double beamwidth_deg) {
  std::vector<double> headings_deg;
  for (const auto& one : data.exact) headings_deg.push_back(one.heading_deg);
  for (const auto& one : data.censored) headings_deg.push_back(one.heading_deg);
  const double near_deg = std::clamp(kNearBeams * beamwidth_deg, kNearDeg, kMostNearDeg);
  const double share = static_cast<double>(distinct(headings_deg, near_deg)) /
                       static_cast<double>(headings_deg.size());
  return static_cast<float>(kCoarse * (share + kRepeated * (1.0 - share)));
}

}  // namespace

SweepPosterior::SweepPosterior(const SweepFitter& fitter, const SweepData& data)
    : fitter_(fitter),
      data_(data),
      period_deg_(static_cast<double>(fitter.combs_) * kCombStepDeg),
      evidence_(evidence_of(data, fitter.beamwidth_deg_)),
      arrival_masses_(fitter.arrivals_.size(), 1.0) {
  search({.first_deg = 0.0, .count = fitter.combs_, .steps = 1});
  const double sigma_deg = std::sqrt(mean_square_deg2());
  if (sigma_deg < kCombStepDeg) search(around_the_peak(sigma_deg));
}

double SweepPosterior::off_deg(double to_deg, double from_deg) const {
  return std::remainder(to_deg - from_deg, period_deg_);
}

float* SweepPosterior::row(std::size_t shift, std::size_t arrival) {
  return masses_.data() + (shift * fitter_.arrivals_.size() + arrival) * padded_;
}

const float* SweepPosterior::row(std::size_t shift, std::size_t arrival) const {
  return masses_.data() + (shift * fitter_.arrivals_.size() + arrival) * padded_;
}

double SweepPosterior::peak_of(std::size_t shift, std::size_t tooth) const {
  const double part = static_cast<double>(shift) / static_cast<double>(stretch_.steps);
  return stretch_.first_deg + kCombStepDeg * (static_cast<double>(tooth) + part);
}

void SweepPosterior::search(const Stretch& stretch) {
  stretch_ = stretch;
  cell_deg_ = kCombStepDeg / static_cast<double>(stretch.steps);
  padded_ = (stretch.count + kLanes - 1) / kLanes * kLanes;
  masses_.assign(stretch.steps * fitter_.arrivals_.size() * padded_, kNever);
  for (std::size_t shift = 0; shift < stretch.steps; ++shift) {
    look_up(lookups_, data_, peak_of(shift, 0));
    for (std::size_t arrival = 0; arrival < fitter_.arrivals_.size(); ++arrival) {
      if (arrival_masses_[arrival] > kNegligible) score(shift, arrival);
    }
  }
  normalize();
  settle_peak();
}

// The teeth with remaining probability plus one more at each end, as fine as the peak is sharp.
SweepPosterior::Stretch SweepPosterior::around_the_peak(double sigma_deg) const {
  double least = 0.0, most = 0.0;
  for (const Place& place : places_) {
    if (place.mass < kNegligible) continue;
    least = std::min(least, off_deg(place.peak_deg, peak_deg_));
    most = std::max(most, off_deg(place.peak_deg, peak_deg_));
  }
  const auto teeth = static_cast<std::size_t>(std::ceil((most - least) / kCombStepDeg)) + 3;
  const double steps = std::ceil(kCombStepDeg / std::max(sigma_deg, kCombStepDeg / kFinestSteps));
  return {.first_deg = peak_deg_ + least - kCombStepDeg,
          .count = std::min(teeth, fitter_.combs_),
          .steps = static_cast<std::size_t>(std::max(steps, 2.0))};
}

void SweepPosterior::score(std::size_t shift, std::size_t arrival) {
  const float* table = fitter_.arrivals_[arrival].response_db.data();
  const float log_prior = fitter_.arrivals_[arrival].log_prior;
  float* scores = row(shift, arrival);
  LevelFit fit;
  for (std::size_t tooth = 0; tooth < padded_; tooth += kLanes) {
    fit_level(fit, data_, lookups_, table + tooth);
    for (std::size_t i = 0; i < kLanes; ++i)
      scores[tooth + i] = log_prior + evidence_ * fit.log_evidence[i];
  }
}

void SweepPosterior::normalize() {
  places_.assign(stretch_.count * stretch_.steps, {});
  std::vector<float> prior(stretch_.steps * padded_, kNever);
  for (std::size_t i = 0; i < places_.size(); ++i) {
    const std::size_t shift = i % stretch_.steps, tooth = i / stretch_.steps;
    places_[i].peak_deg = peak_of(shift, tooth);
    prior[shift * padded_ + tooth] = static_cast<float>(log_prior(places_[i].peak_deg));
  }
  Lanes bests;
  bests.fill(kNever);
  for (std::size_t shift = 0; shift < stretch_.steps; ++shift) {
    for (std::size_t arrival = 0; arrival < arrival_masses_.size(); ++arrival) {
      float* scores = row(shift, arrival);
      for (std::size_t tooth = 0; tooth < padded_; tooth += kLanes) {
        for (std::size_t i = 0; i < kLanes; ++i) {
          const float score = scores[tooth + i] + prior[shift * padded_ + tooth + i];
          scores[tooth + i] = score;
          bests[i] = bests[i] < score ? score : bests[i];
        }
      }
    }
  }
  const float best = *std::max_element(bests.begin(), bests.end());
  std::fill(arrival_masses_.begin(), arrival_masses_.end(), 0.0);
  std::vector<float> by_tooth(padded_);
  for (std::size_t shift = 0; shift < stretch_.steps; ++shift) {
    std::fill(by_tooth.begin(), by_tooth.end(), 0.0F);
    for (std::size_t arrival = 0; arrival < arrival_masses_.size(); ++arrival) {
      float* scores = row(shift, arrival);
      Lanes masses = {};
      for (std::size_t tooth = 0; tooth < padded_; tooth += kLanes) {
        for (std::size_t i = 0; i < kLanes; ++i) {
          const float mass = lane_exp(scores[tooth + i] - best);
          scores[tooth + i] = mass;
          by_tooth[tooth + i] += mass;
          masses[i] += mass;
        }
      }
      for (const float mass : masses) arrival_masses_[arrival] += static_cast<double>(mass);
    }
    for (std::size_t tooth = 0; tooth < stretch_.count; ++tooth) {
      places_[tooth * stretch_.steps + shift].mass = static_cast<double>(by_tooth[tooth]);
    }
  }
  const double sum = std::accumulate(arrival_masses_.begin(), arrival_masses_.end(), 0.0);
  for (Place& place : places_) place.mass /= sum;
  for (double& mass : arrival_masses_) mass /= sum;
}

std::vector<SweepPosterior::Point> SweepPosterior::points() const {
  std::vector<Point> points;
  for (std::size_t shift = 0; shift < stretch_.steps; ++shift) {
    for (std::size_t arrival = 0; arrival < arrival_masses_.size(); ++arrival) {
      for (std::size_t tooth = 0; tooth < stretch_.count; ++tooth) {
        points.push_back({peak_of(shift, tooth), arrival, row(shift, arrival)[tooth]});
      }
    }
  }
  return points;
}

std::vector<SweepPosterior::Point> SweepPosterior::samples(std::size_t count) const {
  std::vector<Point> all = points();
  std::stable_sort(all.begin(), all.end(),
                   [](const Point& a, const Point& b) { return a.peak_deg < b.peak_deg; });
  double whole = 0.0;
  for (const Point& point : all) whole += static_cast<double>(point.mass);
  const double step = whole / static_cast<double>(count);
  std::vector<Point> chosen;
  double passed = 0.0;
  for (const Point& point : all) {
    passed += static_cast<double>(point.mass);
    const double next = (static_cast<double>(chosen.size()) + 0.5) * step;
    for (double mark = next; mark < passed && chosen.size() < count; mark += step) {
      chosen.push_back(point);
    }
  }
  return chosen;
}

SweepPosterior::Point SweepPosterior::likeliest() const {
  const auto best =
      static_cast<std::size_t>(std::max_element(masses_.begin(), masses_.end()) - masses_.begin());
  const std::size_t arrival = best / padded_ % arrival_masses_.size();
  const std::size_t shift = best / padded_ / arrival_masses_.size();
  return {peak_of(shift, best % padded_), arrival, masses_[best]};
}

LevelFit SweepPosterior::level_at(const Point& point) const {
  SweepLookups lookups;
  look_up(lookups, data_, point.peak_deg);
  LevelFit fit;
  fit_level(fit, data_, lookups, fitter_.arrivals_[point.arrival].response_db.data());
  return fit;
}

double SweepPosterior::response_db(const Point& point, double heading_deg) const {
  const float* table = fitter_.arrivals_[point.arrival].response_db.data();
  return static_cast<double>(look_up(point.peak_deg, heading_deg).response_db(table, 0));
}

// Falls off over some degrees, so that the grid's position does not matter.
double SweepPosterior::log_prior(double peak_deg) const {
  const double middle = data_.arc_start_deg + data_.arc_deg / 2.0;
  const double half_width = (data_.arc_deg + fitter_.beamwidth_deg_) / 2.0;
  const double beyond = std::fabs(off_deg(peak_deg, middle)) - half_width;
  return kOutsideSweep * std::clamp(beyond / kFallOffDeg, 0.0, 1.0);
}

void SweepPosterior::settle_peak() {
  constexpr int kRounds = 20;
  // Wider, and another cluster behind would pull the mean to one side.
  const double heap_deg = std::clamp(fitter_.beamwidth_deg_, 60.0, 90.0);
  const auto likeliest =
      std::max_element(places_.begin(), places_.end(),
                       [](const Place& a, const Place& b) { return a.mass < b.mass; });
  peak_deg_ = likeliest->peak_deg;
  for (int round = 0; round < kRounds; ++round) {
    double sum = 0.0, mass = 0.0;
    for (const Place& place : places_) {
      const double off = off_deg(place.peak_deg, peak_deg_);
      const double cell_inside = (heap_deg - std::fabs(off)) / cell_deg_ + 0.5;
      const double part = place.mass * std::clamp(cell_inside, 0.0, 1.0);
      sum += part * off;
      mass += part;
    }
    peak_deg_ += sum / mass;
    if (std::fabs(sum / mass) < 0.005) break;
  }
}

double SweepPosterior::mean_square_deg2() const {
  double sum = cell_deg_ * cell_deg_ / 12.0;
  for (const Place& place : places_) {
    const double off = off_deg(place.peak_deg, peak_deg_);
    sum += place.mass * off * off;
  }
  return sum;
}

double SweepPosterior::half_width_deg(double probability) const {
  std::vector<Place> around;
  for (const Place& place : places_) {
    if (place.mass > 0.0) around.push_back({off_deg(place.peak_deg, peak_deg_), place.mass});
  }
  double inside = 0.0, outside = period_deg_ / 2.0;
  while (outside - inside > 0.02) {
    const double half_width = (inside + outside) / 2.0;
    double mass = 0.0;
    for (const auto& [off, part] : around) {
      const double from = std::max(off - cell_deg_ / 2.0, -half_width);
      const double to = std::min(off + cell_deg_ / 2.0, half_width);
      mass += part * std::max(to - from, 0.0) / cell_deg_;
    }
    (mass < probability ? inside : outside) = half_width;
  }
  return outside;
}

}  // namespace mastwise::aim
