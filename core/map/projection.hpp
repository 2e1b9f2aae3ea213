#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <memory>
#include <optional>

struct PJconsts;
struct pj_ctx;

namespace mastwise::map {

// A point of the map's plane, in meters east and north of the center.
struct PlanePoint {
  double east_m;
  double north_m;
  bool operator==(const PlanePoint&) const = default;
};

// The map around a stop: straight lines from the center are geodesics, with their true bearing and
// length. The azimuthal equidistant projection of the WGS84 ellipsoid by PROJ (method "aeqd";
// Snyder, USGS Professional Paper 1395, 1987, chapter 25). Away from the center directions and
// lengths differ: across the line of sight by about distance^2 / (6 R^2), 0.03 % at 250 km.
//
// Each object has a separate PROJ context; only one thread at a time may use it.
class Projection {
 public:
  // Beyond this distance from the center, about a quarter of the way around the earth, the plane
  // tears things apart; such points are not on the map.
  static constexpr double kFarthestM = 10'000e3;

  // Error: PROJ refuses (no memory).
  static Result<Projection> around(Position center);

  Position center() const { return center_; }
  // std::nullopt beyond kFarthestM.
  std::optional<PlanePoint> to_plane(Position position) const;
  // std::nullopt beyond kFarthestM and for NaN.
  std::optional<Position> to_earth(PlanePoint point) const;

 private:
  struct CloseContext {
    void operator()(pj_ctx* context) const;
  };
  struct CloseDefinition {
    void operator()(PJconsts* definition) const;
  };
  explicit Projection(Position center) : center_(center) {}

  Position center_;
  std::unique_ptr<pj_ctx, CloseContext> context_;
  std::unique_ptr<PJconsts, CloseDefinition> definition_;  // destroyed before its context
};

}  // namespace mastwise::map
