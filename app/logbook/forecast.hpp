#pragma once

#include "app/shared/shared.hpp"
#include "core/reception/survey.hpp"

#include <array>
#include <optional>

namespace mastwise {

using LearnedByBand = std::array<reception::LearnedBias, 3>;

// What was computed of a station with the antenna as it points.
struct AimedForecast {
  double chance_percent = 0.0;  // as shown
  double margin_db = 0.0;       // without the logbook's correction
  double deviation_db = 0.0;    // likewise
};

// Where the antenna points, as far as is known: at the target, by the way in use.
std::optional<Bearing<True>> aimed_at(const Shared& shared);

// The forecast at a heading; `learned`: the corrections that the row was surveyed with. Empty
// without an outlook, and where the TV may be unable to decode the station, which says nothing
// about the signal.
std::optional<AimedForecast> forecast_at(const Shared& shared, const StationRow& row,
                                         Bearing<True> heading, const LearnedByBand& learned);

}  // namespace mastwise
