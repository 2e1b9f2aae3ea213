#include "core/map/projection.hpp"

#include <cmath>

#include <fmt/format.h>
#include <proj.h>

namespace mastwise::map {

void Projection::CloseContext::operator()(pj_ctx* context) const {
  proj_context_destroy(context);
}

void Projection::CloseDefinition::operator()(PJconsts* definition) const {
  proj_destroy(definition);
}

Result<Projection> Projection::around(Position center) {
  Projection projection(center);
  projection.context_.reset(proj_context_create());
  proj_log_level(projection.context_.get(), PJ_LOG_NONE);
  proj_context_set_enable_network(projection.context_.get(), 0);
  projection.definition_.reset(
      proj_create(projection.context_.get(),
                  fmt::format("+proj=aeqd +ellps=WGS84 +lat_0={:.12f} +lon_0={:.12f}",
                              center.latitude_deg(), center.longitude_deg())
                      .c_str()));
  if (!projection.definition_) {
    return Error{.what = "cannot set up the map projection",
                 .remedy = "install PROJ again, 9.1 or later"};
  }
  return projection;
}

std::optional<PlanePoint> Projection::to_plane(Position position) const {
  const PJ_COORD plane = proj_trans(definition_.get(), PJ_FWD,
                                    proj_coord(proj_torad(position.longitude_deg()),
                                               proj_torad(position.latitude_deg()), 0.0, HUGE_VAL));
  if (!(std::hypot(plane.xy.x, plane.xy.y) <= kFarthestM)) return std::nullopt;
  return PlanePoint{.east_m = plane.xy.x, .north_m = plane.xy.y};
}

std::optional<Position> Projection::to_earth(PlanePoint point) const {
  if (!(std::hypot(point.east_m, point.north_m) <= kFarthestM)) return std::nullopt;
  const PJ_COORD earth =
      proj_trans(definition_.get(), PJ_INV, proj_coord(point.east_m, point.north_m, 0.0, HUGE_VAL));
  const auto position = Position::at_deg(proj_todeg(earth.lp.phi), proj_todeg(earth.lp.lam));
  if (!position) return std::nullopt;
  return *position;
}

}  // namespace mastwise::map
