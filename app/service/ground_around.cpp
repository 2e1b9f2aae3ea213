#include "app/service/ground_around.hpp"

#include "core/geo/geodesic.hpp"
#include "core/map/shore.hpp"
#include "core/terrain/squares.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <numbers>

namespace mastwise {
namespace {

using map::PlanePoint;
using terrain::TileCell;

std::optional<map::Projection> plane_of(const std::vector<Position>& way) {
  const auto [south, north] = std::minmax_element(
      way.begin(), way.end(),
      [](const Position& a, const Position& b) { return a.latitude_deg() < b.latitude_deg(); });
  // Longitudes counted from the first: a way may cross the date line.
  double west_deg = 0.0, east_deg = 0.0;
  for (const Position& one : way) {
    const double from_first_deg =
        fold_half_circle_deg(one.longitude_deg() - way.front().longitude_deg());
    west_deg = std::min(west_deg, from_first_deg);
    east_deg = std::max(east_deg, from_first_deg);
  }
  const auto middle = Position::at_deg(
      (south->latitude_deg() + north->latitude_deg()) / 2.0,
      fold_half_circle_deg(way.front().longitude_deg() + (west_deg + east_deg) / 2.0));
  if (!middle) return std::nullopt;
  auto projection = map::Projection::around(*middle);
  return projection ? std::optional(*std::move(projection)) : std::nullopt;
}

std::optional<PlanePoint> corner(const map::Projection& plane, int lat_deg, int lon_deg) {
  const auto at = Position::at_deg(lat_deg, fold_half_circle_deg(lon_deg));
  return at ? plane.to_plane(*at) : std::nullopt;
}

std::optional<std::array<PlanePoint, 4>> corners_of(const map::Projection& plane, TileCell cell) {
  std::array<PlanePoint, 4> corners{};
  const std::array<std::array<int, 2>, 4> kCorners{{{0, 0}, {0, 1}, {1, 1}, {1, 0}}};
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const auto at = corner(plane, cell.south_deg + kCorners[i][0], cell.west_deg + kCorners[i][1]);
    if (!at) return std::nullopt;
    corners[i] = *at;
  }
  return corners;
}

double distance_m(PlanePoint point, PlanePoint from, PlanePoint to) {
  const double east = to.east_m - from.east_m, north = to.north_m - from.north_m;
  const double length2 = east * east + north * north;
  const double along = length2 == 0.0 ? 0.0
                                      : std::clamp(((point.east_m - from.east_m) * east +
                                                    (point.north_m - from.north_m) * north) /
                                                       length2,
                                                   0.0, 1.0);
  return std::hypot(point.east_m - from.east_m - along * east,
                    point.north_m - from.north_m - along * north);
}

// The outline of all that is within `reach_m` of the way: pieces of circles around its points and
// of lines beside its legs, where no other part of the way is nearer.
class Outline {
 public:
  Outline(const std::vector<PlanePoint>& way, double reach_m) : way_(way), reach_m_(reach_m) {}

  std::vector<GroundLine> lines() {
    constexpr int kPieces = 96;
    for (const PlanePoint& at : way_) {
      for (int i = 0; i < kPieces; ++i) {
        keep(on_circle(at, i, kPieces), on_circle(at, i + 1, kPieces));
      }
    }
    for (std::size_t i = 1; i < way_.size(); ++i) beside(way_[i - 1], way_[i]);
    return std::move(lines_);
  }

 private:
  PlanePoint on_circle(PlanePoint at, int piece, int pieces) const {
    const double angle = 2.0 * std::numbers::pi * piece / pieces;
    return {at.east_m + reach_m_ * std::cos(angle), at.north_m + reach_m_ * std::sin(angle)};
  }
  void beside(PlanePoint from, PlanePoint to) {
    constexpr int kPieces = 24;
    const double length = std::hypot(to.east_m - from.east_m, to.north_m - from.north_m);
    if (length == 0.0) return;
    const PlanePoint along{(to.east_m - from.east_m) / kPieces,
                           (to.north_m - from.north_m) / kPieces};
    for (const double side : {reach_m_ / length, -reach_m_ / length}) {
      const PlanePoint start{from.east_m - side * (to.north_m - from.north_m),
                             from.north_m + side * (to.east_m - from.east_m)};
      for (int i = 0; i < kPieces; ++i) {
        keep({start.east_m + i * along.east_m, start.north_m + i * along.north_m},
             {start.east_m + (i + 1) * along.east_m, start.north_m + (i + 1) * along.north_m});
      }
    }
  }
  void keep(PlanePoint from, PlanePoint to) {
    const PlanePoint middle{(from.east_m + to.east_m) / 2.0, (from.north_m + to.north_m) / 2.0};
    // A chord's middle is a little inside its circle: 0.05 % with 96 pieces.
    constexpr double kNotInside = 0.998;
    double nearest_m = distance_m(middle, way_.front(), way_.front());
    for (std::size_t i = 1; i < way_.size(); ++i) {
      nearest_m = std::min(nearest_m, distance_m(middle, way_[i - 1], way_[i]));
    }
    if (nearest_m >= kNotInside * reach_m_) lines_.push_back({from, to});
  }

  const std::vector<PlanePoint>& way_;
  double reach_m_;
  std::vector<GroundLine> lines_;
};

// Which squares lie wholly at sea, by coasts around the stop.
class Sea {
 public:
  Sea(const map::Borders* coasts, Position stop, const std::vector<TileCell>& cells) : stop_(stop) {
    double farthest_m = 0.0;
    for (const TileCell cell : cells) {
      for (const Position& place : places_in(cell)) {
        farthest_m = std::max(farthest_m, path_between(stop, place).distance_m);
      }
    }
    constexpr double kMost_m = 2'000e3, kMargin_m = 10e3;
    if (coasts == nullptr || farthest_m + kMargin_m > kMost_m) return;
    shore_ = map::Shore::around(*coasts, stop, farthest_m + kMargin_m);
  }

  bool covers(TileCell cell) const {
    if (!shore_) return false;
    const auto places = places_in(cell);
    return std::all_of(places.begin(), places.end(), [&](const Position& place) {
      const PathBetween path = path_between(stop_, place);
      return shore_->at_sea(path.bearing, path.distance_m);
    });
  }
  void forget() { shore_.reset(); }

 private:
  static std::vector<Position> places_in(TileCell cell) {
    constexpr int kPlaces = 5;
    std::vector<Position> places;
    for (int i = 0; i < kPlaces * kPlaces; ++i) {
      const auto place = Position::at_deg(cell.south_deg + (i / kPlaces + 0.5) / kPlaces,
                                          cell.west_deg + (i % kPlaces + 0.5) / kPlaces);
      if (place) places.push_back(*place);
    }
    return places;
  }

  Position stop_;
  std::optional<map::Shore> shore_;
};

// The near squares, and all others of the box around them.
std::map<TileCell, double> squares_shown(const std::vector<terrain::NearSquare>& near,
                                         Position stop) {
  std::map<TileCell, double> shown;
  const int zero_deg = terrain::cell_of(stop).west_deg;
  const auto from_stop = [&](int west_deg) { return (west_deg - zero_deg + 540) % 360 - 180; };
  int south = 90, north = -91, west = 180, east = -181;
  for (const terrain::NearSquare& square : near) {
    south = std::min(south, square.cell.south_deg);
    north = std::max(north, square.cell.south_deg);
    west = std::min(west, from_stop(square.cell.west_deg));
    east = std::max(east, from_stop(square.cell.west_deg));
  }
  for (int lat = south; lat <= north; ++lat) {
    for (int lon = west; lon <= east; ++lon) {
      shown[{lat, (lon + zero_deg + 540) % 360 - 180}] = 0.0;
    }
  }
  for (const terrain::NearSquare& square : near) shown[square.cell] = square.near_km2;
  return shown;
}

}  // namespace

std::optional<GroundAround> ground_around(const std::vector<Position>& way,
                                          const std::set<TileCell>& terrain,
                                          const std::set<TileCell>& cover,
                                          const map::Borders* coasts) {
  if (way.empty()) return std::nullopt;
  const auto plane = plane_of(way);
  if (!plane) return std::nullopt;
  const auto shown = squares_shown(terrain::squares_near(way, kNearGround_m), way.front());
  std::vector<TileCell> cells;
  for (const auto& [cell, near_km2] : shown) cells.push_back(cell);
  Sea sea(coasts, way.front(), cells);
  // A tile is made of land: then the stop itself is off the land by these coasts.
  if (std::any_of(cells.begin(), cells.end(),
                  [&](TileCell cell) { return terrain.contains(cell) && sea.covers(cell); })) {
    sea.forget();
  }
  GroundAround around;
  for (const auto& [cell, near_km2] : shown) {
    const auto corners = corners_of(*plane, cell);
    if (!corners) continue;
    around.squares.push_back({.cell = terrain::cell_name(cell),
                              .held = terrain.contains(cell) ? SquareHeld::Held
                                      : sea.covers(cell)     ? SquareHeld::Sea
                                                             : SquareHeld::Missing,
                              .land_cover = cover.contains(cell),
                              .near_km2 = near_km2,
                              .corners = *corners});
  }
  for (const Position& place : way) {
    if (const auto at = plane->to_plane(place)) around.way.push_back(*at);
  }
  if (around.way.empty()) return std::nullopt;
  around.reach = Outline(around.way, kNearGround_m).lines();
  return around;
}

DiskUse disk_use(const std::vector<std::string>& ground_folders, const std::string& catalog_path) {
  namespace fs = std::filesystem;
  std::error_code failed;
  DiskUse use;
  for (const std::string& folder : ground_folders) {
    if (folder.empty()) continue;
    const auto options = fs::directory_options::skip_permission_denied;
    for (fs::recursive_directory_iterator at(folder, options, failed), end; !failed && at != end;
         at.increment(failed)) {
      std::error_code unreadable;
      if (!at->is_regular_file(unreadable)) continue;
      const auto bytes = at->file_size(unreadable);
      if (!unreadable) use.ground_bytes += bytes;
    }
  }
  for (const char* const part : {"", "-wal"}) {
    const auto bytes = fs::file_size(catalog_path + part, failed);
    if (!failed) use.station_bytes += bytes;
  }
  const auto space = fs::space(fs::path(catalog_path).parent_path(), failed);
  if (!failed) use.free_bytes = space.available;
  return use;
}

}  // namespace mastwise
