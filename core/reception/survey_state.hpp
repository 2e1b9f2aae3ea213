#pragma once

#include "core/reception/interference.hpp"
#include "core/reception/link_budget.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/survey.hpp"

#include <optional>
#include <vector>

namespace mastwise::reception {

// The data of a survey, for the survey and for its curves.
struct Survey::State {
  State(Receiver receiver, std::vector<Station> given, const Land& land_around);

  LinkBudget budget;
  std::vector<Station> stations;
  std::vector<Measurement> measurements;
  Land land;
  std::optional<map::Shore> shore = {};  // around the stop
  Interference interference;
};

}  // namespace mastwise::reception
