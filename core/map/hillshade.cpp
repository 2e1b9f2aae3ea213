#include "core/map/hillshade.hpp"

#include "core/terrain/globe_point.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <memory>
#include <numbers>
#include <optional>

namespace mastwise::map {
namespace {

constexpr double kUnknownHeight = std::numeric_limits<double>::quiet_NaN();
constexpr int kNodeSpacing = 16;

// Reads heights and keeps the last tile.
class HeightReader {
 public:
  explicit HeightReader(const terrain::TileSource& tiles) : tiles_(tiles) {}

  double height_m(terrain::GlobePoint point) {
    const auto cell = terrain::GlobeCell::of(point);
    if (!sought_ || !(cell == cell_)) {
      tile_ = tiles_.tile(cell.tile_cell());
      cell_ = cell;
      sought_ = true;
    }
    const double height_m = tile_ ? height_in_m(*tile_, cell, point) : kUnknownHeight;
    // On a degree line the neighboring tile may have the height.
    const bool on_edge = point.north_deg == cell.north || point.east_deg == cell.east;
    if (!std::isnan(height_m) || !on_edge) return height_m;
    return terrain::ground_height_m(tiles_, point).value_or(kUnknownHeight);
  }

 private:
  const terrain::TileSource& tiles_;
  bool sought_ = false;
  terrain::GlobeCell cell_;
  std::shared_ptr<const terrain::Tile> tile_;
};

// The heights of the grid and of one extra cell on every side.
class HeightGrid {
 public:
  HeightGrid(const terrain::TileSource& tiles, const Projection& projection, ReliefGrid grid)
      : projection_(projection),
        grid_(grid),
        columns_(grid.columns + 2),
        heights_m_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(grid.rows + 2)) {
    HeightReader reader(tiles);
    for (int row = 0; row < grid.rows + 2; row += kNodeSpacing) {
      for (int column = 0; column < columns_; column += kNodeSpacing)
        read_block(row, column, reader);
    }
  }

  // From -1 to the grid's size.
  double at(int row, int column) const {
    return heights_m_[static_cast<std::size_t>(row + 1) * static_cast<std::size_t>(columns_) +
                      static_cast<std::size_t>(column + 1)];
  }

 private:
  std::optional<Position> position(int row, int column) const {
    // The first row and column are just outside the grid.
    return projection_.to_earth(
        {.east_m = (column - 0.5 - grid_.columns / 2.0) * grid_.meters_per_cell,
         .north_m = (grid_.rows / 2.0 + 0.5 - row) * grid_.meters_per_cell});
  }

  // The degrees of the corners, with longitudes continued from the first corner's; empty near the
  // poles.
  std::optional<std::array<terrain::GlobePoint, 4>> corners(int row, int column) const {
    constexpr double kFarthestNorthDeg = 85.0;
    std::array<terrain::GlobePoint, 4> found;
    double first_longitude_deg = 0.0;
    for (int i = 0; i < 4; ++i) {
      const auto corner = position(row + (i / 2) * kNodeSpacing, column + (i % 2) * kNodeSpacing);
      if (!corner || std::fabs(corner->latitude_deg()) > kFarthestNorthDeg) return std::nullopt;
      if (i == 0) first_longitude_deg = corner->longitude_deg();
      const double longitude_deg =
          first_longitude_deg + fold_half_circle_deg(corner->longitude_deg() - first_longitude_deg);
      found[static_cast<std::size_t>(i)] =
          terrain::GlobePoint::of_deg(corner->latitude_deg(), longitude_deg);
    }
    return found;
  }

  void read_block(int first_row, int first_column, HeightReader& reader) {
    const auto corner = corners(first_row, first_column);
    const int rows = std::min(kNodeSpacing, grid_.rows + 2 - first_row);
    const int columns = std::min(kNodeSpacing, columns_ - first_column);
    for (int row = 0; row < rows; ++row) {
      for (int column = 0; column < columns; ++column) {
        const std::size_t index =
            static_cast<std::size_t>(first_row + row) * static_cast<std::size_t>(columns_) +
            static_cast<std::size_t>(first_column + column);
        const double height_m =
            corner ? reader.height_m(between(*corner, row, column)) : kUnknownHeight;
        heights_m_[index] = static_cast<float>(height_m);
      }
    }
  }

  static terrain::GlobePoint between(const std::array<terrain::GlobePoint, 4>& corner, int row,
                                     int column) {
    const double u = static_cast<double>(column) / kNodeSpacing;
    const double v = static_cast<double>(row) / kNodeSpacing;
    const auto mix = [&](double terrain::GlobePoint::*degrees) {
      const double upper = corner[0].*degrees + u * (corner[1].*degrees - corner[0].*degrees);
      const double lower = corner[2].*degrees + u * (corner[3].*degrees - corner[2].*degrees);
      return upper + v * (lower - upper);
    };
    return {.north_deg = mix(&terrain::GlobePoint::north_deg),
            .east_deg = mix(&terrain::GlobePoint::east_deg)};
  }

  const Projection& projection_;
  ReliefGrid grid_;
  int columns_;
  std::vector<float> heights_m_;
};

// The unit vector toward the light.
struct Toward {
  double east, north, up;
};

std::uint8_t shade_at(const HeightGrid& h, int row, int column, double meters_per_cell,
                      double vertical_scale, const Toward& light) {
  const double rise = vertical_scale / (8.0 * meters_per_cell);
  const double east =
      (h.at(row - 1, column + 1) + 2.0 * h.at(row, column + 1) + h.at(row + 1, column + 1) -
       h.at(row - 1, column - 1) - 2.0 * h.at(row, column - 1) - h.at(row + 1, column - 1)) *
      rise;
  const double north =
      (h.at(row - 1, column - 1) + 2.0 * h.at(row - 1, column) + h.at(row - 1, column + 1) -
       h.at(row + 1, column - 1) - 2.0 * h.at(row + 1, column) - h.at(row + 1, column + 1)) *
      rise;
  if (std::isnan(east + north + h.at(row, column))) return Relief::kUnknown;
  const double brightness = (light.up - east * light.east - north * light.north) /
                            std::sqrt(1.0 + east * east + north * north);
  return static_cast<std::uint8_t>(1 + std::lround(254.0 * std::clamp(brightness, 0.0, 1.0)));
}

std::uint8_t band_of(double height_m) {
  if (std::isnan(height_m)) return Relief::kUnknown;
  const auto reached =
      std::upper_bound(Relief::kBandsFromM.begin(), Relief::kBandsFromM.end(), height_m);
  return static_cast<std::uint8_t>(1 + (reached - Relief::kBandsFromM.begin()));
}

bool within(double value, double least, double most) {
  return value >= least && value <= most;
}

}  // namespace

Result<Relief> shade_relief(const terrain::TileSource& tiles, const Projection& projection,
                            ReliefGrid grid, Light light) {
  if (!within(grid.columns, 1, 2048) || !within(grid.rows, 1, 2048) ||
      !within(grid.meters_per_cell, 1.0, 10'000.0)) {
    return Error{.what = "the relief's grid is out of range",
                 .remedy = "ask for 1 to 2048 cells a side of 1 to 10,000 m"};
  }
  if (!within(light.height_deg, 0.0, 90.0) || !within(light.vertical_scale, 1e-3, 1e3)) {
    return Error{.what = "the relief's light is out of range",
                 .remedy = "ask for a light 0 to 90 degrees high"};
  }
  constexpr double kDegree = std::numbers::pi / 180.0;
  const double level = std::cos(light.height_deg * kDegree);
  const Toward toward{.east = level * std::sin(light.from.degrees() * kDegree),
                      .north = level * std::cos(light.from.degrees() * kDegree),
                      .up = std::sin(light.height_deg * kDegree)};
  const HeightGrid heights(tiles, projection, grid);
  Relief relief{.grid = grid, .shade = {}, .band = {}};
  const auto cells = static_cast<std::size_t>(grid.columns) * static_cast<std::size_t>(grid.rows);
  relief.shade.reserve(cells);
  relief.band.reserve(cells);
  for (int row = 0; row < grid.rows; ++row) {
    for (int column = 0; column < grid.columns; ++column) {
      relief.shade.push_back(
          shade_at(heights, row, column, grid.meters_per_cell, light.vertical_scale, toward));
      relief.band.push_back(band_of(heights.at(row, column)));
    }
  }
  return relief;
}

}  // namespace mastwise::map
