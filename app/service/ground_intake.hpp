#pragma once

#include "app/data/state.hpp"
#include "core/map/borders.hpp"
#include "core/result.hpp"

#include <functional>
#include <optional>
#include <string>

// Rasters of heights and of land cover by touch: what they are, and their import as tiles.
namespace mastwise {

struct GroundFolders {
  std::string terrain = {};  // of the user's tiles
  std::string practice_terrain = {};
  std::string cover = {};         // of the user's tiles
  std::string class_tables = {};  // built in
};

// Identifies a raster; `reading`: the person's choice of a class table. The answer contains any
// trouble.
TableLook look_into_raster(const std::string& path, const std::optional<TableReading>& reading,
                           const GroundFolders& folders);

// Imports a raster. `progress` gets the fraction done and returns true to continue. Errors: those
// of platform::import_raster and import_cover, and a stop; then nothing changed.
Result<GroundReport> import_ground(const std::string& path, const TableReading& reading,
                                   const GroundFolders& folders,
                                   const std::function<bool(double part)>& progress);

// The tiles on board.
GroundHeld ground_held(const GroundFolders& folders);

// The squares around a way, by the user's tiles or those of the practice area (see
// ground_around.hpp). Empty without a position.
std::optional<GroundAround> ground_near(const GroundFolders& folders,
                                        const IntakeQuestion& question, const map::Borders* coasts);

}  // namespace mastwise
