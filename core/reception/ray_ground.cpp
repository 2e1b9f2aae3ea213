#include "core/reception/ray_ground.hpp"

#include "core/geo/geodesic.hpp"

#include <span>

namespace mastwise::reception {
namespace {

// Offsets of the sets' points from multiples of the spacing, in spacings: the four surround it.
double set_offset(std::size_t set) {
  constexpr double kSets = RayPoint::kSets;
  return (static_cast<double>(set) + 0.5) / kSets - 0.5;
}

}  // namespace

RayPoint RayPoint::nearest(double distance_m) {
  const double spacings = distance_m / kSpacing_m + 0.5;
  const auto point = static_cast<std::size_t>(spacings);
  const double part = spacings - static_cast<double>(point);
  return {.set = static_cast<std::size_t>(part * static_cast<double>(kSets)), .point = point};
}

void RayGround::cut(const terrain::TileSource& tiles, Position transmitter, double foot_m,
                    Bearing<True> bearing, std::size_t set, std::size_t last_point) {
  const double from_m = set_offset(set) * RayPoint::kSpacing_m;
  const double length_m = static_cast<double>(last_point) * RayPoint::kSpacing_m;
  terrain::cut_profile(tiles, destination(transmitter, bearing, from_m),
                       destination(transmitter, bearing, from_m + length_m), profile_,
                       terrain::ProfileDetail::k90m);
  known_points_ = profile_.heights_m.size();
  for (const terrain::TerrainGap& gap : profile_.gaps) {
    const bool only_the_foot = gap.first_point == 0 && gap.points == 1;
    if (gap.bridged || only_the_foot) continue;
    known_points_ = gap.first_point;
    break;
  }
  profile_.heights_m.front() = foot_m;
  replaced_point_ = 0;
  replaced_height_m_ = foot_m;
}

std::optional<itm::TerrainProfile> RayGround::to(std::size_t point, double distance_m,
                                                 double ground_m) {
  if (point > known_points_) return std::nullopt;
  auto& heights_m = profile_.heights_m;
  heights_m[replaced_point_] = replaced_height_m_;
  replaced_point_ = point;
  replaced_height_m_ = heights_m[point];
  heights_m[point] = ground_m;
  return itm::TerrainProfile{.spacing_m = distance_m / static_cast<double>(point),
                             .heights_m = std::span<const double>(heights_m).first(point + 1)};
}

}  // namespace mastwise::reception
