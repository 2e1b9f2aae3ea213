#include "core/rig/rig_heading.hpp"

#include "core/geo/geodesic.hpp"
#include "core/geo/line_error.hpp"
#include "core/headings/heading_error.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

Error refuse(std::string what, std::string remedy) {
  return {.what = std::move(what), .where = "rig heading", .remedy = std::move(remedy)};
}

RigHeadingReading reading(Bearing<True> nose, double sigma_deg, RigHeadingSource source,
                          Position at, std::optional<RigHeadingCaution> caution = {}) {
  return {RigHeading::nose_at(nose), sigma_deg, source, at, caution};
}

double turn_to_nose_deg(SunFrom side) {
  switch (side) {
    case SunFrom::nose:
      return 0.0;
    case SunFrom::right:
      return -90.0;
    case SunFrom::tail:
      return 180.0;
    case SunFrom::left:
      return 90.0;
  }
  return 0.0;
}

// The sensor's setting is reported but never used: nobody knows who set it, and when.
std::optional<RigHeadingCaution> setting_caution(const nmea::HeadingSensor& sensor,
                                                 Declination here) {
  if (!sensor.declination) return std::nullopt;
  const Turn apart = Turn::clockwise_deg(sensor.declination->east_deg() - here.east_deg());
  if (apart.size_deg() <= kSettingDiffers_deg) return std::nullopt;
  return RigHeadingCaution{
      .kind = RigHeadingCaution::Kind::sensor_declination, .set = sensor.declination, .here = here};
}

}  // namespace

std::string_view to_text(RigHeadingSource source) {
  switch (source) {
    case RigHeadingSource::by_hand:
      return "by hand";
    case RigHeadingSource::last_course:
      return "last straight course";
    case RigHeadingSource::true_sensor:
      return "heading sensor, true";
    case RigHeadingSource::magnetic_sensor:
      return "heading sensor, magnetic";
    case RigHeadingSource::sun_on_flank:
      return "sun on the flank";
    case RigHeadingSource::two_points:
      return "two points along the flank";
  }
  return {};
}

std::string_view to_text(RigHeadingCaution::Kind kind) {
  switch (kind) {
    case RigHeadingCaution::Kind::trailer_in_line:
      return "trailer_in_line";
    case RigHeadingCaution::Kind::true_or_magnetic:
      return "true_or_magnetic";
    case RigHeadingCaution::Kind::sensor_declination:
      return "sensor_declination";
  }
  return {};
}

Result<RigHeadingReading> rig_heading_by_hand(Bearing<True> nose, double sigma_deg, Position at) {
  if (!std::isfinite(sigma_deg) || sigma_deg <= 0.0) {
    return refuse("the error of the heading must be more than 0 degrees",
                  "enter 2 to 5 degrees for a handheld compass");
  }
  return reading(nose, sigma_deg, RigHeadingSource::by_hand, at);
}

Result<RigHeadingReading> rig_heading_from_course(const nmea::StraightCourse& straight, Drove drove,
                                                  Carrier carrier, Position at) {
  if (carrier == Carrier::trailer) {
    return refuse("the course is that of the tow vehicle, and the trailer points another way",
                  "measure along the trailer's side, or hitch it straight");
  }
  const bool backed = drove == Drove::backed_in;
  const Bearing<True> nose = backed ? straight.course.reciprocal() : straight.course;
  if (carrier == Carrier::driven) {
    return reading(nose, straight.sigma_deg, RigHeadingSource::last_course, at);
  }
  return reading(nose, std::hypot(straight.sigma_deg, kTrailerInLine_deg),
                 RigHeadingSource::last_course, at,
                 RigHeadingCaution{.kind = RigHeadingCaution::Kind::trailer_in_line});
}

Result<RigHeadingReading> rig_heading_from_sensor(const nmea::HeadingSensor& sensor, Turn mounting,
                                                  const std::optional<MagneticField>& field,
                                                  Position at,
                                                  const std::optional<SensorDeviation>& deviation) {
  if (sensor.true_heading) {
    return reading(*sensor.true_heading - mounting, kTrueHeadingSensor_deg,
                   RigHeadingSource::true_sensor, at,
                   RigHeadingCaution{.kind = RigHeadingCaution::Kind::true_or_magnetic});
  }
  if (!sensor.magnetic_heading) {
    return refuse("the heading sensor is silent", "check its cable and power");
  }
  if (!field) {
    return refuse("the sensor reads from magnetic north, and the declination here is not known",
                  "set the position and the date");
  }
  if (field->zone == MagneticField::Zone::Blackout) {
    return refuse("the earth's field is too weak here for any compass",
                  "use the sun, the last course or two points");
  }
  if (deviation) {
    return reading(
        to_true(*sensor.magnetic_heading + deviation->turn, field->declination),
        std::hypot(deviation->reading_deg, field->declination_sigma_deg, deviation->sigma_deg),
        RigHeadingSource::magnetic_sensor, at, setting_caution(sensor, field->declination));
  }
  // The sensor is fixed to the rig: the remaining deviation is what its compensation leaves.
  const double sigma_deg =
      std::hypot(kMagneticHeadingSensor_deg, field->declination_sigma_deg, kCompensated_deg);
  return reading(to_true(*sensor.magnetic_heading, field->declination) - mounting, sigma_deg,
                 RigHeadingSource::magnetic_sensor, at,
                 setting_caution(sensor, field->declination));
}

Result<RigHeadingReading> rig_heading_from_sun(Bearing<True> sun, double azimuth_sigma_deg,
                                               SunFrom side, Position at) {
  if (!std::isfinite(azimuth_sigma_deg) || azimuth_sigma_deg < 0.0) {
    return refuse("the error of the sun's azimuth is unknown",
                  "enter how far off the clock may be");
  }
  return reading(sun + Turn::clockwise_deg(turn_to_nose_deg(side)),
                 std::hypot(azimuth_sigma_deg, kSight_deg, kSight_deg),
                 RigHeadingSource::sun_on_flank, at);
}

Result<RigHeadingReading> rig_heading_from_two_points(Position tail_end, Position nose_end,
                                                      double point_error_m) {
  if (!std::isfinite(point_error_m) || point_error_m <= 0.0) {
    return refuse("the error of the two points is unknown", "enter it in meters, more than 0");
  }
  const PathBetween line = path_between(tail_end, nose_end);
  const double sigma_deg =
      line.distance_m > 0.0 ? line_error_deg(point_error_m, line.distance_m) : 90.0;
  if (sigma_deg > kMostTwoPoints_deg) {
    return refuse(
        fmt::format("the two points are only {:.0f} m apart, and each may be off by {:.0f} m",
                    line.distance_m, point_error_m),
        "walk a longer line, straight on past the nose");
  }
  return reading(line.bearing, sigma_deg, RigHeadingSource::two_points, nose_end);
}

const RigHeadingReading* best_rig_heading(std::span<const RigHeadingReading> readings) {
  const auto best =
      std::min_element(readings.begin(), readings.end(),
                       [](const auto& a, const auto& b) { return a.sigma_deg < b.sigma_deg; });
  return best == readings.end() ? nullptr : &*best;
}

std::optional<double> rig_moved_m(Position taken_at, const nmea::ParkedPosition& now_parked) {
  const double limit_m = now_parked.scatter_m ? std::clamp(4.0 * *now_parked.scatter_m,
                                                           nmea::ParkedAverage::kLeastAway_m,
                                                           nmea::ParkedAverage::kMostAway_m)
                                              : nmea::ParkedAverage::kMostAway_m;
  const double away_m = path_between(taken_at, now_parked.mean).distance_m;
  if (away_m <= limit_m) return std::nullopt;
  return away_m;
}

}  // namespace mastwise
