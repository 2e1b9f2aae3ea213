#include "core/headings/heading_error.hpp"

#include "core/geo/line_error.hpp"
#include "core/geo/paper_map.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kRigWordStep_deg = 15.0;
constexpr double kPolarDistance_deg = 0.65;

constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kGeometry = "plane geometry: atan(error / distance)";
constexpr std::string_view kLineGeometry = "plane geometry: atan(sqrt(2) error / length)";
constexpr std::string_view kModel = "World Magnetic Model 2025, error model";
constexpr std::string_view kUniform = "step / sqrt(12), JCGM 100:2008 (GUM) 4.3.7";
constexpr std::string_view kGiven = "as measured or given for this stop";

// Collects the lines of one budget, and the first reason why it cannot be made.
class Collector {
 public:
  explicit Collector(const HeadingContext& context) : context_(context) {}

  void bearing() {
    if (context_.paper_map) return paper();
    const auto distance =
        over_zero(context_.distance_m, "the distance to the transmitter is not known");
    const auto stop = known(context_.stop_error_m, "the error of the stop's position is not known");
    const auto mast =
        known(context_.transmitter_error_m, "the error of the transmitter's position is not known");
    if (!distance || !stop || !mast) return;
    add(ErrorKind::position, angle_of_error_deg(std::hypot(*stop, *mast), *distance), kGeometry);
  }

  void paper() {
    if (!context_.paper_map) return refuse("the line on the paper map is not known");
    const auto line_mm =
        over_zero(context_.paper_map->line_mm, "the length of the line on the map is not known");
    if (!line_mm) return;
    practice(ErrorKind::map_ruler, ruler_bearing_error_deg(*line_mm));
    if (!context_.paper_map->local_meridian) practice(ErrorKind::map_north, kMapNorth_deg);
  }

  bool beside_steel() {
    if (!context_.standing || !refuses_compass(*context_.standing)) return false;
    refuse("the rig's steel is too near for a compass",
           "step 5 m, better 18 m, away from the rig, or use another way");
    return true;
  }

  void tablet() {
    if (!context_.tablet || !context_.standing) return needle(kTabletMagnetometer_deg);
    if (beside_steel()) return;
    declination();
    given(ErrorKind::reading, context_.tablet->reading_deg, kTabletSource,
          "the error of the tablet is not known");
    given(ErrorKind::deviation, context_.tablet->deviation_deg, kDipoleSource,
          "the deviation where the tablet is held is not known");
    sight();
  }

  // A compass in the hand, by which the antenna is turned from where one stands.
  void needle(double reading_deg) {
    if (beside_steel()) return;
    declination();
    practice(ErrorKind::reading, reading_deg);
    if (!context_.deviation_sigma_deg) {
      return refuse("nobody has said where the compass is read",
                    "say where you stand: 5 m, better 18 m, away from the rig and all iron");
    }
    given(ErrorKind::deviation, context_.deviation_sigma_deg, context_.deviation_source,
          "the deviation of the needle is not known");
    sight();
  }

  void magnetic_sensor() {
    declination();
    if (const auto& by_card = context_.sensor_deviation) {
      add(ErrorKind::reading, by_card->reading_deg, kCardSource);
      add(ErrorKind::deviation, by_card->sigma_deg, kCardSource);
      return;
    }
    practice(ErrorKind::reading, kMagneticHeadingSensor_deg);
    practice(ErrorKind::deviation, kCompensated_deg);
  }

  void handle() {
    given(ErrorKind::rig_heading, context_.rig_heading_sigma_deg, kGiven,
          "the error of the rig's heading is not known");
    given(ErrorKind::handle_zero, context_.handle_zero_sigma_deg, kGiven,
          "the error of the handle's calibration is not known");
    // Counted in full: the error is not spread evenly across the play.
    given(ErrorKind::handle_play, context_.handle_play_deg, kPractice,
          "the play of the handle is not known");
  }

  void rig_sides() {
    given(ErrorKind::rig_heading, context_.rig_heading_sigma_deg, kGiven,
          "the error of the rig's heading is not known");
    rounding(kRigWordStep_deg);
    practice(ErrorKind::reading, kByEye_deg);
  }

  void sun() {
    practice(ErrorKind::reading, kSight_deg);
    sight();
    clock(context_.sun_turn_deg_per_min, "the turn of the sun in a minute is not known");
  }

  void star() {
    const auto& altitude_deg = context_.star_altitude_deg;
    if (!altitude_deg || !(*altitude_deg >= 0.0 && *altitude_deg < 90.0)) {
      return refuse("the height of the star is not known");
    }
    practice(ErrorKind::reading, star_sight_deg(*altitude_deg));
    sight();
    clock(context_.star_turn_deg_per_min, "the turn of the star in a minute is not known");
  }

  void pole_star_as_north() {
    practice(ErrorKind::reading, kSight_deg);
    sight();
    const auto& latitude = context_.latitude_deg;
    if (!latitude || !(*latitude > 0.0 && *latitude < 90.0)) {
      return refuse("the northern latitude of the stop is not known",
                    "the pole star is visible only from northern latitudes");
    }
    practice(ErrorKind::pole_star, pole_star_from_north_deg(*latitude));
  }

  void landmark() {
    practice(ErrorKind::reading, kSight_deg);
    sight();
    const auto error =
        known(context_.landmark_error_m, "the error of the landmark's position is not known");
    const auto distance =
        over_zero(context_.landmark_distance_m, "the distance to the landmark is not known");
    if (!error || !distance) return;
    add(ErrorKind::landmark, angle_of_error_deg(*error, *distance), kGeometry);
  }

  void walked_line() {
    practice(ErrorKind::reading, kSight_deg);
    sight();
    const auto error =
        known(context_.walk_end_error_m, "the error of the ends of the walked line is not known");
    const auto length =
        over_zero(context_.walk_length_m, "the length of the walked line is not known");
    if (!error || !length) return;
    add(ErrorKind::walked_line, line_error_deg(*error, *length), kLineGeometry);
  }

  // The difference of two readings at one spot: the needle is pulled the same at both.
  void turn_in_place() {
    practice(ErrorKind::reading, std::numbers::sqrt2 * kBaseplateCompass_deg);
    given(ErrorKind::known_direction, context_.known_direction_sigma_deg, kGiven,
          "no landmark, sun or star to turn from is known");
    sight();
  }

  void course() {
    given(ErrorKind::course, context_.course_sigma_deg, kGiven,
          "the error of the course is not known");
  }
  void clock(std::optional<double> turn_deg_per_min, const char* what) {
    const auto clock_min = known(context_.clock_error_min, "the error of the clock is not known");
    if (!clock_min) return;
    if (!turn_deg_per_min || !std::isfinite(*turn_deg_per_min)) return refuse(what);
    add(ErrorKind::sun_clock, *clock_min * std::fabs(*turn_deg_per_min),
        "error of the clock times the turn of the azimuth");
  }
  void declination() {
    given(ErrorKind::declination, context_.declination_sigma_deg, kModel,
          "the error of the declination is not known");
  }
  void sight() { practice(ErrorKind::sight_line, kSightLine_deg); }
  void practice(ErrorKind kind, double sigma_deg) { add(kind, sigma_deg, kPractice); }
  void rounding(double step_deg) { add(ErrorKind::rounding, step_deg / std::sqrt(12.0), kUniform); }

  Result<HeadingBudget> budget() && {
    if (refusal_) return *std::move(refusal_);
    std::stable_sort(lines_.begin(), lines_.end(), [](const ErrorLine& a, const ErrorLine& b) {
      return a.sigma_deg > b.sigma_deg;
    });
    const double total_deg = root_of_squares_deg(lines_);
    return HeadingBudget{std::move(lines_), total_deg};
  }

 private:
  void add(ErrorKind kind, double sigma_deg, std::string_view source) {
    lines_.push_back({kind, sigma_deg, source, source == kPractice});
  }
  void given(ErrorKind kind, std::optional<double> sigma_deg, std::string_view source,
             const char* what) {
    if (const auto value = known(sigma_deg, what)) add(kind, *value, source);
  }
  std::optional<double> known(std::optional<double> value, const char* what) {
    if (value && std::isfinite(*value) && *value >= 0.0) return value;
    refuse(what);
    return std::nullopt;
  }
  std::optional<double> over_zero(std::optional<double> value, const char* what) {
    if (value && std::isfinite(*value) && *value > 0.0) return value;
    refuse(what);
    return std::nullopt;
  }
  void refuse(const char* what, const char* remedy = "enter it, or use another method") {
    if (refusal_) return;
    refusal_ = Error{.what = what, .where = "error of a heading", .remedy = remedy};
  }

  const HeadingContext& context_;
  std::vector<ErrorLine> lines_;
  std::optional<Error> refusal_;
};

void collect(PointingMethod method, Collector& lines) {
  switch (method) {
    case PointingMethod::bearing_alone:
      return;
    case PointingMethod::map_ruler:
      return;
    case PointingMethod::baseplate_compass:
      return lines.needle(kBaseplateCompass_deg);
    case PointingMethod::sighting_compass:
      return lines.needle(kSight_deg);
    case PointingMethod::set_compass:
      lines.rounding(1.0);
      return lines.needle(kBaseplateCompass_deg);
    case PointingMethod::tablet_magnetometer:
      return lines.tablet();
    case PointingMethod::handle:
      return lines.handle();
    case PointingMethod::rig_sides:
      return lines.rig_sides();
    case PointingMethod::sun_shadow:
      return lines.sun();
    case PointingMethod::star:
      return lines.star();
    case PointingMethod::pole_star_as_north:
      return lines.pole_star_as_north();
    case PointingMethod::landmark:
      return lines.landmark();
    case PointingMethod::walked_line:
      return lines.walked_line();
    case PointingMethod::course_over_ground:
      return lines.course();
    case PointingMethod::true_heading_sensor:
      return lines.practice(ErrorKind::reading, kTrueHeadingSensor_deg);
    case PointingMethod::magnetic_heading_sensor:
      return lines.magnetic_sensor();
    case PointingMethod::turn_in_place:
      return lines.turn_in_place();
  }
}

}  // namespace

std::string_view to_text(ErrorKind kind) {
  switch (kind) {
    case ErrorKind::position:
      return "position";
    case ErrorKind::map_ruler:
      return "ruler on the map";
    case ErrorKind::map_north:
      return "north of the sheet";
    case ErrorKind::declination:
      return "declination";
    case ErrorKind::deviation:
      return "iron nearby";
    case ErrorKind::sight_line:
      return "sight line";
    case ErrorKind::reading:
      return "reading";
    case ErrorKind::rounding:
      return "rounding";
    case ErrorKind::rig_heading:
      return "rig heading";
    case ErrorKind::handle_zero:
      return "handle calibration";
    case ErrorKind::handle_play:
      return "handle play";
    case ErrorKind::sun_clock:
      return "clock";
    case ErrorKind::pole_star:
      return "pole star off north";
    case ErrorKind::landmark:
      return "landmark";
    case ErrorKind::walked_line:
      return "walked line";
    case ErrorKind::course:
      return "course";
    case ErrorKind::known_direction:
      return "known direction";
  }
  return {};
}

std::string_view to_text(PointingMethod method) {
  switch (method) {
    case PointingMethod::bearing_alone:
      return "the bearing alone";
    case PointingMethod::map_ruler:
      return "ruler on a paper map";
    case PointingMethod::baseplate_compass:
      return "compass in the hand";
    case PointingMethod::sighting_compass:
      return "sighting compass";
    case PointingMethod::set_compass:
      return "compass with its declination set";
    case PointingMethod::tablet_magnetometer:
      return "the tablet's own compass";
    case PointingMethod::handle:
      return "ceiling handle";
    case PointingMethod::rig_sides:
      return "sides of the rig";
    case PointingMethod::sun_shadow:
      return "shadow of a plumb line";
    case PointingMethod::star:
      return "star";
    case PointingMethod::pole_star_as_north:
      return "pole star taken for north";
    case PointingMethod::landmark:
      return "landmark";
    case PointingMethod::walked_line:
      return "walked line";
    case PointingMethod::course_over_ground:
      return "course over ground";
    case PointingMethod::true_heading_sensor:
      return "heading sensor, true";
    case PointingMethod::magnetic_heading_sensor:
      return "heading sensor, magnetic";
    case PointingMethod::turn_in_place:
      return "turn in place by a compass";
  }
  return {};
}

double root_of_squares_deg(std::span<const ErrorLine> lines) {
  double squares_deg2 = 0.0;
  for (const ErrorLine& line : lines) squares_deg2 += line.sigma_deg * line.sigma_deg;
  return std::sqrt(squares_deg2);
}

double typed_heading_sigma_deg(std::optional<Standing> read_at, double declination_sigma_deg,
                               double horizontal_nt) {
  if (!read_at) return kUnsaidHeading_deg;
  const double needle_deg = std::hypot(declination_sigma_deg, kBaseplateCompass_deg,
                                       deviation_sigma_deg(*read_at, horizontal_nt));
  return std::hypot(needle_deg, kSight_deg);
}

double star_sight_deg(double altitude_deg) {
  return kSight_deg / std::cos(altitude_deg * kDegree);
}

double pole_star_from_north_deg(double latitude_deg) {
  return kPolarDistance_deg / std::cos(latitude_deg * kDegree);
}

Result<HeadingBudget> heading_budget(PointingMethod method, const HeadingContext& context) {
  Collector lines(context);
  method == PointingMethod::map_ruler ? lines.paper() : lines.bearing();
  collect(method, lines);
  return std::move(lines).budget();
}

}  // namespace mastwise
