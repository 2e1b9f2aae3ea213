#include "core/geo/magnetic_field.hpp"

#include <cmath>
#include <exception>
#include <utility>

#include <GeographicLib/MagneticModel.hpp>

namespace mastwise {
namespace {

using std::chrono::January;
using std::chrono::sys_days;

// Source: World Magnetic Model 2025: released on 2024-11-13, valid to the end of 2029.
constexpr UtcTime kModelStart = kMagneticModelFrom;
constexpr UtcTime kModelEnd = kMagneticModelTo;

}  // namespace

double declination_sigma_deg(double horizontal_nt) {
  return std::hypot(0.26, 5417.0 / horizontal_nt);
}

MagneticField::Zone magnetic_zone(double horizontal_nt) {
  if (horizontal_nt < kBlackoutBelow_nt) return MagneticField::Zone::Blackout;
  if (horizontal_nt < kCautionBelow_nt) return MagneticField::Zone::Caution;
  return MagneticField::Zone::Normal;
}

double decimal_year(UtcTime time) {
  const std::chrono::year_month_day day{std::chrono::floor<std::chrono::days>(time)};
  const UtcTime begins = sys_days{day.year() / January / 1};
  const UtcTime next_begins = sys_days{(day.year() + std::chrono::years{1}) / January / 1};
  const auto passed = static_cast<double>((time - begins).count());
  const auto whole = static_cast<double>((next_begins - begins).count());
  return static_cast<int>(day.year()) + passed / whole;
}

Result<MagneticModel> MagneticModel::load(const std::string& folder) {
  try {
    return MagneticModel(std::make_unique<const GeographicLib::MagneticModel>("wmm2025", folder));
  } catch (const std::exception& failure) {
    return Error{.what = std::string("the magnetic model cannot be read: ") + failure.what(),
                 .where = folder,
                 .remedy = "install Mastwise again, or give the folder that has wmm2025.wmm"};
  }
}

MagneticModel::MagneticModel(std::unique_ptr<const GeographicLib::MagneticModel> model)
    : model_(std::move(model)) {}
MagneticModel::MagneticModel(MagneticModel&&) noexcept = default;
MagneticModel& MagneticModel::operator=(MagneticModel&&) noexcept = default;
MagneticModel::~MagneticModel() = default;

MagneticField MagneticModel::at(Position position, UtcTime date, double height_m) const {
  // Each with its change in a year.
  struct Value {
    double now = 0.0, per_year = 0.0;
  };
  Value east_nt, north_nt, up_nt;
  (*model_)(decimal_year(date), position.latitude_deg(), position.longitude_deg(), height_m,
            east_nt.now, north_nt.now, up_nt.now, east_nt.per_year, north_nt.per_year,
            up_nt.per_year);
  Value horizontal_nt, total_nt, declination_deg, inclination_deg;
  GeographicLib::MagneticModel::FieldComponents(
      east_nt.now, north_nt.now, up_nt.now, east_nt.per_year, north_nt.per_year, up_nt.per_year,
      horizontal_nt.now, total_nt.now, declination_deg.now, inclination_deg.now,
      horizontal_nt.per_year, total_nt.per_year, declination_deg.per_year,
      inclination_deg.per_year);
  return MagneticField{.declination = Declination::east_deg(declination_deg.now),
                       .declination_sigma_deg = declination_sigma_deg(horizontal_nt.now),
                       .declination_deg_per_year = declination_deg.per_year,
                       .inclination_deg = inclination_deg.now,
                       .horizontal_nt = horizontal_nt.now,
                       .total_nt = total_nt.now,
                       .zone = magnetic_zone(horizontal_nt.now),
                       .beyond_model_end = date < kModelStart || date >= kModelEnd};
}

}  // namespace mastwise
