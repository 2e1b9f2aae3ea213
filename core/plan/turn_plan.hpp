#pragma once

#include "core/plan/fewest_sets.hpp"
#include "core/plan/slack.hpp"
#include "core/reception/chance_curve.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace mastwise {

// Stations, by their numbers in the survey, any one of which will do: a single station, or all
// that carry a network.
struct PlanWish {
  std::vector<std::size_t> stations = {};
  bool pinned = false;  // told apart in the plan: it must not be missed
};

struct TurnPlanRequest {
  std::vector<PlanWish> wishes = {};
  double floor_percent = kUsualFloor_percent;  // over 0
  FewestSetsLimits limits = {};
};

// A station that a heading brings with at least the floor.
struct Brought {
  std::size_t station = 0;
  double chance_percent = 0.0;
  double best_percent = 0.0;  // at any heading
  bool wished = false;
  // The plan relies on this station at this heading for a wish: its chance is the best among all
  // stations of the wish and headings of the plan.
  bool relied_on = false;
};

// A station that comes in at another heading, even outside the plan, but not at this one.
struct Lost {
  std::size_t station = 0;
  double chance_percent = 0.0;  // here, below the floor
  double best_percent = 0.0;
  bool wished = false;
};

// A heading moved off a station's bearing to weaken an interfering station.
struct OffAxis {
  std::size_t station = 0;
  std::size_t interferer = 0;
  double gain_percent = 0.0;  // percentage points over aiming straight; at least 1
};

struct PlannedHeading {
  Bearing<True> bearing;
  Slack slack = {};                        // the least of the stations relied on
  std::vector<Brought> brings = {};        // those relied on first, then by falling chance
  std::vector<Lost> loses = {};            // wished ones first, then by falling best chance
  std::vector<OffAxis> off_axis_for = {};  // among the stations relied on
};

// A wish that no heading fulfills.
struct OutOfPlan {
  std::size_t wish = 0;                     // its index in the request
  std::optional<std::size_t> station = {};  // the nearest to the floor
  std::optional<double> best_percent = {};  // std::nullopt if no station's chance is known
};

struct TurnPlan {
  std::vector<PlannedHeading> headings = {};  // the one with most wishes first, then clockwise
  // Where one heading is enough: the one that brings most stations that this one does not; among
  // those, it loses the fewest, and is nearest to it. It relies on those stations. std::nullopt if
  // no heading brings any.
  std::optional<PlannedHeading> again = {};
  std::vector<OutOfPlan> out_of_plan = {};
  // Further stations, in no wish, that no heading brings, but some nearly does: best chance first.
  std::vector<Lost> too_weak = {};
  bool fewest_proved = true;  // no plan has fewer headings; see FewestSets
};

// The fewest headings that fulfill every wish that can be fulfilled; see choose_headings for the
// choice among them. `curves` by station index, as of reception::chance_curves: a station without a
// curve never counts. Station indexes in wishes are below the number of curves.
TurnPlan turn_plan(std::span<const std::optional<reception::ChanceCurve>> curves,
                   const TurnPlanRequest& request);

}  // namespace mastwise
