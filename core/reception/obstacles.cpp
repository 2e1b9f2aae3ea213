#include "core/reception/obstacles.hpp"

#include "core/propagation/p1812/knife_edge.hpp"
#include "core/propagation/wavelength.hpp"

#include <cmath>
#include <optional>

namespace mastwise::reception {
namespace {

constexpr double kSameHill_m = 500.0;  // closer edges count as one

// An end of a stretch of path: a point of the profile and the height of the ray there.
struct End {
  std::size_t point;
  double amsl_m;
};

class Search {
 public:
  Search(const terrain::PathProfile& profile, double frequency_mhz)
      : profile_(profile), frequency_mhz_(frequency_mhz) {}

  struct Edge {
    std::size_t point = 0;
    Obstacle obstacle = {};
  };

  // The edge with the greatest Fresnel parameter between the ends, at least this many points from
  // either.
  std::optional<Edge> worst(End from, std::size_t from_apart, End to, std::size_t to_apart) const;

 private:
  Edge edge_at(std::size_t point, End from, End to) const;

  const terrain::PathProfile& profile_;
  double frequency_mhz_;
};

// v increases with h |h| / (d1 d2), which avoids the root at each point.
std::optional<Search::Edge> Search::worst(End from, std::size_t from_apart, End to,
                                          std::size_t to_apart) const {
  const std::size_t first = from.point + from_apart;
  if (to.point < first + to_apart) return std::nullopt;
  const std::size_t last = to.point - to_apart;
  const double* const heights_m = profile_.heights_m.data();
  const double intervals = static_cast<double>(to.point - from.point);
  const double rise_m = (to.amsl_m - from.amsl_m) / intervals;
  const double bulge = profile_.spacing_m * profile_.spacing_m / (2.0 * kRayEarthRadius_m);
  std::size_t found = first;
  double greatest = -1e300;
  double done = static_cast<double>(from_apart);
  for (std::size_t point = first; point <= last; ++point, done += 1.0) {
    const double product = done * (intervals - done);
    const double above_m = heights_m[point] + bulge * product - (from.amsl_m + rise_m * done);
    const double measure = above_m * std::fabs(above_m);
    if (measure > greatest * product) {
      greatest = measure / product;
      found = point;
    }
  }
  return edge_at(found, from, to);
}

Search::Edge Search::edge_at(std::size_t point, End from, End to) const {
  const double near_m = static_cast<double>(point - from.point) * profile_.spacing_m;
  const double far_m = static_cast<double>(to.point - point) * profile_.spacing_m;
  const double ground_m = profile_.heights_m[point];
  const double chord_m = from.amsl_m + (to.amsl_m - from.amsl_m) * near_m / (near_m + far_m);
  const double above_m = ground_m + bulge_m(near_m, far_m) - chord_m;
  const double from_stop_m =
      static_cast<double>(profile_.heights_m.size() - 1 - point) * profile_.spacing_m;
  return {.point = point,
          .obstacle = {.distance_m = from_stop_m,
                       .ground_amsl_m = ground_m,
                       .above_line_m = above_m,
                       .loss_db = edge_loss_db(above_m, near_m, far_m, frequency_mhz_),
                       .earth_curve = above_m > 0.0 && ground_m <= chord_m}};
}

}  // namespace

double edge_loss_db(double above_line_m, double near_m, double far_m, double frequency_mhz) {
  const double wave_m = wavelength_m(frequency_mhz);
  const double v = above_line_m * std::sqrt(2.0 * (near_m + far_m) / (wave_m * near_m * far_m));
  return p1812::knife_edge_loss_db(v);
}

Obstacles find_obstacles(const terrain::PathProfile& profile, double station_antenna_amsl_m,
                         double stop_antenna_amsl_m, double frequency_mhz) {
  Obstacles found;
  const Search search(profile, frequency_mhz);
  const End station{0, station_antenna_amsl_m};
  const End stop{profile.heights_m.size() - 1, stop_antenna_amsl_m};
  const auto main = search.worst(station, 1, stop, 1);
  if (!main || main->obstacle.loss_db < kLeastObstacle_db) return found;
  found.add(main->obstacle);
  if (main->obstacle.above_line_m <= 0.0) return found;
  const auto add = [&found](const std::optional<Search::Edge>& edge) {
    if (edge && edge->obstacle.above_line_m > 0.0) found.add(edge->obstacle);
  };
  const auto apart = static_cast<std::size_t>(std::ceil(kSameHill_m / profile.spacing_m));
  const End top{main->point, main->obstacle.ground_amsl_m};
  add(search.worst(station, 1, top, apart));
  add(search.worst(top, apart, stop, 1));
  return found;
}

}  // namespace mastwise::reception
