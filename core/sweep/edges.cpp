#include "core/sweep/edges.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace mastwise::aim {
namespace {

constexpr double kFarthestApartDeg = 90.0;
constexpr std::size_t kLeastForScatter = 3;

double clockwise_deg(Bearing<Dial> from, Bearing<Dial> to) {
  return fold_circle_deg(to.degrees() - from.degrees());
}

}  // namespace

Result<EdgeMiddle> middle_of_edges(std::span<const Edges> pairs,
                                   std::optional<Bearing<Dial>> with_picture,
                                   double edge_sigma_deg) {
  if (pairs.empty()) {
    return Error{.what = "no edges yet",
                 .remedy = "turn until the picture fails, to the left and to the right"};
  }
  std::vector<Bearing<Dial>> middles;
  double width_sum_deg = 0.0;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    auto [left, right] = pairs[i];
    if (left == right) {
      return Error{.what = "both edges are at the same heading",
                   .where = fmt::format("pair {}", i + 1),
                   .remedy = "note where the picture fails on each side"};
    }
    if (with_picture && clockwise_deg(left, *with_picture) > clockwise_deg(left, right)) {
      std::swap(left, right);
    }
    const double width_deg = clockwise_deg(left, right);
    width_sum_deg += width_deg;
    middles.push_back(Bearing<Dial>::degrees(left.degrees() + width_deg / 2.0));
  }

  const auto count = static_cast<double>(pairs.size());
  double sum_deg = 0.0, square_sum = 0.0;
  for (const Bearing<Dial> middle : middles) {
    const Turn off = middle - middles.front();
    if (off.size_deg() > kFarthestApartDeg) {
      return Error{.what = fmt::format("the pairs disagree: middles at {:.0f} and {:.0f} degrees",
                                       middles.front().degrees(), middle.degrees()),
                   .remedy = "check left and right, or note a heading with a picture"};
    }
    sum_deg += off.clockwise_deg();
    square_sum += off.clockwise_deg() * off.clockwise_deg();
  }
  const double mean_deg = sum_deg / count;
  double sigma_deg = edge_sigma_deg / std::sqrt(2.0 * count);
  if (pairs.size() >= kLeastForScatter) {
    const double variance = (square_sum - count * mean_deg * mean_deg) / (count - 1.0);
    sigma_deg = std::max(sigma_deg, std::sqrt(std::max(variance, 0.0) / count));
  }
  return EdgeMiddle{.middle = middles.front() + Turn::clockwise_deg(mean_deg),
                    .sigma_deg = sigma_deg,
                    .width_deg = width_sum_deg / count};
}

}  // namespace mastwise::aim
