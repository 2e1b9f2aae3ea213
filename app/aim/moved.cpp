#include "app/aim/moved.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise {
namespace {

// The stations of all headings, each once.
std::vector<PlanStation> brought_by(const std::optional<Plan>& plan) {
  std::vector<PlanStation> all;
  if (!plan) return all;
  for (const PlanStep& step : plan->steps) {
    for (const PlanStation& one : step.brings) {
      const auto same = [&](const PlanStation& other) { return other.key == one.key; };
      if (std::none_of(all.begin(), all.end(), same)) all.push_back(one);
    }
  }
  return all;
}

// The titles of those that are not among the others.
std::vector<std::string> without(const std::vector<PlanStation>& stations,
                                 const std::vector<PlanStation>& others) {
  std::vector<std::string> titles;
  for (const PlanStation& one : stations) {
    const auto same = [&](const PlanStation& other) { return other.key == one.key; };
    if (std::none_of(others.begin(), others.end(), same)) titles.push_back(one.title);
  }
  return titles;
}

// To each side at most half a circle: farther is all round.
bool far_apart(const Slack& one, const Slack& other) {
  constexpr double kHalf_deg = 180.0;
  const auto apart = [&](double a_deg, double b_deg) {
    return std::fabs(std::min(a_deg, kHalf_deg) - std::min(b_deg, kHalf_deg)) > kToldChange_deg;
  };
  return apart(one.left_deg, other.left_deg) || apart(one.right_deg, other.right_deg);
}

// How far apart the two were asked; nothing if anything else differs.
std::optional<double> only_moved_m(const StationsQuestion& before, const StationsQuestion& now) {
  if (!before.from || !now.from) return std::nullopt;
  StationsQuestion there = survey_part(before);
  there.from = now.from;
  const bool same = there == survey_part(now) && before.target == now.target &&
                    before.turn == now.turn && before.pinned == now.pinned &&
                    before.plan_for == now.plan_for &&
                    before.plan_floor_percent == now.plan_floor_percent &&
                    before.heading_error_deg == now.heading_error_deg;
  if (!same) return std::nullopt;
  return path_between(*before.from, *now.from).distance_m;
}

}  // namespace

void follow_move(AimState& state, const StationsAnswer& answer) {
  if (answer.measured < answer.all) return;
  Reached now{
      .question = answer.question, .slack = answer.target_slack, .brings = brought_by(answer.plan)};
  if (state.reached) {
    const auto moved_m = only_moved_m(state.reached->question, answer.question);
    if (moved_m && *moved_m < kSomeSteps_m) return;
    state.moved.reset();
    if (moved_m && *moved_m <= kShortMove_m) {
      MoveNote note{.moved_m = *moved_m,
                    .gained = without(now.brings, state.reached->brings),
                    .lost = without(state.reached->brings, now.brings)};
      const auto& before = state.reached->slack;
      if (before && now.slack && far_apart(*before, *now.slack)) note.before = before;
      if (note.before || !note.gained.empty() || !note.lost.empty()) state.moved = note;
    }
  }
  state.reached = std::move(now);
}

}  // namespace mastwise
