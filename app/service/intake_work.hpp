#pragma once

#include "app/data/state.hpp"
#include "app/service/ground_intake.hpp"
#include "app/service/worker.hpp"
#include "core/map/borders.hpp"
#include "core/places/gazetteer.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace mastwise {

using IntakeWorker = Worker<IntakeQuestion, IntakeAnswer>;

struct IntakeSources {
  std::string catalog_path = {};     // the user's stations
  std::string mapping_folder = {};   // folder of corrected mappings
  GroundFolders ground = {};         // of tiles
  std::string downloads = {};        // folder for what is being fetched
  std::string publishers_base = {};  // instead of the publishers' servers; empty: those
  std::function<std::vector<IntakeEntry>()> places = {};  // start folders
  std::function<Result<map::Borders>()> borders = {};     // for the check map
  std::function<Result<places::Gazetteer>()> towns = {};  // to see that stations lie near some
};

// Lists folders, reads tables and imports them. The asking thread opens the catalog and the borders
// on first use and owns them. A newer question stops an import and leaves the catalog unchanged.
IntakeWorker::Answerer intake_answerer(IntakeSources sources);

}  // namespace mastwise
