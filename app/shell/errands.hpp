#pragma once

#include "app/service/intake_work.hpp"
#include "app/service/logbook_work.hpp"
#include "app/service/map_maker.hpp"
#include "app/shell/errand.hpp"
#include "core/places/gazetteer.hpp"

#include <functional>
#include <memory>
#include <vector>

namespace mastwise::shell {

using Errands = std::vector<std::unique_ptr<Errand>>;

struct ErrandSources {
  SurveySources survey;
  std::function<Result<places::Gazetteer>()> places;  // read in the worker's thread
  LoadBorders borders;                                // likewise
  LogbookFilesSources logbook;
  // Reads the logbook after an import. Called in the session's thread, so that no touch in between
  // is lost from the screen.
  std::function<Result<LogbookRecords>()> read_again;
  IntakeSources intake;
};

// All work in other threads: when a worker is asked, what it does, and the action that its answer
// becomes. The workers call `wake` from their threads when an answer is ready.
Errands errands(const ErrandSources& sources, const std::function<void()>& wake);

}  // namespace mastwise::shell
