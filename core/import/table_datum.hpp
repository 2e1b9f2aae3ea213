#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <memory>
#include <string_view>

struct pj_ctx;
struct PJconsts;

namespace mastwise {

// The datum of a table's coordinates.
enum class Datum : std::uint8_t { wgs84, nad83, nad27 };

// "WGS84", "NAD83", "NAD27"; parsing ignores case.
std::string_view to_text(Datum datum);
Result<Datum> parse_datum(std::string_view text);

// Shifts coordinates to WGS84 with PROJ, offline and with the installed grids.
// NAD83: PROJ's null shift on the North American mainland (EPSG:1188, stated accuracy 4 m), at most
// a few meters on the islands (EPSG:1251, 1252), and unchanged elsewhere.
// NAD27: if PROJ has a shift (stated accuracy some 10 m without grids), else refused: the unshifted
// position would be up to 500 m off.
class DatumShift {
 public:
  // Error if PROJ's database cannot be found.
  static Result<DatumShift> to_wgs84(Datum from);
  // Degrees, north and east positive, as in Position::at_deg.
  Result<Position> shift(double latitude_deg, double longitude_deg) const;

 private:
  struct ContextCloser {
    void operator()(pj_ctx* context) const;
  };
  struct ShiftCloser {
    void operator()(PJconsts* shift) const;
  };
  explicit DatumShift(Datum from) : from_(from) {}

  Datum from_;
  std::unique_ptr<pj_ctx, ContextCloser> context_ = {};
  std::unique_ptr<PJconsts, ShiftCloser> shift_ = {};
};

}  // namespace mastwise
