#include "core/headings/deviation_card.hpp"

#include "core/inverse.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace mastwise {
namespace {

constexpr std::size_t kTerms = DeviationCard::kTerms;
using TermRow = std::array<double, kTerms>;
using TermMatrix = SquareMatrix<kTerms>;

constexpr double kCardRadian = std::numbers::pi / 180.0;
constexpr double kFullCircle_deg = 360.0;

TermRow terms_at(Bearing<Magnetic> read) {
  const double r = read.degrees() * kCardRadian;
  return {1.0, std::sin(r), std::cos(r), std::sin(2.0 * r), std::cos(2.0 * r)};
}

double product(const TermRow& a, const TermRow& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < kTerms; ++i) sum += a[i] * b[i];
  return sum;
}

// The circular mean, from which the deviations are counted, as a sensor may be mounted at any
// angle.
double middle_deg(std::span<const DrivenStretch> stretches) {
  double east = 0.0, north = 0.0;
  for (const DrivenStretch& one : stretches) {
    east += std::sin(one.deviation_deg * kCardRadian);
    north += std::cos(one.deviation_deg * kCardRadian);
  }
  return std::atan2(east, north) / kCardRadian;
}

struct Fitted {
  TermRow terms;
  TermMatrix covariance;
};

std::optional<Fitted> fit_terms(const std::vector<DrivenStretch>& stretches, double from_deg) {
  TermMatrix normal{};
  TermRow right{};
  for (const DrivenStretch& one : stretches) {
    const TermRow row = terms_at(one.read);
    const double weight = 1.0 / (one.sigma_deg * one.sigma_deg);
    const double value_deg = fold_half_circle_deg(one.deviation_deg - from_deg);
    for (std::size_t i = 0; i < kTerms; ++i) {
      right[i] += weight * row[i] * value_deg;
      for (std::size_t k = 0; k < kTerms; ++k) normal[i][k] += weight * row[i] * row[k];
    }
  }
  const auto covariance = inverse(normal, 1e-9 * normal[0][0]);
  if (!covariance) return std::nullopt;
  Fitted fitted{.terms = {}, .covariance = *covariance};
  for (std::size_t i = 0; i < kTerms; ++i) fitted.terms[i] = product((*covariance)[i], right);
  fitted.terms[0] += from_deg;
  return fitted;
}

double miss_deg(const TermRow& terms, const DrivenStretch& stretch) {
  return fold_half_circle_deg(stretch.deviation_deg - product(terms, terms_at(stretch.read)));
}

// Square of the miss over its sigma, summed, by degrees of freedom, but at least 1.
double excess(const TermRow& terms, const std::vector<DrivenStretch>& stretches) {
  double sum = 0.0;
  for (const DrivenStretch& one : stretches) {
    sum += std::pow(miss_deg(terms, one) / one.sigma_deg, 2);
  }
  return std::max(1.0, sum / static_cast<double>(stretches.size() - kTerms));
}

// The stretch that misses by most, if by more than four sigmas of what the others say.
std::optional<std::size_t> worst_outlier(const std::vector<DrivenStretch>& stretches,
                                         double from_deg) {
  constexpr double kGross_sigmas = 4.0;
  const auto fitted = fit_terms(stretches, from_deg);
  if (!fitted) return std::nullopt;
  std::size_t worst = 0;
  for (std::size_t i = 1; i < stretches.size(); ++i) {
    const auto size = [&](std::size_t k) {
      return std::fabs(miss_deg(fitted->terms, stretches[k])) / stretches[k].sigma_deg;
    };
    if (size(i) > size(worst)) worst = i;
  }
  std::vector<DrivenStretch> others = stretches;
  others.erase(others.begin() + static_cast<std::ptrdiff_t>(worst));
  const auto without = fit_terms(others, from_deg);
  if (!without) return std::nullopt;
  const TermRow row = terms_at(stretches[worst].read);
  TermRow spread{};
  for (std::size_t i = 0; i < kTerms; ++i) spread[i] = product(without->covariance[i], row);
  const double variance = excess(without->terms, others) *
                          (product(spread, row) + std::pow(stretches[worst].sigma_deg, 2));
  const double off_deg = miss_deg(without->terms, stretches[worst]);
  if (off_deg * off_deg <= kGross_sigmas * kGross_sigmas * variance) return std::nullopt;
  return worst;
}

double sigma_of_fit_deg(const DeviationCard& card, Bearing<Magnetic> read) {
  const TermRow row = terms_at(read);
  TermRow spread{};
  for (std::size_t i = 0; i < kTerms; ++i) spread[i] = product(card.covariance[i], row);
  return std::sqrt(std::max(0.0, product(spread, row)));
}

double sigma_of_place_deg(const DeviationCard& card, double horizontal_nt) {
  const double semicircular_deg =
      std::hypot(card.terms_deg[1], card.terms_deg[2]) / std::numbers::sqrt2;
  return semicircular_deg * std::fabs(card.horizontal_nt / horizontal_nt - 1.0);
}

double sigma_of_age_deg(const DeviationCard& card, UtcTime now) {
  using Years = std::chrono::duration<double, std::chrono::years::period>;
  return kAging_deg_per_year * std::max(0.0, Years(now - card.newest).count());
}

// The largest over the circle.
template <class Sigma>
double worst_deg(Sigma sigma) {
  constexpr int kStep_deg = 15;
  double worst = 0.0;
  for (int degrees = 0; degrees < static_cast<int>(kFullCircle_deg); degrees += kStep_deg) {
    worst = std::max(worst, sigma(Bearing<Magnetic>::degrees(degrees)));
  }
  return worst;
}

bool covers_circle(const DeviationCard& card) {
  return card.eighths_seen() >= kEighths && worst_deg([&](Bearing<Magnetic> read) {
                                              return sigma_of_fit_deg(card, read);
                                            }) <= kUsable_deg;
}

std::size_t sector_of(const DrivenStretch& stretch) {
  return static_cast<std::size_t>(stretch.read.degrees() / kSector_deg);
}

// Whether iron has moved between the older stretches and the newest kChangedStretches.
bool changed(std::span<const DrivenStretch> stretches) {
  if (stretches.size() < kFewestStretches + kChangedStretches) return false;
  constexpr double kSigmas = 3.0;
  const auto card = fit_deviation(stretches.first(stretches.size() - kChangedStretches));
  if (!card || !covers_circle(*card)) return false;
  const auto newest = stretches.last(kChangedStretches);
  return std::all_of(newest.begin(), newest.end(), [&](const DrivenStretch& one) {
    const double sigma_deg =
        std::hypot(sigma_of_fit_deg(*card, one.read), card->scatter_deg, one.sigma_deg);
    return std::fabs(miss_deg(card->terms_deg, one)) > kSigmas * sigma_deg;
  });
}

}  // namespace

bool add_stretch(std::vector<DrivenStretch>& stretches, const DrivenStretch& fresh) {
  stretches.push_back(fresh);
  if (changed(stretches)) {
    stretches.erase(stretches.begin(),
                    stretches.end() - static_cast<std::ptrdiff_t>(kChangedStretches));
    return true;
  }
  const auto same = [&](const DrivenStretch& one) { return sector_of(one) == sector_of(fresh); };
  const auto count = std::count_if(stretches.begin(), stretches.end(), same);
  if (static_cast<std::size_t>(count) > kStretchesPerSector) {
    stretches.erase(std::find_if(stretches.begin(), stretches.end(), same));
  }
  return false;
}

Turn DeviationCard::deviation(Bearing<Magnetic> read) const {
  return Turn::clockwise_deg(product(terms_deg, terms_at(read)));
}

std::size_t DeviationCard::eighths_seen() const {
  return static_cast<std::size_t>(std::count(seen.begin(), seen.end(), true));
}

std::optional<DeviationCard> fit_deviation(std::span<const DrivenStretch> stretches) {
  if (stretches.size() < kFewestStretches) return std::nullopt;
  const double from_deg = middle_deg(stretches);
  std::vector<DrivenStretch> counted(stretches.begin(), stretches.end());
  const std::size_t fewest = std::max(kFewestStretches, stretches.size() - stretches.size() / 4);
  while (counted.size() > fewest) {
    const auto outlier = worst_outlier(counted, from_deg);
    if (!outlier) break;
    counted.erase(counted.begin() + static_cast<std::ptrdiff_t>(*outlier));
  }
  const auto fitted = fit_terms(counted, from_deg);
  if (!fitted) return std::nullopt;
  DeviationCard card{.terms_deg = fitted->terms,
                     .covariance = fitted->covariance,
                     .stretches = counted.size(),
                     .left_out = stretches.size() - counted.size()};
  const double scale = excess(fitted->terms, counted);
  for (TermRow& row : card.covariance) {
    for (double& one : row) one *= scale;
  }
  double squares = 0.0;
  for (const DrivenStretch& one : counted) {
    squares += std::pow(miss_deg(card.terms_deg, one), 2);
    card.horizontal_nt += one.horizontal_nt / static_cast<double>(counted.size());
    card.newest = std::max(card.newest, one.at);
    const double eighths = std::round(one.read.degrees() / 45.0);
    card.seen[static_cast<std::size_t>(eighths) % card.seen.size()] = true;
  }
  card.scatter_deg = std::sqrt(squares / static_cast<double>(counted.size() - kTerms));
  return card;
}

double deviation_sigma_deg(const DeviationCard& card, Bearing<Magnetic> read, double horizontal_nt,
                           UtcTime now) {
  return std::hypot(sigma_of_fit_deg(card, read), sigma_of_place_deg(card, horizontal_nt),
                    sigma_of_age_deg(card, now));
}

CardState state_of(const std::optional<DeviationCard>& card, double horizontal_nt, UtcTime now) {
  if (!card || !covers_circle(*card)) return CardState::learning;
  const double worst = worst_deg(
      [&](Bearing<Magnetic> read) { return deviation_sigma_deg(*card, read, horizontal_nt, now); });
  if (worst <= kUsable_deg) return CardState::holds;
  return sigma_of_place_deg(*card, horizontal_nt) > sigma_of_age_deg(*card, now)
             ? CardState::too_far
             : CardState::too_old;
}

std::optional<SensorDeviation> deviation_at(const std::optional<DeviationCard>& card,
                                            Bearing<Magnetic> read, double horizontal_nt,
                                            UtcTime now) {
  if (state_of(card, horizontal_nt, now) != CardState::holds) return std::nullopt;
  return SensorDeviation{.turn = card->deviation(read),
                         .sigma_deg = deviation_sigma_deg(*card, read, horizontal_nt, now),
                         .reading_deg = card->scatter_deg};
}

}  // namespace mastwise
