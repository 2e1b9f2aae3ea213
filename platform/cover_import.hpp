#pragma once

#include "core/landcover/class_table.hpp"
#include "core/result.hpp"
#include "core/terrain/tile.hpp"
#include "platform/tile_writer.hpp"

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace mastwise::platform {

// The result of an import.
struct CoverImport {
  bool stopped = false;                    // by the caller: then nothing changed
  std::string table = {};                  // the class table's name
  std::string notice = {};                 // of the source, to show
  std::vector<terrain::TileCell> written;  // tiles created or completed
  std::size_t new_areas = 0;               // areas whose class was unknown before
  std::vector<int> unlisted_codes;         // found, but not in the table: they stay unknown
};

// The class tables of a folder's .json files, by file name. Errors: an unreadable folder, no table,
// a faulty table.
Result<std::vector<landcover::ClassTable>> load_class_tables(const std::filesystem::path& folder);

// Which table fits a raster; see landcover::recognize. Errors: those of CoverRaster and recognize.
Result<std::size_t> recognize_cover(const std::filesystem::path& raster,
                                    std::span<const landcover::ClassTable> tables,
                                    const std::string& chosen);

// Turns a raster of land cover codes (see CoverRaster) into tiles in `folder`, which is created if
// missing.
// - `chosen` names the class table; empty: by the raster's name, colors and codes.
// - A known area of an existing tile (also zipped or in a subfolder, as CoverFolder finds it) keeps
// its class; only unknown ones are filled. To get the new classes instead, remove the old tile
// first. A damaged tile is replaced.
// - Cells without any known area get no tile. The source's notice is added to each tile that it
// contributes to.
// - A raster that cannot be read to its end, an error or a stop changes nothing.
// Errors: those of CoverRaster and recognize, a full disk. One import into a folder at a time.
Result<CoverImport> import_cover(const std::filesystem::path& raster,
                                 const std::filesystem::path& folder,
                                 std::span<const landcover::ClassTable> tables,
                                 const std::string& chosen, const ImportProgress& progress);

}  // namespace mastwise::platform
