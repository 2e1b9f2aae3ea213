#pragma once

#include "app/shared/survey.hpp"
#include "core/plan/null_aim.hpp"
#include "core/plan/turn_plan.hpp"
#include "core/reception/chance_curve.hpp"
#include "core/reception/survey.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace mastwise {

using ChanceCurveList = std::vector<std::optional<reception::ChanceCurve>>;

// The turn plan of a weighed survey for what the question wants; `curves` are the survey's.
Plan plan_for(const StationsQuestion& question, const reception::Survey& survey,
              const ChanceCurveList& curves);

// A null on an interferer with the names of the stations.
NullHint null_hint(const reception::Survey& survey, const NullAim& aim);

// Wants any one of the stations that match; empty where none does.
template <class Matches>
PlanWish wish_for(const reception::Survey& survey, const Matches& matches) {
  PlanWish wish;
  for (std::size_t i = 0; i < survey.size(); ++i) {
    if (matches(survey.station(i))) wish.stations.push_back(i);
  }
  return wish;
}

// Wants each station, by itself, that reaches this chance at some heading.
std::vector<PlanWish> likely_wishes(const ChanceCurveList& curves, double least_percent);

// The number of a station in the survey.
std::optional<std::size_t> index_of(const reception::Survey& survey, const StationKey& key);

}  // namespace mastwise
