#pragma once

#include "app/model/stations.hpp"
#include "core/reception/chance_curve.hpp"
#include "core/reception/survey.hpp"

namespace mastwise {

// The turn plan of a survey for the question's stations; `curves` are the survey's.
Plan plan_for(const StationsQuestion& question, const reception::Survey& survey,
              const std::vector<std::optional<reception::ChanceCurve>>& curves);

// The number of a station in the survey.
std::optional<std::size_t> index_of(const reception::Survey& survey, const StationKey& key);

}  // namespace mastwise
