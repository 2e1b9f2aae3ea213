#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/magnetic_field.hpp"
#include "core/geo/position.hpp"
#include "core/headings/deviation_card.hpp"
#include "core/nmea/fix.hpp"
#include "core/nmea/parked.hpp"
#include "core/nmea/straight_course.hpp"
#include "core/result.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace mastwise {

enum class RigHeadingSource {
  by_hand,
  last_course,      // the last straight before parking
  true_sensor,      // HDT, THS
  magnetic_sensor,  // HDG, HDM
  sun_on_flank,
  two_points,  // of a receiver along the flank
};
std::string_view to_text(RigHeadingSource source);

// A further condition for a correct rig heading.
struct RigHeadingCaution {
  enum class Kind {
    trailer_in_line,    // the trailer must be in line with its tow vehicle
    true_or_magnetic,   // a magnetic sensor may report its heading as true
    sensor_declination  // the sensor is set to a declination that is wrong here
  } kind = Kind::trailer_in_line;
  std::optional<Declination> set = {}, here = {};  // of sensor_declination
  bool operator==(const RigHeadingCaution&) const = default;
};
std::string_view to_text(RigHeadingCaution::Kind kind);  // "trailer_in_line"

// The direction of the nose, its uncertainty, and where it was measured: it is valid only there.
struct RigHeadingReading {
  RigHeading heading;
  double sigma_deg;  // one standard deviation
  RigHeadingSource source;
  Position taken_at;
  std::optional<RigHeadingCaution> caution;
};

enum class Drove { forward, backed_in };

// The vehicle that carries the antenna.
enum class Carrier {
  driven,            // the vehicle that drove
  trailer_straight,  // a trailer, hitched and in line with its tow vehicle
  trailer,           // a trailer that is unhitched or at an angle
};

// The sun's direction from the rig while a shadow is perpendicular to, or along, its flank.
enum class SunFrom { nose, right, tail, left };

// Typed in, or measured with a compass away from the rig. `sigma_deg` over 0 and finite.
Result<RigHeadingReading> rig_heading_by_hand(Bearing<True> nose, double sigma_deg, Position at);

// From the last straight course before parking. A trailer hitched straight adds kTrailerInLine_deg.
// Error: the trailer is not in line with its tow vehicle.
Result<RigHeadingReading> rig_heading_from_course(const nmea::StraightCourse& straight, Drove drove,
                                                  Carrier carrier, Position at);

// From a heading sensor. `mounting`: angle of the sensor's forward mark, clockwise from the nose. A
// true heading has priority over a magnetic one, which needs `field` at the position. If the
// sensor's declination differs from the field's by more than kSettingDiffers_deg, a caution is
// added. `deviation`: of a magnetic heading, by the sensor's card, which includes its mounting.
// Errors: the sensor is silent; the field is unknown, or too weak for a compass.
Result<RigHeadingReading> rig_heading_from_sensor(
    const nmea::HeadingSensor& sensor, Turn mounting, const std::optional<MagneticField>& field,
    Position at, const std::optional<SensorDeviation>& deviation = std::nullopt);

// From the sun's azimuth while it is along or perpendicular to the flank; `azimuth_sigma_deg` (at
// least 0, finite) includes the clock's error. The shadow and the alignment add kSight_deg each.
Result<RigHeadingReading> rig_heading_from_sun(Bearing<True> sun, double azimuth_sigma_deg,
                                               SunFrom side, Position at);

// From positions at the tail and the nose end of a line along the flank, each with one sigma of
// `point_error_m` (over 0, finite). Error: they are so close that the heading's error exceeds
// kMostTwoPoints_deg.
Result<RigHeadingReading> rig_heading_from_two_points(Position tail_end, Position nose_end,
                                                      double point_error_m);

// The one with the smallest sigma, or null if there is none.
const RigHeadingReading* best_rig_heading(std::span<const RigHeadingReading> readings);

// How many meters the rig has moved since its heading was measured at `taken_at`, if that makes the
// heading invalid: more than four times the scatter of its receiver, clamped to 10 to 30 m (as in
// nmea::ParkedAverage); 30 m while the scatter is unknown. std::nullopt while the heading may still
// be valid: a rig that turned on the spot goes unnoticed.
std::optional<double> rig_moved_m(Position taken_at, const nmea::ParkedPosition& now_parked);

// Common practice, no source, degrees.
constexpr double kTrailerInLine_deg = 3.0;
constexpr double kSettingDiffers_deg = 1.0;
constexpr double kMostTwoPoints_deg = 30.0;

}  // namespace mastwise
