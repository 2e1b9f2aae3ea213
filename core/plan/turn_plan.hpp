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

// A station that a heading brings, with at least the floor.
struct Brought {
  std::size_t station = 0;
  double chance_percent = 0.0;
  double best_percent = 0.0;  // at any heading at all
  bool wished = false;
  // A wish is counted on to be fulfilled by this station at this heading: of all stations of the
  // wish and headings of the plan, where its chance is best.
  bool relied_on = false;
};

// A station that would come in at another heading, not of the plan alone, and does not at this one.
struct Lost {
  std::size_t station = 0;
  double chance_percent = 0.0;  // here, below the floor
  double best_percent = 0.0;
  bool wished = false;
};

// A heading that is off a station's bearing so that a disturbing one falls where the antenna hears
// less.
struct OffAxis {
  std::size_t station = 0;
  std::size_t interferer = 0;
  double gain_percent = 0.0;  // percent points over aiming straight; at least 1
};

struct PlannedHeading {
  Bearing<True> bearing;
  Slack slack = {};                        // the least of the stations relied on
  std::vector<Brought> brings = {};        // those relied on first, then by falling chance
  std::vector<Lost> loses = {};            // those wished for first, then by falling best chance
  std::vector<OffAxis> off_axis_for = {};  // of the stations relied on
};

// A wish that no heading fulfills.
struct OutOfPlan {
  std::size_t wish = 0;                     // its number in the request
  std::optional<std::size_t> station = {};  // the one of it that comes nearest
  std::optional<double> best_percent = {};  // nothing where no station's chance is known
};

struct TurnPlan {
  std::vector<PlannedHeading> headings = {};  // that with most wishes first, then clockwise
  std::vector<OutOfPlan> out_of_plan = {};
  bool fewest_proved = true;  // that no plan has fewer headings; see FewestSets
};

// The fewest headings that fulfill every wish that can be fulfilled at all; see choose_headings for
// which of them. `curves` by the stations' numbers, as of reception::chance_curves: a station
// without a curve is never claimed. Wished numbers are below the number of curves.
TurnPlan turn_plan(std::span<const std::optional<reception::ChanceCurve>> curves,
                   const TurnPlanRequest& request);

}  // namespace mastwise
