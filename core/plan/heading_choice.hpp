#pragma once

#include "core/plan/fewest_sets.hpp"
#include "core/plan/slack.hpp"
#include "core/reception/chance_curve.hpp"

#include <vector>

namespace mastwise {

// One wish as the choice of headings sees it: the curves of stations any of which fulfills it. At
// least one of them reaches the floor somewhere.
using WishCurves = std::vector<const reception::ChanceCurve*>;

struct HeadingChoice {
  std::vector<Bearing<True>> headings = {};
  bool fewest_proved = true;  // that fewer headings do not do is proved
};

// The fewest headings that fulfill every wish with at least the floor. Of all such choices (as many
// as the limits let be found) the one with the greatest sum over the wishes of the best chance at
// any of the headings; each heading is then moved, by whole degrees and to the ends of arcs, as
// long as that sum grows and every wish stays fulfilled, and at last to the middle of the range in
// which the sum falls by less than kFlat_percent. So the number is exact, the sum for one heading
// and for two, and for more it is one that moving two headings does not raise.
//
// A heading may be turned clockwise to the next end of an arc without losing a wish, so that the
// ends of arcs are all that need be looked at for the fewest.
HeadingChoice choose_headings(const std::vector<WishCurves>& wishes, double floor_percent,
                              FewestSetsLimits limits = {});

}  // namespace mastwise
