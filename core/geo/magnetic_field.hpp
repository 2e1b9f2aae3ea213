#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"
#include "core/time.hpp"

#include <chrono>
#include <memory>
#include <string>

namespace GeographicLib {
class MagneticModel;
}

namespace mastwise {

// The earth's magnetic field at one place and date by the World Magnetic Model 2025.
struct MagneticField {
  // How reliable a compass needle is, by the horizontal field that turns it.
  enum class Zone {
    Normal,
    Caution,   // under 6,000 nT: a compass is slow and may be wrong
    Blackout,  // under 2,000 nT: a compass must not be used
  };

  Declination declination;
  double declination_sigma_deg;     // one standard deviation; see declination_sigma_deg()
  double declination_deg_per_year;  // its change, east positive
  double inclination_deg;           // below the horizon positive, [-90, 90]
  double horizontal_nt;
  double total_nt;
  Zone zone;
  // The date is outside the model: before 2024-11-13 or after 2029-12-31, UTC. The values are then
  // extrapolated by the model's yearly change; show a warning with them.
  bool beyond_model_end;
  bool operator==(const MagneticField&) const = default;
};

// The days on which the World Magnetic Model 2025 is valid, UTC; the last is exclusive. Source: its
// report: released on 2024-11-13, valid to the end of 2029.
inline constexpr std::chrono::sys_days kMagneticModelFrom{std::chrono::year{2024} / 11 / 13};
inline constexpr std::chrono::sys_days kMagneticModelTo{std::chrono::year{2030} / 1 / 1};

// The standard deviation of the declination, degrees, at a horizontal field of `horizontal_nt`
// (over 0): sqrt(0.26^2 + (5417 / H)^2). Infinite at 0.
// Source: World Magnetic Model 2025, the error model of its report.
double declination_sigma_deg(double horizontal_nt);

// Limits of the horizontal field, nT. Source: World Magnetic Model 2025, definition of the blackout
// and caution zones.
inline constexpr double kBlackoutBelow_nt = 2000.0;
inline constexpr double kCautionBelow_nt = 6000.0;
// The zone of a horizontal field in nT: Blackout in [0, 2000), Caution in [2000, 6000), else
// Normal.
MagneticField::Zone magnetic_zone(double horizontal_nt);

// The date as a year with its fraction: the milliseconds since the year began over the milliseconds
// of that year, which has 365 or 366 days. 2027-07-02 12:00 UTC is 2027.5.
double decimal_year(UtcTime time);

// The World Magnetic Model 2025, degree 12. Once loaded it never changes: many threads may call
// at() at once. Two threads must not run load() at once (GeographicLib fills a shared table).
class MagneticModel {
 public:
  // Reads wmm2025.wmm and wmm2025.wmm.cof in `folder` (made by assets/magnetic). The error names
  // the missing or damaged file.
  static Result<MagneticModel> load(const std::string& folder);

  MagneticModel(MagneticModel&&) noexcept;
  MagneticModel& operator=(MagneticModel&&) noexcept;
  ~MagneticModel();

  // The field at `position` on `date`, `height_m` above the WGS84 ellipsoid (valid from -1,000 to
  // 850,000 m). At a pole, true north is that of the position's meridian. Source: World Magnetic
  // Model 2025 by GeographicLib::MagneticModel.
  MagneticField at(Position position, UtcTime date, double height_m = 0.0) const;

 private:
  explicit MagneticModel(std::unique_ptr<const GeographicLib::MagneticModel> model);
  std::unique_ptr<const GeographicLib::MagneticModel> model_;
};

}  // namespace mastwise
