#include "core/text/words.hpp"
#include "platform/cover_raster.hpp"
#include "platform/dbase_table.hpp"
#include "platform/elevation_raster.hpp"

#include <utility>

// A browser has no GDAL: rasters and dBase tables are imported on another system, and come as a
// pack.
namespace mastwise::platform {
namespace {

Error on_another_system(const std::filesystem::path& path) {
  return {.what = "this kind of file is not imported in a browser",
          .where = path.string(),
          .remedy =
              "import it with Mastwise on Debian or Windows, make a pack there, and import "
              "the pack here"};
}

}  // namespace

class ElevationRaster::Source {};
class CoverRaster::Source {};

Result<ElevationRaster> ElevationRaster::open(const std::filesystem::path& path) {
  return on_another_system(path);
}
ElevationRaster::ElevationRaster(std::unique_ptr<Source> source) : source_(std::move(source)) {}
ElevationRaster::ElevationRaster(ElevationRaster&&) noexcept = default;
ElevationRaster::~ElevationRaster() = default;
int ElevationRaster::suitable_side() const {
  return 0;
}
const std::vector<terrain::TileCell>& ElevationRaster::cells() const {
  static const std::vector<terrain::TileCell> none;
  return none;
}
Result<std::vector<std::int16_t>> ElevationRaster::samples(terrain::TileCell, int,
                                                           const Progress&) const {
  return on_another_system({});
}

Result<CoverRaster> CoverRaster::open(const std::filesystem::path& path) {
  return on_another_system(path);
}
CoverRaster::CoverRaster(std::unique_ptr<Source> source) : source_(std::move(source)) {}
CoverRaster::CoverRaster(CoverRaster&&) noexcept = default;
CoverRaster::~CoverRaster() = default;
Result<landcover::RasterTraits> CoverRaster::traits() const {
  return on_another_system({});
}
const std::vector<terrain::TileCell>& CoverRaster::cells() const {
  static const std::vector<terrain::TileCell> none;
  return none;
}
Result<std::vector<landcover::CoverClass>> CoverRaster::classes(terrain::TileCell,
                                                                const landcover::ClassTable&,
                                                                std::array<bool, 256>&,
                                                                const Progress&) const {
  return on_another_system({});
}

bool is_dbase(const std::filesystem::path& file) {
  return words::same_word(file.extension().string(), ".dbf");
}

Result<std::unique_ptr<ByteStream>> open_dbase(const std::filesystem::path& file) {
  return on_another_system(file);
}

}  // namespace mastwise::platform
