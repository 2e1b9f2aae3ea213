#pragma once

#include "core/broadcast/station.hpp"

#include <string>
#include <string_view>
#include <vector>

// How the catalog finds by text and by place, apart from its database.
namespace mastwise::catalog_search {

// The texts by which a station is found.
struct Words {
  std::string networks;
  std::string programmes;
  std::string place;
  std::string channels;  // "rf23 v6 v6x1": RF channel, virtual channel, its major and minor
};
Words words_of(const Station& station);

// The full-text query for what a person typed, every word quoted; empty when there is none in it.
std::string match_query(std::string_view typed);

// A rectangle in degrees; west <= east.
struct Box {
  double south_deg;
  double north_deg;
  double west_deg;
  double east_deg;
};

// One or two boxes (two across the antimeridian) that hold every point within a geodesic distance.
// The bounds are those of the circle on the auxiliary sphere of reduced latitudes: a geodesic of
// length s spans at most s/b there, b the polar semi-axis, and a difference of longitude on the
// ellipsoid is at most that on the sphere [C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87
// (2013), equations 7 and 8].
std::vector<Box> boxes_around(const Position& centre, double distance_m);

}  // namespace mastwise::catalog_search
