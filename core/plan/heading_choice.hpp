#pragma once

#include "core/plan/fewest_sets.hpp"
#include "core/plan/slack.hpp"
#include "core/reception/chance_curve.hpp"

#include <vector>

namespace mastwise {

// One wish for the choice of headings: the curves of the stations, any of which fulfills it. At
// least one of them reaches the floor at some heading.
using WishCurves = std::vector<const reception::ChanceCurve*>;

struct HeadingChoice {
  std::vector<Bearing<True>> headings = {};
  bool fewest_proved = true;  // proved that fewer headings do not suffice
};

// The fewest headings that fulfill every wish with at least the floor. Among all such choices (as
// many as the limits allow), the one with the greatest sum over the wishes of the best chance at
// any of the headings. Each heading is then moved, by whole degrees and to the ends of arcs, as
// long as that sum grows and every wish stays fulfilled. Finally it moves to the middle of the
// range in which the sum falls by less than kFlat_percent. So the number is exact, and the sum is
// the best for one heading and for two; for more, moving two headings does not raise it.
//
// A heading can turn clockwise to the next end of an arc without losing a wish, so the search for
// the fewest needs only the ends of arcs.
HeadingChoice choose_headings(const std::vector<WishCurves>& wishes, double floor_percent,
                              FewestSetsLimits limits = {});

}  // namespace mastwise
