#include "core/reception/area_grid.hpp"

#include "core/geo/geodesic.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <GeographicLib/AzimuthalEquidistant.hpp>
#include <fmt/format.h>

namespace mastwise::reception {
namespace {

constexpr double kSmallestRadius_m = 100.0;

// Folded to within half a turn of the other.
double unrolled_deg(double longitude_deg, double beside_deg) {
  return beside_deg + std::remainder(longitude_deg - beside_deg, 360.0);
}

double mixed(double a, double b, double part) {
  return a + part * (b - a);
}

CellPlace mixed(const CellPlace& a, const CellPlace& b, double part) {
  return {.latitude_deg = mixed(a.latitude_deg, b.latitude_deg, part),
          .longitude_deg = mixed(a.longitude_deg, b.longitude_deg, part),
          .east_m = mixed(a.east_m, b.east_m, part),
          .north_m = mixed(a.north_m, b.north_m, part)};
}

}  // namespace

Result<AreaGrid> AreaGrid::around(Position stop, double radius_m, std::size_t cells) {
  if (!(radius_m >= kSmallestRadius_m && radius_m <= kLargestRadius_m)) {
    return Error{.what = fmt::format("the radius is {} m", radius_m),
                 .where = "area around the stop",
                 .remedy = "give 0.1 to 100 km"};
  }
  if (cells < 2 || cells > kMostCells) {
    return Error{.what = fmt::format("{} cells on a side", cells),
                 .where = "area around the stop",
                 .remedy = fmt::format("give 2 to {}", kMostCells)};
  }
  if (std::fabs(stop.latitude_deg()) > kLargestLatitude_deg) {
    return Error{.what = "the stop is within 5 degrees of a pole",
                 .where = "area around the stop",
                 .remedy = "choose a stop farther from the pole"};
  }
  return AreaGrid(stop, radius_m, cells);
}

double AreaGrid::east_m(std::size_t cell) const {
  return (static_cast<double>(cell % cells_) + 0.5) * cell_m() - radius_m_;
}

double AreaGrid::north_m(std::size_t cell) const {
  return radius_m_ - (static_cast<double>(cell / cells_) + 0.5) * cell_m();
}

double AreaGrid::distance_m(std::size_t cell) const {
  return std::hypot(east_m(cell), north_m(cell));
}

Bearing<True> AreaGrid::bearing(std::size_t cell) const {
  return Bearing<True>::degrees(std::atan2(east_m(cell), north_m(cell)) * 180.0 / std::numbers::pi);
}

Position AreaGrid::position(std::size_t cell) const {
  return destination(stop_, bearing(cell), distance_m(cell));
}

CellPlaces::CellPlaces(const AreaGrid& grid, Position transmitter) : grid_(grid) {
  const GeographicLib::AzimuthalEquidistant plane;
  const Position stop = grid.stop();
  nodes_.reserve(kNodes * kNodes);
  const double step_m = 2.0 * grid.radius_m() / static_cast<double>(kNodes - 1);
  for (std::size_t row = 0; row < kNodes; ++row) {
    for (std::size_t column = 0; column < kNodes; ++column) {
      CellPlace place;
      plane.Reverse(stop.latitude_deg(), stop.longitude_deg(),
                    static_cast<double>(column) * step_m - grid.radius_m(),
                    static_cast<double>(row) * step_m - grid.radius_m(), place.latitude_deg,
                    place.longitude_deg);
      plane.Forward(transmitter.latitude_deg(), transmitter.longitude_deg(), place.latitude_deg,
                    place.longitude_deg, place.east_m, place.north_m);
      place.longitude_deg = unrolled_deg(place.longitude_deg, stop.longitude_deg());
      nodes_.push_back(place);
    }
  }
}

CellPlace CellPlaces::at(std::size_t cell) const {
  const double per_m = static_cast<double>(kNodes - 1) / (2.0 * grid_.radius_m());
  const double column = (grid_.east_m(cell) + grid_.radius_m()) * per_m;
  const double row = (grid_.north_m(cell) + grid_.radius_m()) * per_m;
  const auto west = std::min(static_cast<std::size_t>(column), kNodes - 2);
  const auto south = std::min(static_cast<std::size_t>(row), kNodes - 2);
  const double east_part = column - static_cast<double>(west);
  const CellPlace* const node = &nodes_[south * kNodes + west];
  return mixed(mixed(node[0], node[1], east_part), mixed(node[kNodes], node[kNodes + 1], east_part),
               row - static_cast<double>(south));
}

}  // namespace mastwise::reception
