#include "core/terrain/geodesic_track.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <GeographicLib/Geodesic.hpp>

namespace mastwise::terrain {
namespace {

using GeographicLib::Geodesic;

constexpr double kDegreesPerRadian = 180.0 / std::numbers::pi;
constexpr double kLongestSegment_m = 50'000.0;
// A segment this fraction of the distance to the pole keeps the cubic within some millimeters:
// longitude behaves like atan(s / pole distance), whose fourth derivative determines the error.
constexpr double kSegmentPerPoleDistance = 1.0 / 64.0;
constexpr double kShortestDegree_m = 110'574.0;  // of latitude, at the equator of WGS84

// The cubic through two values with the given slopes, for t from 0 to 1.
std::array<double, 4> hermite(double start, double end, double start_slope, double end_slope) {
  const double rise = end - start;
  return {start, start_slope, 3.0 * rise - 2.0 * start_slope - end_slope,
          start_slope + end_slope - 2.0 * rise};
}

}  // namespace

GeodesicTrack::GeodesicTrack(Position from, Position to)
    : line_(Geodesic::WGS84().InverseLine(from.latitude_deg(), from.longitude_deg(),
                                          to.latitude_deg(), to.longitude_deg())),
      far_latitude_deg_(std::max(std::fabs(from.latitude_deg()), std::fabs(to.latitude_deg()))) {
  cut(1);
}

Bearing<True> GeodesicTrack::bearing_at_start() const {
  return Bearing<True>::degrees(line_.Azimuth());
}

Bearing<True> GeodesicTrack::bearing_back() const {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  double azimuth_deg = 0.0;
  line_.Position(distance_m(), latitude_deg, longitude_deg, azimuth_deg);
  return Bearing<True>::degrees(azimuth_deg).reciprocal();
}

void GeodesicTrack::cut(std::size_t intervals) {
  intervals_ = std::max<std::size_t>(intervals, 1);
  done_ = 0;
  node_ = node_at(0.0);
  const double pole_distance_m =
      (90.0 - far_latitude_deg_) * kShortestDegree_m - distance_m() / 2.0;
  const double longest_m = std::min(kLongestSegment_m, pole_distance_m * kSegmentPerPoleDistance);
  const double interval_m = distance_m() / static_cast<double>(intervals_);
  stride_ = longest_m > interval_m && interval_m > 0.0
                ? static_cast<std::size_t>(longest_m / interval_m)
                : 1;
}

bool GeodesicTrack::next(TrackSegment& segment) {
  if (done_ == intervals_) return false;
  segment.first_point = done_;
  segment.intervals = std::min(stride_, intervals_ - done_);
  done_ += segment.intervals;
  const double interval_m = distance_m() / static_cast<double>(intervals_);
  const double length_m = interval_m * static_cast<double>(segment.intervals);
  const Node start = node_;
  node_ = node_at(distance_m() * static_cast<double>(done_) / static_cast<double>(intervals_));
  segment.north_deg = hermite(start.point.north_deg, node_.point.north_deg,
                              start.north_deg_per_m * length_m, node_.north_deg_per_m * length_m);
  segment.east_deg = hermite(start.point.east_deg, node_.point.east_deg,
                             start.east_deg_per_m * length_m, node_.east_deg_per_m * length_m);
  return true;
}

GeodesicTrack::Node GeodesicTrack::node_at(double distance_m) const {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  double azimuth_deg = 0.0;
  double unused = 0.0;
  constexpr unsigned kWanted = Geodesic::LATITUDE | Geodesic::LONGITUDE | Geodesic::AZIMUTH |
                               Geodesic::DISTANCE_IN | Geodesic::LONG_UNROLL;
  line_.GenPosition(false, distance_m, kWanted, latitude_deg, longitude_deg, azimuth_deg, unused,
                    unused, unused, unused, unused);

  // Radii of curvature along the meridian and along the parallel, Bomford, Geodesy, 4th ed., A.1.
  const double flattening = line_.Flattening();
  const double eccentricity_squared = flattening * (2.0 - flattening);
  const double latitude_rad = latitude_deg / kDegreesPerRadian;
  const double azimuth_rad = azimuth_deg / kDegreesPerRadian;
  const double sine = std::sin(latitude_rad);
  const double w_squared = 1.0 - eccentricity_squared * sine * sine;
  const double prime_vertical_m = line_.EquatorialRadius() / std::sqrt(w_squared);
  const double meridian_m = prime_vertical_m * (1.0 - eccentricity_squared) / w_squared;
  return {.point = GlobePoint::of_deg(latitude_deg, longitude_deg),
          .north_deg_per_m = std::cos(azimuth_rad) / meridian_m * kDegreesPerRadian,
          .east_deg_per_m = std::sin(azimuth_rad) / (prime_vertical_m * std::cos(latitude_rad)) *
                            kDegreesPerRadian};
}

}  // namespace mastwise::terrain
