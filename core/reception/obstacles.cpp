#include "core/reception/obstacles.hpp"

#include "core/propagation/p1812/knife_edge.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace mastwise::reception {
namespace {

constexpr double kMetresTimesMegahertz = 299.792458;  // wavelength times frequency

// An end of a stretch of path: a point of the profile and what the ray touches there.
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

  // The edge with the greatest Fresnel parameter strictly between the ends.
  std::optional<Edge> worst(End from, End to) const;

 private:
  Edge edge_at(std::size_t point, End from, End to) const;

  const terrain::PathProfile& profile_;
  double frequency_mhz_;
};

// v rises with h |h| / (d1 d2), which spares the root at each point.
std::optional<Search::Edge> Search::worst(End from, End to) const {
  if (to.point < from.point + 2) return std::nullopt;
  const double* const heights_m = profile_.heights_m.data();
  const double intervals = static_cast<double>(to.point - from.point);
  const double rise_m = (to.amsl_m - from.amsl_m) / intervals;
  const double bulge = profile_.spacing_m * profile_.spacing_m / (2.0 * kRayEarthRadius_m);
  std::size_t found = from.point + 1;
  double greatest = -1e300;
  double done = 1.0;
  for (std::size_t point = from.point + 1; point < to.point; ++point, done += 1.0) {
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
  const double wavelength_m = kMetresTimesMegahertz / frequency_mhz;
  const double v =
      above_line_m * std::sqrt(2.0 * (near_m + far_m) / (wavelength_m * near_m * far_m));
  return p1812::knife_edge_loss_db(v);
}

Obstacles find_obstacles(const terrain::PathProfile& profile, double station_antenna_amsl_m,
                         double stop_antenna_amsl_m, double frequency_mhz) {
  Obstacles found;
  const Search search(profile, frequency_mhz);
  const End station{0, station_antenna_amsl_m};
  const End stop{profile.heights_m.size() - 1, stop_antenna_amsl_m};
  const auto add = [&found](const std::optional<Search::Edge>& edge) {
    if (edge && edge->obstacle.loss_db >= kLeastObstacle_db) found.add(edge->obstacle);
  };
  const auto main = search.worst(station, stop);
  add(main);
  if (main && main->obstacle.above_line_m > 0.0) {
    const End top{main->point, main->obstacle.ground_amsl_m};
    add(search.worst(station, top));
    add(search.worst(top, stop));
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Obstacle& a, const Obstacle& b) { return a.loss_db > b.loss_db; });
  return found;
}

}  // namespace mastwise::reception
