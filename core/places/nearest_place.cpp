#include "core/geo/circle_boxes.hpp"
#include "core/places/gazetteer.hpp"
#include "core/places/place_table.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace mastwise::places {
namespace {

// Added to every distance, so that a village does not win merely because the position is within it.
constexpr double kOwnM = 2'000.0;
constexpr double kFewestPeople = 100.0, kMostPeople = 200'000.0;

double weight(const PlaceTable& table, std::size_t i) {
  const std::uint32_t population = table.populations[i];
  const double people = population == PlaceTable::kUnknownPopulation ? 0.0 : population;
  return std::cbrt(std::clamp(people, kFewestPeople, kMostPeople));
}

class Search {
 public:
  Search(const PlaceTable& table, Position position)
      : table_(table), here_(earth_point(position.latitude_deg(), position.longitude_deg())) {}

  void look_in(std::size_t cell) {
    const std::size_t begin = table_.cell_starts[cell], end = table_.cell_starts[cell + 1];
    if (begin == end || !can_be_better(least_way_to_m(cell))) return;
    for (std::size_t i = begin; i < end; ++i) {
      const double way_m = straight_way_m(here_, table_.point(i, cell));
      if (table_.kinds[i] != Kind::Ordinary || !can_be_better(way_m)) continue;
      const double cost = (way_m + kOwnM) / weight(table_, i);
      if (cost >= cost_) continue;
      cost_ = cost;
      best_ = i;
    }
  }

  // No place farther away can be better; infinite until a place is found.
  double farthest_m() const { return cost_ * most_weight_ - kOwnM; }
  std::optional<std::size_t> best() const { return best_; }

 private:
  bool can_be_better(double way_m) const { return way_m < farthest_m(); }
  // Upper bound of the distance from the middle of a cell to its corners.
  double least_way_to_m(std::size_t cell) const {
    constexpr double kHalfDiagonalM = 79.5e3;
    const double latitude_deg = static_cast<double>(cell / PlaceTable::kColumns) - 89.5;
    const double longitude_deg = static_cast<double>(cell % PlaceTable::kColumns) - 179.5;
    return straight_way_m(here_, earth_point(latitude_deg, longitude_deg)) - kHalfDiagonalM;
  }

  const PlaceTable& table_;
  EarthPoint here_;
  double most_weight_ = std::cbrt(kMostPeople);
  double cost_ = std::numeric_limits<double>::infinity();
  std::optional<std::size_t> best_;
};

// No geodesic to a point at that straight distance is longer: an arc of the smallest radius of
// curvature, 6,335 km, with a margin of 1 %.
double geodesic_m(double straight_m) {
  constexpr double kRadiusM = 6'335'000.0, kSpare = 1.01;
  const double half_angle_sine = straight_m / (2.0 * kRadiusM);
  if (!(half_angle_sine < 1.0)) return std::numeric_limits<double>::infinity();
  return kSpare * 2.0 * kRadiusM * std::asin(half_angle_sine);
}

// The cells that a box touches.
template <class Use>
void each_cell(const Box& box, Use use) {
  const auto cell_at = [](double degrees, int last) {
    return std::clamp(static_cast<int>(std::floor(degrees)), 0, last);
  };
  const int south = cell_at(box.south_deg + 90.0, PlaceTable::kRows - 1);
  const int north = cell_at(box.north_deg + 90.0, PlaceTable::kRows - 1);
  const int west = cell_at(box.west_deg + 180.0, PlaceTable::kColumns - 1);
  const int east = cell_at(box.east_deg + 180.0, PlaceTable::kColumns - 1);
  for (int row = south; row <= north; ++row) {
    for (int column = west; column <= east; ++column) {
      use(static_cast<std::size_t>(row) * PlaceTable::kColumns + static_cast<std::size_t>(column));
    }
  }
}

}  // namespace

std::optional<NearPlace> Gazetteer::nearest_place(Position position) const {
  // Circles grow until no place beyond can be better; the last contains the earth.
  constexpr double kFirstRadiusM = 40e3, kGrowth = 4.0, kEarthM = 20'100e3;
  Search search(*table_, position);
  for (double radius_m = kFirstRadiusM;; radius_m *= kGrowth) {
    for (const Box& box : boxes_around(position, std::min(radius_m, kEarthM))) {
      each_cell(box, [&](std::size_t cell) { search.look_in(cell); });
    }
    if (geodesic_m(search.farthest_m()) <= radius_m || radius_m >= kEarthM) break;
  }
  if (!search.best()) return std::nullopt;
  NearPlace near{.place = place(*search.best()), .distance_m = 0.0, .bearing = {}};
  const PathBetween way = path_between(near.place.position, position);
  near.distance_m = way.distance_m;
  near.bearing = way.bearing;
  return near;
}

std::vector<PopulatedPlace> Gazetteer::largest_within(Position center, double radius_m,
                                                      std::size_t most) const {
  const EarthPoint here = earth_point(center.latitude_deg(), center.longitude_deg());
  std::vector<std::size_t> found;
  for (const Box& box : boxes_around(center, radius_m)) {
    each_cell(box, [&](std::size_t cell) {
      for (std::size_t i = table_->cell_starts[cell]; i < table_->cell_starts[cell + 1]; ++i) {
        const bool near = geodesic_m(straight_way_m(here, table_->point(i, cell))) <= radius_m;
        if (near && table_->kinds[i] == Kind::Ordinary) found.push_back(i);
      }
    });
  }
  // A cell may be in two boxes.
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  const auto people = [&](std::size_t i) {
    const std::uint32_t population = table_->populations[i];
    return population == PlaceTable::kUnknownPopulation ? 0 : population;
  };
  const auto end = found.begin() + static_cast<std::ptrdiff_t>(std::min(most, found.size()));
  std::partial_sort(found.begin(), end, found.end(), [&](std::size_t a, std::size_t b) {
    return people(a) != people(b) ? people(a) > people(b) : a < b;
  });
  std::vector<PopulatedPlace> places;
  std::transform(found.begin(), end, std::back_inserter(places),
                 [&](std::size_t i) { return place(i); });
  return places;
}

}  // namespace mastwise::places
