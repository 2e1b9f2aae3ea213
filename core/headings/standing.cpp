#include "core/headings/standing.hpp"

#include "core/geo/line_error.hpp"

#include <cmath>
#include <numbers>

namespace mastwise {
namespace {

constexpr double kRadian = std::numbers::pi / 180.0;

struct Place {
  std::string_view name, text;
  double rig_m;
  bool table;
};

// In the order of Standing.
constexpr std::array kPlaces{
    Place{"beside", "beside the rig", 1.0, false}, Place{"roof", "on the roof", 2.0, false},
    Place{"table", "at a picnic table", 6.0, true}, Place{"steps", "a few steps off", 5.0, false},
    Place{"clear", "well clear of the rig", 18.0, false}};

const Place& place_of(Standing standing) {
  return kPlaces[static_cast<std::size_t>(standing)];
}

}  // namespace

std::string_view to_text(Standing standing) {
  return place_of(standing).text;
}

std::string_view short_name(Standing standing) {
  return place_of(standing).name;
}

std::optional<Standing> parse_standing(std::string_view name) {
  for (const Standing standing : kStandings) {
    if (place_of(standing).name == name) return standing;
  }
  return std::nullopt;
}

double from_rig_m(Standing standing) {
  return place_of(standing).rig_m;
}

bool refuses_compass(Standing standing) {
  return standing == Standing::beside_rig || standing == Standing::on_roof;
}

double dipole_sigma_nt(double moment_am2, double distance_m) {
  constexpr double kMu0Over4Pi_nt = 100.0;  // 1e-7 T m / A
  return std::sqrt(5.0 / 6.0) * kMu0Over4Pi_nt * moment_am2 /
         (distance_m * distance_m * distance_m);
}

double deviation_sigma_deg(Standing standing, double horizontal_nt) {
  const Place& place = place_of(standing);
  const double rig_nt = dipole_sigma_nt(kRigMoment_am2, place.rig_m);
  const double table_nt = place.table ? dipole_sigma_nt(kTableMoment_am2, kTableIron_m) : 0.0;
  const double carried_nt = dipole_sigma_nt(kCarriedMoment_am2, kCarriedIron_m);
  return std::atan2(std::hypot(rig_nt, table_nt, carried_nt), horizontal_nt) / kRadian;
}

double parallax_deg(double offset_m, double mark_m) {
  return angle_of_error_deg(offset_m, mark_m);
}

double least_mark_m(double offset_m) {
  return offset_m / std::tan(kSightLine_deg * kRadian);
}

}  // namespace mastwise
