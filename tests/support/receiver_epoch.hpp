#pragma once

#include "core/geo/position.hpp"
#include "tests/support/nmea_text.hpp"

#include <cmath>
#include <string>

namespace mastwise::test {

// A good fix at a place, `second` of 2 July 2036, 18:00 UTC, with a speed over ground in knots. The
// year is later than any build soon, so that the date needs no repair.
inline std::string epoch(const Position& place, int second, double knots = 0.0) {
  const auto angle = [](double degrees, int digits) {
    const double size = std::fabs(degrees);
    const double whole = std::floor(size);
    return fmt::format("{:0{}.0f}{:010.7f}", whole, digits, (size - whole) * 60.0);
  };
  const std::string where =
      angle(place.latitude_deg(), 2) + (place.latitude_deg() < 0.0 ? ",S," : ",N,") +
      angle(place.longitude_deg(), 3) + (place.longitude_deg() < 0.0 ? ",W" : ",E");
  const std::string time =
      fmt::format("{:02d}{:02d}{:02d}.00", 18 + second / 3600, second / 60 % 60, second % 60);
  return sentence(fmt::format("GPGGA,{},{},1,09,0.9,1500.0,M,-20.0,M,,", time, where)) +
         sentence(fmt::format("GPRMC,{},A,{},{:.1f},,020736,,,A", time, where, knots));
}

}  // namespace mastwise::test
