#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <vector>

namespace mastwise::reception {

// A square of cells around a stop on its azimuthal equidistant plane: distances and bearings from
// the stop are true. Row 0 is the north edge, column 0 the west edge; cells count row by row.
// Values are those of the middle of each cell.
class AreaGrid {
 public:
  static constexpr std::size_t kMostCells = 1000;  // on a side
  static constexpr double kLargestRadius_m = 100e3;
  static constexpr double kLargestLatitude_deg = 85.0;

  // `radius_m` is half the square's side, within [100, 100,000]; `cells` on a side, within [2,
  // 1000]. Errors: values out of range, and a stop within 5 degrees of a pole.
  static Result<AreaGrid> around(Position stop, double radius_m, std::size_t cells);

  Position stop() const { return stop_; }
  double radius_m() const { return radius_m_; }
  std::size_t side() const { return cells_; }
  std::size_t size() const { return cells_ * cells_; }
  double cell_m() const { return 2.0 * radius_m_ / static_cast<double>(cells_); }

  // From the stop to the middle of the cell.
  double east_m(std::size_t cell) const;
  double north_m(std::size_t cell) const;
  double distance_m(std::size_t cell) const;
  Bearing<True> bearing(std::size_t cell) const;
  // Source: GeographicLib::Geodesic, by the destination of distance and bearing.
  Position position(std::size_t cell) const;

 private:
  AreaGrid(Position stop, double radius_m, std::size_t cells)
      : stop_(stop), radius_m_(radius_m), cells_(cells) {}

  Position stop_;
  double radius_m_;
  std::size_t cells_;
};

// The middle of a cell on the globe, and as distances east and north of the transmitter on the
// azimuthal equidistant plane of the transmitter: their hypotenuse is the geodesic's length, their
// angle its bearing at the transmitter.
struct CellPlace {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;  // within [-180 - 5, 180 + 5]
  double east_m = 0.0;
  double north_m = 0.0;
};

// Positions of all cells of a grid without a geodesic for each: exact at the nodes of a mesh of 33
// x 33 over the square, bilinear between them. For a radius of 50 km at 60 degrees of latitude they
// are within 0.5 m; the error grows with the square of the radius.
class CellPlaces {
 public:
  CellPlaces(const AreaGrid& grid, Position transmitter);
  CellPlace at(std::size_t cell) const;

 private:
  static constexpr std::size_t kNodes = 33;

  AreaGrid grid_;
  std::vector<CellPlace> nodes_;  // from south-west to north-east, row by row
};

}  // namespace mastwise::reception
