#include "core/map/shore.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::map {
namespace {

constexpr double kNearCoast_m = 50e3;  // [Recommendation ITU-R P.1812 table 2, coastal land]
constexpr double kTurn_rad = 2.0 * std::numbers::pi;

double bearing_rad(PlanePoint point) {
  const double angle = std::atan2(point.east_m, point.north_m);
  return angle < 0.0 ? angle + kTurn_rad : angle;
}

// Positive if the point is clockwise of the direction.
double side_of(PlanePoint direction, PlanePoint point) {
  return direction.north_m * point.east_m - direction.east_m * point.north_m;
}

}  // namespace

Shore::Shore(double radius_m)
    : radius_m_(radius_m),
      side_(2 * static_cast<std::ptrdiff_t>(std::ceil(radius_m / kCell_m)) + 1),
      near_(static_cast<std::size_t>(side_ * side_), false) {}

std::optional<Shore> Shore::around(const Borders& borders, Position center, double radius_m) {
  const auto projection = Projection::around(center);
  if (!projection) return std::nullopt;
  Shore shore(radius_m);
  for (const PlaneLine& line : borders.on_plane(*projection, radius_m)) {
    if (line.kind == LineKind::Coast) shore.add(line);
  }
  if (shore.crossed_.empty()) return std::nullopt;
  return shore;
}

void Shore::add(const PlaneLine& line) {
  for (std::size_t i = 1; i < line.points.size(); ++i) add({line.points[i - 1], line.points[i]});
}

void Shore::add(const Edge& edge) {
  const std::size_t index = crossed_.size();
  crossed_.push_back(edge);
  const double first = bearing_rad(edge.from) / kTurn_rad * kSectors;
  const double last = bearing_rad(edge.to) / kTurn_rad * kSectors;
  // The shorter way around from one end to the other.
  const double low = std::min(first, last), high = std::max(first, last);
  const bool through_north = high - low > kSectors / 2.0;
  const auto from = static_cast<std::size_t>(through_north ? high : low);
  const auto to = static_cast<std::size_t>(through_north ? low + kSectors : high);
  for (std::size_t sector = from; sector <= to; ++sector) {
    sectors_[sector % kSectors].push_back(index);
  }
  const double length_m =
      std::hypot(edge.to.east_m - edge.from.east_m, edge.to.north_m - edge.from.north_m);
  const auto steps = static_cast<int>(length_m / kCell_m) + 1;
  for (int step = 0; step <= steps; ++step) {
    const double part = static_cast<double>(step) / steps;
    mark_near({edge.from.east_m + part * (edge.to.east_m - edge.from.east_m),
               edge.from.north_m + part * (edge.to.north_m - edge.from.north_m)});
  }
}

std::ptrdiff_t Shore::cell_of(double offset_m) const {
  return side_ / 2 + static_cast<std::ptrdiff_t>(std::lround(offset_m / kCell_m));
}

void Shore::mark_near(PlanePoint point) {
  constexpr auto kReach = static_cast<std::ptrdiff_t>(kNearCoast_m / kCell_m);
  const std::ptrdiff_t column = cell_of(point.east_m), row = cell_of(point.north_m);
  for (std::ptrdiff_t y = std::max<std::ptrdiff_t>(0, row - kReach);
       y <= std::min(side_ - 1, row + kReach); ++y) {
    for (std::ptrdiff_t x = std::max<std::ptrdiff_t>(0, column - kReach);
         x <= std::min(side_ - 1, column + kReach); ++x) {
      const std::ptrdiff_t apart = (y - row) * (y - row) + (x - column) * (x - column);
      if (apart <= kReach * kReach) near_[static_cast<std::size_t>(y * side_ + x)] = true;
    }
  }
}

bool Shore::coast_near(Bearing<True> bearing, double distance_m) const {
  if (distance_m > radius_m_) return false;
  const double angle = bearing.degrees() * std::numbers::pi / 180.0;
  const std::ptrdiff_t x = cell_of(distance_m * std::sin(angle));
  const std::ptrdiff_t y = cell_of(distance_m * std::cos(angle));
  return near_[static_cast<std::size_t>(y * side_ + x)];
}

std::vector<double> Shore::crossings_m(Bearing<True> bearing, double distance_m) const {
  const double angle = bearing.degrees() * std::numbers::pi / 180.0;
  const PlanePoint along{std::sin(angle), std::cos(angle)};
  std::vector<double> crossings;
  const auto sector = static_cast<std::size_t>(bearing.degrees() / 360.0 * kSectors) % kSectors;
  for (const std::size_t index : sectors_[sector]) {
    const Edge& edge = crossed_[index];
    const double from = side_of(along, edge.from), to = side_of(along, edge.to);
    if ((from < 0.0) == (to < 0.0)) continue;
    const double part = from / (from - to);
    const double east_m = edge.from.east_m + part * (edge.to.east_m - edge.from.east_m);
    const double north_m = edge.from.north_m + part * (edge.to.north_m - edge.from.north_m);
    const double at_m = east_m * along.east_m + north_m * along.north_m;
    if (at_m > 0.0 && at_m < distance_m) crossings.push_back(at_m);
  }
  return crossings;
}

bool Shore::at_sea(Bearing<True> bearing, double distance_m) const {
  return crossings_m(bearing, distance_m).size() % 2 != 0;
}

void Shore::sea_toward(Bearing<True> bearing, double distance_m,
                       std::vector<SeaStretch>& found) const {
  found.clear();
  std::vector<double> crossings = crossings_m(bearing, distance_m);
  if (crossings.size() % 2 != 0) return;
  std::sort(crossings.begin(), crossings.end());
  for (std::size_t i = 0; i < crossings.size(); i += 2) {
    found.push_back({crossings[i], crossings[i + 1]});
  }
}

}  // namespace mastwise::map
