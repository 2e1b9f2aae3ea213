#pragma once

#include "core/reception/interference.hpp"
#include "core/reception/link_budget.hpp"
#include "core/reception/measurement.hpp"
#include "core/reception/survey.hpp"

#include <utility>
#include <vector>

namespace mastwise::reception {

// The data of a survey, for the survey and for its curves.
struct Survey::State {
  State(Receiver receiver, std::vector<Station> given, const terrain::TileSource& source)
      : budget(std::move(receiver)),
        stations(std::move(given)),
        measurements(stations.size()),
        tiles(source),
        interference(budget, stations) {}

  LinkBudget budget;
  std::vector<Station> stations;
  std::vector<Measurement> measurements;
  const terrain::TileSource& tiles;
  Interference interference;
};

}  // namespace mastwise::reception
