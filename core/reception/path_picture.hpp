#pragma once

#include "core/reception/prospect.hpp"
#include "core/reception/survey.hpp"

#include <optional>
#include <vector>

namespace mastwise::reception {

// One point of the path from the stop (first) to the station (last). Heights are above mean sea
// level plus the bulge of an earth of 4/3 radius, so that the ray is a straight line.
struct PicturePoint {
  double distance_m = 0.0;              // from the stop
  std::optional<double> ground_m = {};  // std::nullopt without terrain
  // The ray between the antennas, and the lower edge of 0.6 of the first Fresnel zone around it;
  // std::nullopt if the height of the station's antenna is unknown.
  std::optional<double> line_m = {};
  std::optional<double> fresnel_m = {};
  bool operator==(const PicturePoint&) const = default;
};

struct PictureObstacle {
  Obstacle obstacle = {};
  double ground_m = 0.0;  // its top in the picture's heights
  bool operator==(const PictureObstacle&) const = default;
};

// The path of one prospect, ready to draw.
struct PathPicture {
  double distance_m = 0.0;
  double frequency_mhz = 0.0;
  std::vector<PicturePoint> points = {};  // evenly spaced, at most `most_points` of them
  std::vector<PictureObstacle> obstacles = {};
  // In the picture's heights, which are above mean sea level at both ends.
  double stop_antenna_m = 0.0;
  std::optional<double> station_antenna_m = {};
  // Surroundings at the stop, above ground; the receiver defines their kind. Those at the
  // transmitter are unknown; a mast is taller.
  double stop_clutter_m = 0.0;
  double terrain_coverage = 0.0;
  bool operator==(const PathPicture&) const = default;
};

// The picture, with resampled ground: each point is the highest ground of its stretch, so that no
// ridge is lost. std::nullopt if the stop is at the station or has no terrain. `most_points` at
// least 2.
std::optional<PathPicture> path_picture(const Receiver& receiver, const Prospect& prospect,
                                        const terrain::TileSource& tiles, std::size_t most_points,
                                        Scratch& scratch);

}  // namespace mastwise::reception
