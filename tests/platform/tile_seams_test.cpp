#include "platform/tile_seams.hpp"

#include "tests/support/made_tiles.hpp"
#include "tests/support/temporary_folder.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;
using terrain::kVoidSample;
using terrain::TileCell;

namespace {

constexpr int kSeamLast = 1200;

// Of each tile its south and east edge is unknown; all other samples have the tile's height.
void write_open_tile(const test::TemporaryFolder& folder, TileCell cell, double height_m,
                     int side = kSeamLast + 1) {
  test::write_bytes(folder / (terrain::cell_name(cell) + ".hgt"),
                    test::made_tile_bytes(cell, side, [&](double latitude, double longitude) {
                      const bool edge = latitude < cell.south_deg + 1e-6 ||
                                        longitude > cell.west_deg + 1.0 - 1e-6;
                      return edge ? static_cast<double>(kVoidSample) : height_m;
                    }));
}

int seam_sample(const test::TemporaryFolder& folder, TileCell cell, int row, int column) {
  return test::read_tile(folder / (terrain::cell_name(cell) + ".hgt"), cell)->sample(row, column);
}

}  // namespace

TEST_CASE("four tiles complete each other's edges and their common corner") {
  const test::TemporaryFolder folder;
  const TileCell north_west{44, -72}, north_east{44, -71}, south_west{43, -72}, south_east{43, -71};
  write_open_tile(folder, north_west, 100.0);
  write_open_tile(folder, north_east, 200.0);
  write_open_tile(folder, south_west, 300.0);
  write_open_tile(folder, south_east, 400.0);
  const auto completed = platform::close_seams(folder.path(), {south_east});
  CHECK(completed == std::vector<TileCell>{south_west, north_west, north_east});
  CHECK(seam_sample(folder, north_west, 600, kSeamLast) == 200);
  CHECK(seam_sample(folder, north_west, kSeamLast, 600) == 300);
  CHECK(seam_sample(folder, north_west, kSeamLast, kSeamLast) == 400);
  CHECK(seam_sample(folder, north_west, 600, 600) == 100);
  CHECK(seam_sample(folder, north_east, kSeamLast, 600) == 400);
  CHECK(seam_sample(folder, north_east, 600, kSeamLast) == kVoidSample);
  CHECK(seam_sample(folder, south_west, 0, 600) == 300);
  CHECK(platform::close_seams(folder.path(), {south_east, north_west}).empty());
}

TEST_CASE("tiles meet across 180 degrees, and those of another spacing stay as they are") {
  const test::TemporaryFolder folder;
  write_open_tile(folder, {10, 179}, 100.0);
  write_open_tile(folder, {10, -180}, 200.0);
  write_open_tile(folder, {9, 179}, 300.0, 3 * kSeamLast + 1);
  CHECK(platform::close_seams(folder.path(), {{10, -180}}) == std::vector<TileCell>{{10, 179}});
  CHECK(seam_sample(folder, {10, 179}, 600, kSeamLast) == 200);
  CHECK(seam_sample(folder, {10, 179}, kSeamLast, 600) == kVoidSample);
}
