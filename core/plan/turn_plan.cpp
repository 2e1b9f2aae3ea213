#include "core/plan/turn_plan.hpp"

#include "core/plan/heading_choice.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace mastwise {
namespace {

using reception::ChanceCurve;
using Curves = std::span<const std::optional<ChanceCurve>>;

constexpr double kWorthTelling_percent = 1.0;

class Planner {
 public:
  Planner(Curves curves, const TurnPlanRequest& request);
  TurnPlan plan();

 private:
  // The station and heading that the plan relies on for a wish.
  struct Reliance {
    std::size_t station;
    std::size_t heading;
  };

  void sort_out(std::size_t wish);
  Reliance reliance(std::size_t wish) const;
  std::vector<bool> relied_on_at(std::size_t heading) const;
  PlannedHeading described(Bearing<True> bearing, const std::vector<bool>& relied_on) const;
  void turn_again();
  void note_weak();
  void add_relied_on(PlannedHeading& planned, std::size_t station) const;
  void aim_straight(std::size_t heading);
  void put_in_order();

  Curves curves_;
  const TurnPlanRequest& request_;
  std::vector<std::vector<HeadingArc>> arcs_ = {};  // by station
  std::vector<bool> wished_;                        // by station
  std::vector<std::size_t> within_reach_ = {};      // wishes that some heading fulfills
  std::vector<WishCurves> wish_curves_ = {};        // of these
  std::vector<Bearing<True>> headings_ = {};
  std::vector<Reliance> reliances_ = {};  // of these
  TurnPlan plan_ = {};
};

Planner::Planner(Curves curves, const TurnPlanRequest& request)
    : curves_(curves), request_(request), wished_(curves.size(), false) {
  for (const auto& curve : curves_) {
    arcs_.push_back(curve ? arcs_above(curve->percent(), request_.floor_percent)
                          : std::vector<HeadingArc>());
  }
  for (std::size_t wish = 0; wish < request_.wishes.size(); ++wish) sort_out(wish);
}

void Planner::sort_out(std::size_t wish) {
  OutOfPlan nearest{.wish = wish};
  WishCurves reaching;
  for (const std::size_t station : request_.wishes[wish].stations) {
    wished_[station] = true;
    const auto& curve = curves_[station];
    if (!curve) continue;
    if (!arcs_[station].empty()) reaching.push_back(&*curve);
    const double best_percent = curve->best_percent();
    if (nearest.best_percent && *nearest.best_percent >= best_percent) continue;
    nearest.station = station;
    nearest.best_percent = best_percent;
  }
  if (reaching.empty()) {
    plan_.out_of_plan.push_back(nearest);
  } else {
    within_reach_.push_back(wish);
    wish_curves_.push_back(std::move(reaching));
  }
}

Planner::Reliance Planner::reliance(std::size_t wish) const {
  Reliance best{};
  double best_percent = -1.0;
  for (const std::size_t station : request_.wishes[wish].stations) {
    for (std::size_t heading = 0; heading < headings_.size(); ++heading) {
      if (!slack_within(arcs_[station], headings_[heading])) continue;
      const double percent = curves_[station]->percent_at(headings_[heading]);
      if (percent <= best_percent) continue;
      best_percent = percent;
      best = {.station = station, .heading = heading};
    }
  }
  return best;
}

void Planner::add_relied_on(PlannedHeading& planned, std::size_t station) const {
  const ChanceCurve& curve = *curves_[station];
  const Slack own = slack(curve, planned.bearing, request_.floor_percent).value_or(Slack{});
  planned.slack.left_deg = std::min(planned.slack.left_deg, own.left_deg);
  planned.slack.right_deg = std::min(planned.slack.right_deg, own.right_deg);
  const double gain_percent = curve.percent_at(planned.bearing) - curve.percent_at(curve.toward());
  if (curve.avoided() && gain_percent >= kWorthTelling_percent) {
    planned.off_axis_for.push_back(
        {.station = station, .interferer = *curve.avoided(), .gain_percent = gain_percent});
  }
}

// By station.
std::vector<bool> Planner::relied_on_at(std::size_t heading) const {
  std::vector<bool> relied_on(curves_.size(), false);
  for (const Reliance& each : reliances_) {
    if (each.heading == heading) relied_on[each.station] = true;
  }
  return relied_on;
}

PlannedHeading Planner::described(Bearing<True> bearing, const std::vector<bool>& relied_on) const {
  PlannedHeading planned{.bearing = bearing, .slack = {360.0, 360.0}};
  for (std::size_t station = 0; station < curves_.size(); ++station) {
    if (arcs_[station].empty()) continue;
    const ChanceCurve& curve = *curves_[station];
    const double percent = curve.percent_at(planned.bearing);
    if (!slack_within(arcs_[station], planned.bearing)) {
      planned.loses.push_back({.station = station,
                               .chance_percent = percent,
                               .best_percent = curve.best_percent(),
                               .wished = wished_[station]});
      continue;
    }
    if (relied_on[station]) add_relied_on(planned, station);
    planned.brings.push_back({.station = station,
                              .chance_percent = percent,
                              .best_percent = curve.best_percent(),
                              .wished = wished_[station],
                              .relied_on = relied_on[station]});
  }
  std::stable_sort(planned.brings.begin(), planned.brings.end(),
                   [](const Brought& a, const Brought& b) {
                     if (a.relied_on != b.relied_on) return a.relied_on;
                     return a.chance_percent > b.chance_percent;
                   });
  std::stable_sort(planned.loses.begin(), planned.loses.end(), [](const Lost& a, const Lost& b) {
    if (a.wished != b.wished) return a.wished;
    return a.best_percent > b.best_percent;
  });
  return planned;
}

// A heading for a single station is the station's bearing, as on the dial, unless another brings
// noticeably more. The middle of its arc differs by a degree or two where the curve is flat.
void Planner::aim_straight(std::size_t heading) {
  std::optional<std::size_t> only;
  for (const Reliance& each : reliances_) {
    if (each.heading != heading) continue;
    if (only && *only != each.station) return;
    only = each.station;
  }
  if (!only) return;
  const ChanceCurve& curve = *curves_[*only];
  const double gain_percent =
      curve.percent_at(headings_[heading]) - curve.percent_at(curve.toward());
  if (gain_percent >= kWorthTelling_percent) return;
  if (slack_within(arcs_[*only], curve.toward())) headings_[heading] = curve.toward();
}

// Clockwise from the heading with most wishes.
void Planner::put_in_order() {
  const auto relied_on = [](const PlannedHeading& heading) {
    return std::count_if(heading.brings.begin(), heading.brings.end(),
                         [](const Brought& each) { return each.relied_on; });
  };
  auto& headings = plan_.headings;
  std::sort(headings.begin(), headings.end(), [](const PlannedHeading& a, const PlannedHeading& b) {
    return a.bearing.degrees() < b.bearing.degrees();
  });
  const auto first = std::max_element(headings.begin(), headings.end(),
                                      [&](const PlannedHeading& a, const PlannedHeading& b) {
                                        return relied_on(a) < relied_on(b);
                                      });
  std::rotate(headings.begin(), first, headings.end());
}

// Every whole degree is tried; the middle of the best stretch is taken, so that it forgives most.
void Planner::turn_again() {
  const Bearing<True> first = plan_.headings.front().bearing;
  const auto come_in = [this](Bearing<True> bearing) {
    std::vector<bool> in(curves_.size(), false);
    for (std::size_t i = 0; i < curves_.size(); ++i) {
      in[i] = slack_within(arcs_[i], bearing).has_value();
    }
    return in;
  };
  const std::vector<bool> before = come_in(first);
  struct Turned {
    int gained = 0, lost = 0;
    std::vector<bool> gains;
  };
  std::array<Turned, ChanceCurve::kHeadings> turned;
  int most = 0, fewest_lost = 0;
  for (std::size_t degree = 0; degree < turned.size(); ++degree) {
    Turned& one = turned[degree];
    one.gains = come_in(Bearing<True>::degrees(static_cast<double>(degree)));
    for (std::size_t i = 0; i < before.size(); ++i) {
      one.lost += before[i] && !one.gains[i] ? 1 : 0;
      one.gains[i] = one.gains[i] && !before[i];
      one.gained += one.gains[i] ? 1 : 0;
    }
    if (one.gained < most || one.gained == 0) continue;
    fewest_lost = one.gained > most ? one.lost : std::min(fewest_lost, one.lost);
    most = one.gained;
  }
  if (most == 0) return;
  const auto is_best = [&](std::size_t degree) {
    const Turned& one = turned[degree % turned.size()];
    return one.gained == most && one.lost == fewest_lost;
  };
  const auto off_deg = [&](std::size_t degree) {
    return (Bearing<True>::degrees(static_cast<double>(degree)) - first).size_deg();
  };
  std::size_t nearest = turned.size();
  for (std::size_t degree = 0; degree < turned.size(); ++degree) {
    if (!is_best(degree)) continue;
    if (nearest == turned.size() || off_deg(degree) < off_deg(nearest)) nearest = degree;
  }
  // The stretch around it with the same gains; it does not reach around the circle, where `first`
  // gains nothing.
  const auto same = [&](std::size_t degree) {
    return is_best(degree) && turned[degree % turned.size()].gains == turned[nearest].gains;
  };
  std::size_t left = nearest + turned.size(), right = left;
  while (same(left - 1)) --left;
  while (same(right + 1)) ++right;
  plan_.again = described(Bearing<True>::degrees(static_cast<double>(left + right) / 2.0),
                          turned[nearest].gains);
}

void Planner::note_weak() {
  for (std::size_t i = 0; i < curves_.size(); ++i) {
    if (!curves_[i] || wished_[i] || !arcs_[i].empty()) continue;
    const double best_percent = curves_[i]->best_percent();
    plan_.too_weak.push_back(
        {.station = i, .chance_percent = best_percent, .best_percent = best_percent});
  }
  std::stable_sort(plan_.too_weak.begin(), plan_.too_weak.end(),
                   [](const Lost& a, const Lost& b) { return a.best_percent > b.best_percent; });
}

TurnPlan Planner::plan() {
  HeadingChoice choice = choose_headings(wish_curves_, request_.floor_percent, request_.limits);
  headings_ = std::move(choice.headings);
  plan_.fewest_proved = choice.fewest_proved;
  for (const std::size_t wish : within_reach_) reliances_.push_back(reliance(wish));
  for (std::size_t heading = 0; heading < headings_.size(); ++heading) {
    aim_straight(heading);
    // If the search gave up, a heading may remain that nothing depends on.
    const bool relied_on =
        std::any_of(reliances_.begin(), reliances_.end(),
                    [&](const Reliance& each) { return each.heading == heading; });
    if (!relied_on) continue;
    plan_.headings.push_back(described(headings_[heading], relied_on_at(heading)));
  }
  put_in_order();
  if (plan_.headings.size() == 1) turn_again();
  note_weak();
  return std::move(plan_);
}

}  // namespace

TurnPlan turn_plan(std::span<const std::optional<ChanceCurve>> curves,
                   const TurnPlanRequest& request) {
  return Planner(curves, request).plan();
}

}  // namespace mastwise
