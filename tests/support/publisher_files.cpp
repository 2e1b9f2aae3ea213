#include "tests/support/publisher_files.hpp"

#include "tests/support/made_raster.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

namespace mastwise::test {

std::string glo_90_path(const std::string& latitude, const std::string& longitude) {
  const std::string name = "Copernicus_DSM_COG_30_" + latitude + "_00_" + longitude + "_00_DEM";
  return "/" + name + "/" + name + ".tif";
}

std::string glo_90_bytes(terrain::TileCell cell) {
  constexpr int kSide = 1200;
  constexpr double kSpacing = 1.0 / kSide;
  const TemporaryFolder folder;
  write_codes(folder / "tile.tif",
              {.columns = kSide,
               .rows = kSide,
               .left = cell.west_deg - kSpacing / 2.0,
               .top = cell.south_deg + 1.0 + kSpacing / 2.0,
               .spacing = kSpacing,
               .two_bytes = true},
              [&](int column, int row) { return (column / 10 + row / 20) % 200 + 20; });
  return read_file(folder / "tile.tif");
}

}  // namespace mastwise::test
