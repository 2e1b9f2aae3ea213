#pragma once

#include "app/data/state.hpp"
#include "app/service/browsing.hpp"

// A folder as it is shown to choose from.
namespace mastwise {

// Tables, sets of tables, rasters and packs to import.
IntakeFolder folder_of(const sources::FolderShown& shown);
// Routes and lists of places.
IntakeFolder routes_of(const sources::FolderShown& shown);

}  // namespace mastwise
