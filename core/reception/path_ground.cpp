#include "core/reception/path_ground.hpp"

#include "core/landcover/cover_profile.hpp"
#include "core/reception/calibration.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise::reception {
namespace {

using p1812::Zone;

bool in_sea(std::span<const map::SeaStretch> sea, double at_m) {
  return std::any_of(sea.begin(), sea.end(), [at_m](const map::SeaStretch& stretch) {
    return at_m >= stretch.from_m && at_m <= stretch.to_m;
  });
}

void find_zones(const itm::TerrainProfile& terrain, const AlongShore& along, GroundCover& cover) {
  constexpr double kSeaLevel_m = 1.0, kCoastalLand_m = 100.0;
  constexpr double kStep_m = 5e3;
  const std::size_t points = terrain.heights_m.size();
  cover.zones.resize(points);
  bool coastal = false;
  double looked_at_m = -kStep_m;
  for (std::size_t from_center = 0; from_center < points; ++from_center) {
    const std::size_t i = along.center_is_last_point ? points - 1 - from_center : from_center;
    const double at_m = static_cast<double>(from_center) * terrain.spacing_m;
    if (at_m >= looked_at_m + kStep_m) {
      coastal = along.shore.coast_near(along.bearing, at_m);
      looked_at_m = at_m;
    }
    const double height_m = terrain.heights_m[i];
    if (height_m <= kSeaLevel_m && in_sea(cover.sea, at_m)) {
      cover.zones[i] = Zone::sea;
      cover.clutter_m[i] = 0.0;
    } else {
      cover.zones[i] = coastal && height_m < kCoastalLand_m ? Zone::coastal_land : Zone::inland;
    }
  }
}

}  // namespace

void lay_clutter(const landcover::CoverSource* source, const terrain::PathProfile& profile,
                 GroundCover& cover) {
  const std::size_t points = profile.heights_m.size();
  if (source == nullptr || landcover::clutter_along(*source, profile, cover.clutter_m) == 0) {
    cover.clutter_m.assign(points, kUsualClutter_m);
    return;
  }
  for (double& height_m : cover.clutter_m) {
    if (std::isnan(height_m)) height_m = kUsualClutter_m;
  }
}

void lay_sea(std::span<const map::SeaStretch> sea, bool from_last_point,
             terrain::PathProfile& profile) {
  if (sea.empty() || profile.gaps.empty()) return;
  const std::size_t last = profile.heights_m.size() - 1;
  std::vector<terrain::TerrainGap> left;
  for (const terrain::TerrainGap& gap : profile.gaps) {
    bool going_on = false;
    for (std::size_t i = gap.first_point; i < gap.first_point + gap.points; ++i) {
      const bool known = !std::isnan(profile.heights_m[i]);
      const auto points = static_cast<double>(from_last_point ? last - i : i);
      if (!known && in_sea(sea, points * profile.spacing_m)) {
        profile.heights_m[i] = 0.0;
        going_on = false;
        continue;
      }
      if (!going_on) {
        left.push_back({.first_point = i, .cause = gap.cause, .bridged = gap.bridged});
      }
      ++left.back().points;
      going_on = true;
    }
  }
  profile.gaps = std::move(left);
}

PathGround with_cover(const itm::TerrainProfile& terrain, const std::optional<AlongShore>& along,
                      GroundCover& cover) {
  const std::size_t points = terrain.heights_m.size();
  PathGround ground{.terrain = terrain, .clutter_m = std::span(cover.clutter_m).first(points)};
  if (!along) return ground;
  find_zones(terrain, *along, cover);
  ground.zones = cover.zones;
  const auto first = std::find(cover.zones.begin(), cover.zones.end(), Zone::sea);
  if (first == cover.zones.end()) return ground;
  const auto last = std::find(cover.zones.rbegin(), cover.zones.rend(), Zone::sea);
  const double spacing_km = terrain.spacing_m / 1000.0;
  ground.station_coast_km = spacing_km * static_cast<double>(first - cover.zones.begin());
  ground.stop_coast_km = spacing_km * static_cast<double>(last - cover.zones.rbegin());
  ground.sea_share =
      static_cast<double>(std::count(cover.zones.begin(), cover.zones.end(), Zone::sea)) /
      static_cast<double>(points);
  return ground;
}

}  // namespace mastwise::reception
