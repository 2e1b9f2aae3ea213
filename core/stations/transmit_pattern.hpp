#pragma once

#include "core/angles/bearing.hpp"
#include "core/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// What a transmitting antenna sends toward each direction, as regulators publish it: the relative
// field in the horizontal plane, 1 toward the strongest direction, where the ERP applies.
class TransmitPattern {
 public:
  struct Point {
    float azimuth_deg = 0.0F;     // from true north, within [0, 360)
    float relative_field = 0.0F;  // 0 to 1
    bool operator==(const Point&) const = default;
  };

  // From the points of a table in any order, turned clockwise by `rotation_deg`. A repeated azimuth
  // with the same field counts once. Errors: an azimuth outside 0 to 360, a field outside 0 to 1,
  // one azimuth with two fields, or a gap of more than 90 degrees without a point.
  static Result<TransmitPattern> from_points(std::vector<Point> points, double rotation_deg = 0.0);

  // The relative field toward a direction; linear in the field between two points, also across
  // north [as FCC OET Bulletin 69 interpolates tabulated fields; from memory].
  double relative_field(Bearing<True> direction) const;

  // How far the field toward a direction is below the strongest: -20 log10 of the relative field,
  // dB. At most 40: scatter from the mast's surroundings fills deeper nulls [common practice, no
  // source].
  double loss_db(Bearing<True> direction) const;

  const std::vector<Point>& points() const { return points_; }  // by azimuth
  bool operator==(const TransmitPattern&) const = default;

 private:
  explicit TransmitPattern(std::vector<Point> points) : points_(std::move(points)) {}
  std::vector<Point> points_;
};

// "0 0.85; 10 0.9; 20 1": pairs of azimuth and relative field, separated by ";". Parsing reads it
// back.
std::string to_text(const TransmitPattern& pattern);
Result<TransmitPattern> parse_transmit_pattern(std::string_view text);

}  // namespace mastwise
