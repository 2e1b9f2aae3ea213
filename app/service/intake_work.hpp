#pragma once

#include "app/model/intake.hpp"
#include "app/service/errand.hpp"
#include "core/map/borders.hpp"
#include "core/result.hpp"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace mastwise {

using IntakeWorker = Worker<IntakeQuestion, IntakeAnswer>;

struct IntakeSources {
  std::string catalog_path = {};                          // the user's stations
  std::string mapping_folder = {};                        // where corrected mappings are remembered
  std::function<std::vector<IntakeEntry>()> places = {};  // where to begin to look
  std::function<Result<map::Borders>()> borders = {};     // for the map of the check
};

// Lists folders, looks into tables and takes them in. The catalog and the borders are opened when
// they are first needed and belong to the asking thread. A newer question stops a taking in, of
// which then nothing is in the catalog.
IntakeWorker::Answerer intake_answerer(IntakeSources sources);

// The same for the session.
std::unique_ptr<Errand> intake_errand(IntakeSources sources, std::function<void()> wake);

}  // namespace mastwise
