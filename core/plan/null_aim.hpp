#pragma once

#include "core/gear/nulls.hpp"
#include "core/plan/slack.hpp"
#include "core/reception/chance_curve.hpp"
#include "core/reception/survey.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace mastwise {

// A heading at which a null of the antenna lies on an interferer.
struct NullAim {
  Bearing<True> heading;
  std::size_t interferer = 0;
  gear::PatternNull null;               // as deep as it is in place
  double chance_percent = 0.0;          // of the station there
  double gain_percent = 0.0;            // percentage points over aiming straight at it; at least 5
  std::vector<std::size_t> loses = {};  // stations that come in straight but not there
};

// Whether turning to `heading` brings `station` more than the antenna's peak on it because a null
// lies on what disturbs it most. Both chances are averages over the heading error. std::nullopt
// where nobody has measured the pattern, where the gain is below 5 points, or where one sigma of
// the heading error is beyond half of the null's width, so that one would often miss it [both own
// choice]. `curves` are the weighed survey's; `floor_percent` says what comes in.
std::optional<NullAim> null_aim_at(const reception::Survey& survey,
                                   std::span<const std::optional<reception::ChanceCurve>> curves,
                                   std::size_t station, Bearing<True> heading,
                                   double floor_percent);

// The same at the station's best heading.
std::optional<NullAim> null_aim(const reception::Survey& survey,
                                std::span<const std::optional<reception::ChanceCurve>> curves,
                                std::size_t station, double floor_percent = kUsualFloor_percent);

}  // namespace mastwise
