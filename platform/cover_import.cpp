#include "platform/cover_import.hpp"

#include "core/landcover/cover_tile.hpp"
#include "platform/cover_folder.hpp"
#include "platform/cover_raster.hpp"
#include "platform/files.hpp"

#include <algorithm>
#include <array>
#include <system_error>
#include <utility>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using landcover::ClassTable;
using landcover::CoverClass;
using landcover::CoverTile;
using terrain::TileCell;

Error of_raster(Error error, const fs::path& raster) {
  if (error.where.empty()) error.where = raster.string();
  return error;
}

// Fills the unknown areas of `before`, and returns how many. All others keep their class.
std::size_t merge(const CoverTile& before, std::vector<CoverClass>& classes) {
  std::size_t filled = 0;
  for (std::size_t i = 0; i < classes.size(); ++i) {
    const CoverClass old =
        landcover::cover_class_of(std::to_integer<std::uint8_t>(before.classes()[i]));
    if (old != CoverClass::unknown) {
      classes[i] = old;
    } else if (classes[i] != CoverClass::unknown) {
      ++filled;
    }
  }
  return filled;
}

class CoverWriter {
 public:
  CoverWriter(const fs::path& folder, const ClassTable& table, const ImportProgress& progress)
      : tiles_(folder), writer_(folder, kCoverTiles), table_(table), progress_(progress) {}

  Result<CoverImport> run(const CoverRaster& raster);

 private:
  // An error, or whether the cell was finished (false: stopped).
  Result<bool> make_tile(TileCell cell, const CoverRaster& raster,
                         const CoverRaster::Progress& progress);

  const CoverFolder tiles_;
  TileWriter writer_;
  const ClassTable& table_;
  const ImportProgress& progress_;
  std::array<bool, 256> unlisted_{};
  CoverImport result_;
};

Result<CoverImport> CoverWriter::run(const CoverRaster& raster) {
  result_.table = table_.name;
  result_.notice = table_.notice;
  const auto ready = writer_.start();
  if (!ready) return ready.error();
  const auto cell_count = static_cast<double>(raster.cells().size());
  double cells_done = 0.0;
  for (const TileCell cell : raster.cells()) {
    const auto done = make_tile(cell, raster, [&](double fraction) {
      return progress_((cells_done + fraction) / cell_count);
    });
    if (!done) return done.error();
    if (!*done) {
      result_.stopped = true;
      result_.new_areas = 0;
      return result_;
    }
    cells_done += 1.0;
  }
  auto placed = writer_.place();
  if (!placed) return placed.error();
  result_.written = *std::move(placed);
  for (std::size_t code = 0; code < unlisted_.size(); ++code) {
    if (unlisted_[code]) result_.unlisted_codes.push_back(static_cast<int>(code));
  }
  return result_;
}

Result<bool> CoverWriter::make_tile(TileCell cell, const CoverRaster& raster,
                                    const CoverRaster::Progress& progress) {
  auto classes = raster.classes(cell, table_, unlisted_, progress);
  if (!classes) return classes.error();
  if (classes->empty()) return false;
  const TileCell home = folded(cell);
  const auto before = tiles_.tile(home);
  std::vector<std::string> notices = before ? before->notices() : std::vector<std::string>();
  const std::size_t filled =
      before ? merge(*before, *classes)
             : classes->size() - static_cast<std::size_t>(std::count(
                                     classes->begin(), classes->end(), CoverClass::unknown));
  if (filled == 0) return true;
  if (std::find(notices.begin(), notices.end(), table_.notice) == notices.end()) {
    notices.push_back(table_.notice);
  }
  const auto bytes = landcover::cover_file(home, *classes, notices);
  if (!bytes) return bytes.error();
  const auto written = writer_.write(home, *bytes);
  if (!written) return written.error();
  result_.new_areas += filled;
  return true;
}

}  // namespace

Result<std::vector<ClassTable>> load_class_tables(const fs::path& folder) {
  std::vector<fs::path> files;
  std::error_code failed;
  for (fs::directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed)) {
    if (at->path().extension() == ".json") files.push_back(at->path());
  }
  if (failed || files.empty()) {
    return Error{.what = failed ? "cannot read the class tables: " + failed.message()
                                : "there are no class tables",
                 .where = folder.string(),
                 .remedy = "build the assets again"};
  }
  std::sort(files.begin(), files.end());
  std::vector<ClassTable> tables;
  for (const fs::path& file : files) {
    const auto text = read_file(file.string());
    if (!text) return text.error();
    auto table = landcover::read_class_table(*text);
    if (!table) {
      Error error = table.error();
      error.where = file.string() + ", " + error.where;
      return error;
    }
    tables.push_back(*std::move(table));
  }
  return tables;
}

Result<std::size_t> recognize_cover(const fs::path& path, std::span<const ClassTable> tables,
                                    const std::string& chosen) {
  const auto raster = CoverRaster::open(path);
  if (!raster) return raster.error();
  const auto traits = raster->traits();
  if (!traits) return traits.error();
  const auto found = landcover::recognize(tables, *traits, chosen);
  if (!found) return of_raster(found.error(), path);
  return *found;
}

Result<CoverImport> import_cover(const fs::path& path, const fs::path& folder,
                                 std::span<const ClassTable> tables, const std::string& chosen,
                                 const ImportProgress& progress) {
  const auto table = recognize_cover(path, tables, chosen);
  if (!table) return table.error();
  const auto raster = CoverRaster::open(path);
  if (!raster) return raster.error();
  return CoverWriter(folder, tables[*table], progress).run(*raster);
}

}  // namespace mastwise::platform
