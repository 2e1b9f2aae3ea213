#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <memory>
#include <string_view>

struct pj_ctx;
struct PJconsts;

namespace mastwise {

// A square of the British National Grid.
struct OsSquare {
  double easting_m = 0.0, northing_m = 0.0;  // of its southwest corner
  double size_m = 1.0;                       // 1 to 100,000
};

// Reads a grid reference: two letters for the square of 100 km, then as many figures for the
// easting as for the northing, 0 to 5 each, with or without blanks, in any case: "SU 387 148",
// "TG5140913177". The letters count from the false origin as the Ordnance Survey publishes ("A
// guide to coordinate systems in Great Britain", section 7.3). Errors: letters without a
// square in the grid, an odd number of figures, anything else.
Result<OsSquare> parse_os_grid(std::string_view text);

// The grid on WGS84 by PROJ (EPSG:27700), offline. Without the Survey's grid of shifts, OSTN15, it
// uses one transformation for all of Britain, whose stated accuracy is 2 m (EPSG:1314); the
// Survey's own guide says about 5 m. With the grid installed, PROJ takes that.
class OsGrid {
 public:
  // Error if PROJ's database cannot be found.
  static Result<OsGrid> open();
  // The middle of the square.
  Result<Position> position(const OsSquare& square) const;

 private:
  struct ContextCloser {
    void operator()(pj_ctx* context) const;
  };
  struct ShiftCloser {
    void operator()(PJconsts* shift) const;
  };
  OsGrid() = default;

  std::unique_ptr<pj_ctx, ContextCloser> context_ = {};
  std::unique_ptr<PJconsts, ShiftCloser> shift_ = {};
};

}  // namespace mastwise
