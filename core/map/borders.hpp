#pragma once

#include "core/geo/position.hpp"
#include "core/map/projection.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace mastwise::map {

enum class LineKind : std::uint8_t { Coast, CountryBorder, StateBorder, LakeShore };

// A piece of a coast, border or shore, of at most 96 points. A longer line continues in another
// piece that begins at the same point.
struct BorderLine {
  LineKind kind;
  std::vector<Position> points;  // at least two, to 0.001 degree
};

struct PlaneLine {
  LineKind kind;
  std::vector<PlanePoint> points;
  bool operator==(const PlaneLine&) const = default;
};

// Coasts and borders of the earth at 1:10 million, the borders of the states of the USA, and the
// shores of lakes and wide rivers; no provinces. Accuracy 100 m to 1 km, shores to 2 km: for
// display, not for surveying. A copy shares the data; any number of threads may read it.
class Borders {
 public:
  // Reads the bytes of borders.bin (layout: assets/borders/README); they need not outlive the call.
  // Errors: another file type, a value out of range, too few or too many bytes.
  static Result<Borders> load(std::span<const std::byte> bytes);

  // Every line within `radius_m` (0 to 20,100,000 m) of the center, and some just outside.
  std::vector<BorderLine> within(Position center, double radius_m) const;

  // The same around the map's center, on the map's plane. `radius_m` at most
  // Projection::kFarthestM; lines are cut at that bound.
  std::vector<PlaneLine> on_plane(const Projection& projection, double radius_m) const;

 private:
  struct Data;
  explicit Borders(std::shared_ptr<const Data> data) : data_(std::move(data)) {}
  std::shared_ptr<const Data> data_;
};

}  // namespace mastwise::map
