#pragma once

#include "core/headings/deviation_card.hpp"
#include "core/headings/standing.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace mastwise {

// The causes of a heading error.
enum class ErrorKind : std::uint8_t {
  position,         // of the stop and the transmitter
  map_ruler,        // a bearing measured on paper
  map_north,        // the edges of a wide sheet do not follow its meridians
  declination,      // of the magnetic model
  deviation,        // of the needle, by iron
  sight_line,       // from where one stands to the antenna
  reading,          // of the compass, the sight, the sensor, the eye
  rounding,         // a setting or a description in steps
  rig_heading,      // direction of the nose
  handle_zero,      // of the handle's calibration
  handle_play,      // between handle and antenna
  sun_clock,        // sun and stars move while the clock errs
  pole_star,        // used as north
  landmark,         // its position
  walked_line,      // its two ends as measured by the receiver
  course,           // over ground
  known_direction,  // that of a landmark, the sun or a star, from which one turns
};
std::string_view to_text(ErrorKind kind);

// How the antenna is pointed along a heading.
enum class PointingMethod : std::uint8_t {
  bearing_alone,        // the number, before anything is turned
  map_ruler,            // the number measured on a paper map
  baseplate_compass,    // in the hand
  sighting_compass,     // with a sight or prism
  set_compass,          // a baseplate compass with its declination set
  tablet_magnetometer,  // outside
  handle,               // ceiling handle after its calibration
  rig_sides,            // by eye along the sides of the rig
  sun_shadow,           // of a plumb line
  star,                 // the moon, a planet or a star, its azimuth computed
  pole_star_as_north,   // used as north
  landmark,             // by an angle from it
  walked_line,          // toward a point that the receiver leads to
  course_over_ground,   // along a course just gone
  true_heading_sensor,  // that turns with the antenna
  magnetic_heading_sensor,
  turn_in_place,  // by a compass, as far as from a known direction; iron does not matter
};
std::string_view to_text(PointingMethod method);

inline constexpr std::string_view kDipoleSource =
    "dipole field of the rig's steel; its moment is common practice";
inline constexpr std::string_view kTabletSource = "the tablet's own turn around itself";
inline constexpr std::string_view kCheckedSource = "checks of the compass at this stop";

// One independent error.
struct ErrorLine {
  ErrorKind kind = ErrorKind::position;
  double sigma_deg = 0.0;  // one standard deviation
  std::string_view source = {};
  bool common_practice = false;  // a figure of the trade, without a published source
  bool operator==(const ErrorLine&) const = default;
};

// One sigma each, degrees, of a tablet that knows its own iron.
struct TabletErrors {
  double reading_deg = 0.0;    // in the hand, with its fit
  double deviation_deg = 0.0;  // where one stands; checks of another compass do not count
  bool operator==(const TabletErrors&) const = default;
};

// The inputs of a budget. Unknown inputs are std::nullopt; a method that needs one of them is
// refused.
struct HeadingContext {
  std::optional<double> distance_m = {};           // to the transmitter, over 0
  std::optional<double> stop_error_m = {};         // one sigma, at least 0
  std::optional<double> transmitter_error_m = {};  // one sigma, at least 0

  // A bearing measured on paper instead of computed.
  struct PaperMap {
    double line_mm = 0.0;  // between the two points on the sheet, over 0
    // Measured from the meridian next to the stop, not from the sheet's edge.
    bool local_meridian = false;
    bool operator==(const PaperMap&) const = default;
  };
  std::optional<PaperMap> paper_map = {};

  std::optional<double> declination_sigma_deg = {};  // MagneticField::declination_sigma_deg
  // Of the needle here, and its source: mastwise::deviation_sigma_deg() where one stands, or what a
  // check of the compass leaves of it. A compass is refused without it, and where
  // refuses_compass().
  std::optional<double> deviation_sigma_deg = {};
  std::string_view deviation_source = kDipoleSource;
  std::optional<Standing> standing = {};

  std::optional<double> rig_heading_sigma_deg = {};
  std::optional<double> handle_zero_sigma_deg = {};  // Handle::sigma_deg()
  std::optional<double> handle_play_deg = {};

  std::optional<double> clock_error_min = {};
  std::optional<double> sun_turn_deg_per_min = {};  // how fast the sun's azimuth changes
  std::optional<double> star_turn_deg_per_min = {};
  std::optional<double> star_altitude_deg = {};  // of the body faced, as seen; under 90
  std::optional<double> latitude_deg = {};       // for the pole star used as north

  std::optional<double> landmark_error_m = {};
  std::optional<double> landmark_distance_m = {};
  std::optional<double> known_direction_sigma_deg = {};  // with the sight along it
  std::optional<double> walk_length_m = {};
  std::optional<double> walk_end_error_m = {};           // one sigma of each end
  std::optional<double> course_sigma_deg = {};           // nmea::StraightCourse::sigma_deg
  std::optional<SensorDeviation> sensor_deviation = {};  // of a sensor on the rig, by its card
  std::optional<TabletErrors> tablet = {};               // once its iron is known
  bool operator==(const HeadingContext&) const = default;
};

struct HeadingBudget {
  std::vector<ErrorLine> lines;  // the largest first
  double total_deg = 0.0;        // the root of the sum of squares
  bool operator==(const HeadingBudget&) const = default;
};

// The budget of a heading pointed by `method`: first the bearing's line (position, or the paper map
// if there is one), then those of the method. The error says which input is unknown or out of
// range, and what to do. Each line names its source. Independent errors add by their squares [JCGM
// 100:2008 (GUM) 5.1.2 (10)].
Result<HeadingBudget> heading_budget(PointingMethod method, const HeadingContext& context);

// The root of the sum of squares, in degrees.
double root_of_squares_deg(std::span<const ErrorLine> lines);

// Standard deviations in degrees of the trade's usual methods. Common practice, no source: each is
// a choice within the range given here.
constexpr double kBaseplateCompass_deg = 3.0;       // 2 to 5
constexpr double kSight_deg = 1.0;                  // a sighting compass, a shadow, a star, a mark
constexpr double kTabletMagnetometer_deg = 7.5;     // 5 to 10, outside, its iron not known
constexpr double kByEye_deg = 5.0;                  // along the sides of the rig
constexpr double kTrueHeadingSensor_deg = 1.0;      // two satellite antennas
constexpr double kMagneticHeadingSensor_deg = 2.0;  // a mounted electronic compass
constexpr double kMapNorth_deg = 2.0;               // 1 to 3, of a wide conic road map
constexpr double kCompensated_deg = 2.0;            // what a mounted sensor's compensation leaves
constexpr double kUsualHandlePlay_deg = 5.0;        // 5 to 10

// Error, one sigma, degrees, of a rig heading that was read from a compass in the hand, by where it
// was read: reading, the sight along the rig's side, the declination's sigma and the deviation at
// `horizontal_nt`. Where it was read is unknown: kUnsaidHeading_deg.
double typed_heading_sigma_deg(std::optional<Standing> read_at, double declination_sigma_deg,
                               double horizontal_nt);
constexpr double kUnsaidHeading_deg = 6.0;  // our choice, no source: the usual whole budget

// Error of the direction toward a body `altitude_deg` (0 to under 90) over the horizon, sighted
// past a plumb line: kSight_deg / cos(altitude), since a circle of that height is smaller by the
// cosine than the horizon. The azimuth's whole error is this and the clock's error times the turn
// of the azimuth, as squares.
double star_sight_deg(double altitude_deg);

// The largest distance of the pole star from true north at a latitude, degrees: 0.65 /
// cos(latitude) [common practice, no source].
double pole_star_from_north_deg(double latitude_deg);

}  // namespace mastwise
