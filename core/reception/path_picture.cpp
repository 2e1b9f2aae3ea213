#include "core/reception/path_picture.hpp"

#include "core/propagation/wavelength.hpp"
#include "core/reception/obstacles.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::reception {
namespace {

constexpr double kFresnelShare = 0.6;

// Radius of the first Fresnel zone, m [Recommendation ITU-R P.526 section 2, (2)].
double fresnel_radius_m(double from_stop_m, double to_station_m, double frequency_mhz) {
  const double wave_m = wavelength_m(frequency_mhz);
  return std::sqrt(wave_m * from_stop_m * to_station_m / (from_stop_m + to_station_m));
}

class Drawer {
 public:
  Drawer(const terrain::PathProfile& profile, PathPicture& picture)
      : profile_(profile), picture_(picture) {}

  void draw(std::size_t most_points);

 private:
  PicturePoint frame_at(double from_stop_m) const;
  std::optional<double> highest_m(std::size_t first, std::size_t end) const;

  const terrain::PathProfile& profile_;  // from the station to the stop
  PathPicture& picture_;
};

PicturePoint Drawer::frame_at(double from_stop_m) const {
  PicturePoint point{.distance_m = from_stop_m};
  if (!picture_.station_antenna_m) return point;
  const double part = from_stop_m / picture_.distance_m;
  point.line_m =
      picture_.stop_antenna_m + part * (*picture_.station_antenna_m - picture_.stop_antenna_m);
  point.fresnel_m = *point.line_m -
                    kFresnelShare * fresnel_radius_m(from_stop_m, picture_.distance_m - from_stop_m,
                                                     picture_.frequency_mhz);
  return point;
}

// The highest known ground of points [first, end) counted from the stop, with the bulge.
std::optional<double> Drawer::highest_m(std::size_t first, std::size_t end) const {
  std::optional<double> highest;
  const std::size_t last = profile_.heights_m.size() - 1;
  for (std::size_t i = first; i < end; ++i) {
    const double ground_m = profile_.heights_m[last - i];
    if (std::isnan(ground_m)) continue;
    const double lifted_m = ground_m + bulge_m(static_cast<double>(i) * profile_.spacing_m,
                                               static_cast<double>(last - i) * profile_.spacing_m);
    highest = std::max(highest.value_or(lifted_m), lifted_m);
  }
  return highest;
}

void Drawer::draw(std::size_t most_points) {
  const std::size_t all = profile_.heights_m.size();
  const std::size_t points = std::min(most_points, all);
  for (std::size_t i = 0; i < points; ++i) {
    const double part = static_cast<double>(i) / static_cast<double>(points - 1);
    PicturePoint point = frame_at(part * picture_.distance_m);
    // The profile points nearest to this one; the ends represent themselves.
    const auto border = [&](std::size_t half_steps) {
      return (half_steps * (all - 1) + points - 1) / (2 * (points - 1));
    };
    const bool end = i == 0 || i + 1 == points;
    const std::size_t first = i == 0 ? 0 : end ? all - 1 : border(2 * i - 1);
    const std::size_t behind = end ? first + 1 : border(2 * i + 1);
    point.ground_m = highest_m(first, std::max(behind, first + 1));
    picture_.points.push_back(point);
  }
}

}  // namespace

std::optional<PathPicture> path_picture(const Receiver& receiver, const Prospect& prospect,
                                        const terrain::TileSource& tiles, std::size_t most_points,
                                        Scratch& scratch) {
  terrain::cut_profile(tiles, prospect.station.position, receiver.position, scratch.profile);
  const terrain::PathProfile& profile = scratch.profile;
  const double stop_ground_m = profile.heights_m.back();
  if (profile.distance_m <= 0.0 || most_points < 2 || std::isnan(stop_ground_m)) {
    return std::nullopt;
  }
  const Outlook& outlook = prospect.outlook;
  PathPicture picture;
  picture.distance_m = profile.distance_m;
  picture.frequency_mhz = outlook.frequency_mhz;
  picture.terrain_coverage = profile.coverage();
  picture.stop_antenna_m = stop_ground_m + receiver.gear.height_m;
  picture.stop_clutter_m = figures(receiver.surroundings).clutter_height_m;
  if (outlook.mode == PathMode::point_to_point) {
    picture.station_antenna_m = profile.heights_m.front() + *outlook.transmitter_height_m;
  } else {
    picture.station_antenna_m = prospect.station.antenna_amsl_m;
  }
  picture.points.reserve(most_points);
  Drawer(profile, picture).draw(most_points);
  for (const Obstacle& obstacle : outlook.obstacles) {
    picture.obstacles.push_back(
        {.obstacle = obstacle,
         .ground_m = obstacle.ground_amsl_m +
                     bulge_m(obstacle.distance_m, profile.distance_m - obstacle.distance_m)});
  }
  return picture;
}

}  // namespace mastwise::reception
