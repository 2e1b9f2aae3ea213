#pragma once

#include "tests/support/dice.hpp"

#include <cmath>
#include <numbers>

namespace mastwise::test {

// The iron of a rig around a magnetic heading sensor that is fixed to it: permanent magnetism along
// and across the rig, and iron that the earth magnetizes. The sensor reads the direction of the sum
// of the fields [NGA, Handbook of Magnetic Compass Adjustment (2004), chapter II].
struct RigIron {
  double along_nt = 0.0, across_nt = 0.0;  // permanent, toward the nose and the right
  // Induced: shares of the earth's field along, across and downward that add to along and across.
  double along_by_along = 0.0, along_by_across = 0.0, along_by_down = 0.0;
  double across_by_along = 0.0, across_by_across = 0.0, across_by_down = 0.0;
  double mounted_deg = 0.0;  // of the sensor, clockwise from the nose

  // A rig of ordinary size: deviations of a few to fifteen degrees.
  static RigIron any(Dice& dice) {
    const auto permanent_nt = [&] { return 1500.0 * dice.normal(); };
    const auto induced = [&] { return 0.02 * dice.normal(); };
    return {.along_nt = permanent_nt(),
            .across_nt = permanent_nt(),
            .along_by_along = induced(),
            .along_by_across = induced(),
            .along_by_down = induced(),
            .across_by_along = induced(),
            .across_by_across = induced(),
            .across_by_down = induced(),
            .mounted_deg = 3.0 * dice.normal()};
  }

  // The reading while the nose points to a magnetic course.
  double reads_deg(double course_deg, double horizontal_nt, double down_nt) const {
    const double course = course_deg * std::numbers::pi / 180.0;
    const double along = horizontal_nt * std::cos(course);
    const double across = -horizontal_nt * std::sin(course);
    const double field_along = along + along_nt + along_by_along * along +
                               along_by_across * across + along_by_down * down_nt;
    const double field_across = across + across_nt + across_by_along * along +
                                across_by_across * across + across_by_down * down_nt;
    return std::atan2(-field_across, field_along) * 180.0 / std::numbers::pi + mounted_deg;
  }
};

}  // namespace mastwise::test
