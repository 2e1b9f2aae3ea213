#include "core/plan/slack.hpp"

#include <algorithm>
#include <cstddef>

namespace mastwise {
namespace {

constexpr std::size_t kCircle = reception::ChanceCurve::kHeadings;
constexpr double kTouch_deg = 1e-9;

// Where the straight line between two values, one on either side of the floor, crosses it, in
// degrees from the first; exact if one value equals the floor.
double crossing_deg(double from, double to, double floor) {
  return (floor - from) / (to - from);
}

}  // namespace

std::vector<HeadingArc> arcs_above(const reception::ChanceCurve::Values& values, double floor) {
  const auto above = [&](std::size_t h) { return values[h % kCircle] >= floor; };
  std::size_t below = 0;
  while (below < kCircle && above(below)) ++below;
  if (below == kCircle) return {{.from = {}, .length_deg = 360.0}};
  std::vector<HeadingArc> arcs;
  // Starts at a heading below the floor, so that no arc is split.
  for (std::size_t h = below + 1; h < below + kCircle; ++h) {
    if (!above(h)) continue;
    const double from_deg = static_cast<double>(h - 1) +
                            crossing_deg(values[(h - 1) % kCircle], values[h % kCircle], floor);
    while (above(h + 1)) ++h;
    const double to_deg = static_cast<double>(h) +
                          crossing_deg(values[h % kCircle], values[(h + 1) % kCircle], floor);
    arcs.push_back({Bearing<True>::degrees(from_deg), to_deg - from_deg});
  }
  std::sort(arcs.begin(), arcs.end(), [](const HeadingArc& a, const HeadingArc& b) {
    return a.from.degrees() < b.from.degrees();
  });
  return arcs;
}

std::optional<Slack> slack_within(const std::vector<HeadingArc>& arcs, Bearing<True> heading) {
  for (const HeadingArc& arc : arcs) {
    if (arc.all_round()) return Slack{180.0, 180.0};
    double into_deg = fold_circle_deg(heading.degrees() - arc.from.degrees());
    if (into_deg > 360.0 - kTouch_deg) into_deg = 0.0;
    if (into_deg > arc.length_deg + kTouch_deg) continue;
    return Slack{into_deg, std::max(0.0, arc.length_deg - into_deg)};
  }
  return std::nullopt;
}

std::optional<Slack> slack(const reception::ChanceCurve& curve, Bearing<True> heading,
                           double floor_percent) {
  return slack_within(arcs_above(curve.assured_percent(), floor_percent), heading);
}

Bearing<True> best_heading(const reception::ChanceCurve& curve) {
  // Identical faces differ only by how the whole degrees sample them.
  constexpr double kAlike_percent = 0.05;
  const double best = curve.best_percent();
  const std::vector<HeadingArc> tops = arcs_above(curve.percent(), best - kAlike_percent);
  const std::vector<HeadingArc> flats = arcs_above(curve.percent(), best - kFlat_percent);
  Bearing<True> nearest = curve.toward();
  double off_deg = 360.0;
  for (const HeadingArc& flat : flats) {
    if (flat.all_round()) return curve.toward();
    const bool top = std::any_of(tops.begin(), tops.end(), [&](const HeadingArc& each) {
      return slack_within({flat}, each.from).has_value();
    });
    const auto middle = Bearing<True>::degrees(flat.from.degrees() + flat.length_deg / 2.0);
    if (!top || (middle - curve.toward()).size_deg() >= off_deg) continue;
    nearest = middle;
    off_deg = (middle - curve.toward()).size_deg();
  }
  return nearest;
}

}  // namespace mastwise
