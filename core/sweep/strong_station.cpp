#include "core/sweep/strong_station.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <fmt/format.h>

namespace mastwise::aim {
namespace {

constexpr double kPlausibleDeg = 20.0;
constexpr double kContradictionSigmas = 3.0;

// A weighted mean of turns, relative to the first.
struct Mean {
  double off_deg = 0.0;
  double weight = 0.0;
  void add(double deg, double variance) {
    const double more = weight + 1.0 / variance;
    off_deg += (deg - off_deg) / (variance * more);
    weight = more;
  }
};

// The station that differs most from the mean of the others, in sigmas of the difference.
std::optional<std::size_t> contradiction(const std::vector<double>& off_deg,
                                         const std::vector<double>& variance) {
  std::optional<std::size_t> worst;
  double most = kContradictionSigmas;
  for (std::size_t i = 0; i < off_deg.size() && off_deg.size() > 1; ++i) {
    Mean others;
    for (std::size_t j = 0; j < off_deg.size(); ++j) {
      if (j != i) others.add(off_deg[j], variance[j]);
    }
    const double sigmas =
        std::fabs(off_deg[i] - others.off_deg) / std::sqrt(variance[i] + 1.0 / others.weight);
    if (sigmas <= most) continue;
    most = sigmas;
    worst = i;
  }
  return worst;
}

}  // namespace

Result<DialCorrection> dial_correction(std::span<const StrongStation> stations, Turn expected) {
  if (stations.empty()) {
    return Error{.what = "no strong station to compare with",
                 .remedy = "peak on a station whose position is known"};
  }
  const auto difference = [](const StrongStation& station) {
    return Turn::clockwise_deg(station.bearing.degrees() - station.peak.degrees());
  };
  const Turn first = difference(stations.front());
  std::vector<double> off_deg, variance;
  Mean mean;
  double dial_sigma_deg = 0.0;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const StrongStation& one = stations[i];
    const double least = std::min({one.bearing_sigma_deg, one.peak_sigma_deg, one.dial_sigma_deg});
    variance.push_back(one.bearing_sigma_deg * one.bearing_sigma_deg +
                       one.peak_sigma_deg * one.peak_sigma_deg +
                       one.dial_sigma_deg * one.dial_sigma_deg);
    if (!(least >= 0.0 && variance.back() > 0.0 && std::isfinite(variance.back()))) {
      return Error{.what = "the errors of a strong station are unknown",
                   .where = fmt::format("station {}", i + 1),
                   .remedy = "give sigmas of 0 or more degrees, not all of them 0"};
    }
    off_deg.push_back(
        fold_half_circle_deg(difference(one).clockwise_deg() - first.clockwise_deg()));
    mean.add(off_deg.back(), variance.back());
    dial_sigma_deg = std::max(dial_sigma_deg, one.dial_sigma_deg);
  }

  double chi_square = 0.0;
  for (std::size_t i = 0; i < off_deg.size(); ++i) {
    chi_square += (off_deg[i] - mean.off_deg) * (off_deg[i] - mean.off_deg) / variance[i];
  }
  const double freedom = std::max(static_cast<double>(off_deg.size()) - 1.0, 1.0);
  const double widened = std::max(std::sqrt(chi_square / freedom), 1.0);
  const Turn turn = Turn::clockwise_deg(first.clockwise_deg() + mean.off_deg);
  const Turn beyond = Turn::clockwise_deg(turn.clockwise_deg() - expected.clockwise_deg());
  return DialCorrection{.turn = turn,
                        .sigma_deg = widened / std::sqrt(mean.weight),
                        .dial_sigma_deg = dial_sigma_deg,
                        .implausible = beyond.size_deg() > kPlausibleDeg,
                        .contradicts = contradiction(off_deg, variance)};
}

std::optional<DialCheck> check_dial(std::span<const StrongStation> stations, Turn expected) {
  if (stations.empty()) return std::nullopt;
  DialCheck check{.stations = stations.size()};
  const auto correction = dial_correction(stations, expected);
  if (!correction) {
    check.refused = correction.error();
    return check;
  }
  check.correction = *correction;
  check.off = Turn::clockwise_deg(correction->turn.clockwise_deg() - expected.clockwise_deg());
  return check;
}

CorrectedBearing to_true(Bearing<Dial> heading, const DialCorrection& correction) {
  return {Bearing<True>::degrees(heading.degrees() + correction.turn.clockwise_deg()),
          std::hypot(correction.sigma_deg, correction.dial_sigma_deg)};
}

Bearing<Dial> to_dial(Bearing<True> bearing, const DialCorrection& correction) {
  return Bearing<Dial>::degrees(bearing.degrees() - correction.turn.clockwise_deg());
}

}  // namespace mastwise::aim
