#include "core/places/gazetteer.hpp"

#include "core/places/place_table.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::places {
namespace {

constexpr double kStepsPerDegree = 10'000.0;

const AreaName* find(const std::vector<AreaName>& names, const PlaceTable::Area& area,
                     bool whole_country) {
  const auto found = std::find_if(names.begin(), names.end(), [&](const AreaName& name) {
    return name.country == area.country && (whole_country || name.admin == area.admin);
  });
  return found == names.end() ? nullptr : &*found;
}

}  // namespace

EarthPoint earth_point(double latitude_deg, double longitude_deg) {
  constexpr double kDegree = std::numbers::pi / 180.0;
  // WGS84 [NIMA TR8350.2, 3rd edition, table 3.1].
  constexpr double kEquatorM = 6378137.0, kFlattening = 1.0 / 298.257223563;
  constexpr double kEccentricity2 = kFlattening * (2.0 - kFlattening);
  const double sine = std::sin(latitude_deg * kDegree);
  const double normal_m = kEquatorM / std::sqrt(1.0 - kEccentricity2 * sine * sine);
  const double axis_m = normal_m * std::cos(latitude_deg * kDegree);
  return {.x_m = axis_m * std::cos(longitude_deg * kDegree),
          .y_m = axis_m * std::sin(longitude_deg * kDegree),
          .z_m = normal_m * (1.0 - kEccentricity2) * sine};
}

double straight_way_m(const EarthPoint& a, const EarthPoint& b) {
  const double x = a.x_m - b.x_m, y = a.y_m - b.y_m, z = a.z_m - b.z_m;
  return std::sqrt(x * x + y * y + z * z);
}

std::size_t PlaceTable::cell_of(std::size_t i) const {
  const auto next = std::upper_bound(cell_starts.begin(), cell_starts.end(), i);
  return static_cast<std::size_t>(next - cell_starts.begin()) - 1;
}

double PlaceTable::latitude_deg(std::size_t i, std::size_t cell) const {
  return static_cast<double>(cell / kColumns) - 90.0 + north_steps[i] / kStepsPerDegree;
}

double PlaceTable::longitude_deg(std::size_t i, std::size_t cell) const {
  return static_cast<double>(cell % kColumns) - 180.0 + east_steps[i] / kStepsPerDegree;
}

std::size_t Gazetteer::size() const {
  return table_->size();
}

PopulatedPlace Gazetteer::place(std::size_t index) const {
  const PlaceTable::Area& area = table_->area_of[table_->areas[index]];
  const AreaName* country = find(table_->countries, area, true);
  const AreaName* region = find(table_->regions, area, false);
  const std::uint32_t population = table_->populations[index];
  const std::size_t cell = table_->cell_of(index);
  return PopulatedPlace{
      .name = std::string(table_->name(index)),
      .country = area.country,
      .country_name = country ? country->name : area.country,
      .admin = area.admin,
      .region = region ? region->code : "",
      .population =
          population == PlaceTable::kUnknownPopulation ? std::nullopt : std::optional(population),
      .position =
          *Position::at_deg(table_->latitude_deg(index, cell), table_->longitude_deg(index, cell))};
}

std::string Gazetteer::region_name(const PopulatedPlace& place) const {
  const AreaName* region = find(table_->regions, {place.country, place.admin}, false);
  return region ? region->name : "";
}

}  // namespace mastwise::places
