#pragma once

#include "core/angles/bearing.hpp"
#include "core/result.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace mastwise::gear {

// Response of an antenna off its axis, relative to the axis, in the horizontal plane.
class Pattern {
 public:
  // The same response in every direction.
  static Pattern omnidirectional();

  // One beam: power max(cos^n, floor) with n = log 0.5 / log cos(HPBW / 2), which is half at HPBW /
  // 2 exactly [common practice, no source]. `half_power_beamwidth_deg` 1 to 170 and
  // `front_to_back_db` 0 to 60; values outside are clamped.
  static Pattern directional(double half_power_beamwidth_deg, double front_to_back_db);

  // Two equal beams, front and back: power max(|cos|^n, floor), with the ends of the elements
  // `end_floor_db` below the axis; ranges as for directional().
  static Pattern bidirectional(double half_power_beamwidth_deg, double end_floor_db);

  // A table of two columns separated by comma, semicolon, tab, bar or blanks: the angle off the
  // axis in degrees (-360 to 360, clockwise seen from above) and the response, rows in any order.
  // Lines that begin with '#' are skipped. The second cell of a heading line gives the type of
  // response: "db" for decibels of any reference, "field" for the relative field. Without a
  // heading, negative values mean decibels and values from 0 to 1 the field. Angles that are all
  // within 0 and 180 are one side of a symmetrical antenna. The field is linear between rows.
  // Errors, with line and remedy: a row that is not two numbers, a repeated angle, a gap of more
  // than 30 degrees, no row for the axis (0 degrees), an antenna over 1 dB stronger off the axis
  // than on it. A smaller excess, as from measured ripple, counts as 0 dB.
  static Result<Pattern> from_table(std::string_view text);

  // The same, but a table's response is nowhere more than `depth_db` below the axis. The other
  // patterns have a floor of their own.
  Pattern no_deeper_than(double depth_db) const;

  // Whether it came from a table, so that its nulls are real ones.
  bool from_measurement() const { return !table_.empty(); }

  // At most 0 dB, and 0 on the axis; never below -60.
  double relative_db(Turn off_axis) const;

  // The angle between the two half-power directions around the axis; std::nullopt if the response
  // does not fall to half on both sides.
  std::optional<double> half_power_beamwidth_deg() const;

  // Level of the axis above the opposite direction; at least 0.
  double front_to_back_db() const { return 0.0 - relative_db(Turn::clockwise_deg(180.0)); }

  bool operator==(const Pattern&) const = default;

 private:
  struct Point {
    double angle_deg;  // within [0, 360)
    double field;      // 1 on the axis
    bool operator==(const Point&) const = default;
  };

  Pattern() = default;
  static Pattern lobes(double half_power_beamwidth_deg, double floor_db, bool both_faces);
  double table_field(double angle_deg) const;
  std::optional<double> table_half_power_deg(bool clockwise) const;

  double exponent_ = 0.0;  // n
  double floor_db_ = 0.0;  // at most 0
  bool both_faces_ = false;
  std::vector<Point> table_ = {};  // by angle; empty unless from a custom table
};

}  // namespace mastwise::gear
