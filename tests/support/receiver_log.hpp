#pragma once

#include "app/service/startup.hpp"
#include "core/geo/position.hpp"
#include "tests/support/nmea_text.hpp"

#include <cmath>
#include <string>

#include <fmt/format.h>

namespace mastwise::test {

// One second of an invented receiver: GGA and RMC at `second` of the day two days after the build
// date (an earlier date would look like a receiver's 1024-week rollover).
inline std::string epoch(int second, const Position& position, double speed_knots = 0.0,
                         double course_deg = 0.0) {
  const auto angle = [](double degrees, const char* digits, char positive, char negative) {
    const double size = std::fabs(degrees);
    const double whole = std::floor(size);
    return fmt::format(fmt::runtime(digits), static_cast<int>(whole), (size - whole) * 60.0) + ',' +
           (degrees < 0.0 ? negative : positive);
  };
  const std::string place = angle(position.latitude_deg(), "{:02}{:09.6f}", 'N', 'S') + ',' +
                            angle(position.longitude_deg(), "{:03}{:09.6f}", 'E', 'W');
  const std::string time =
      fmt::format("{:02}{:02}{:02}.00", second / 3600, second / 60 % 60, second % 60);
  const std::chrono::year_month_day day{service::build_date() + std::chrono::days(2)};
  const std::string date =
      fmt::format("{:02}{:02}{:02}", static_cast<unsigned>(day.day()),
                  static_cast<unsigned>(day.month()), static_cast<int>(day.year()) % 100);
  return sentence("GPGGA," + time + ',' + place + ",1,09,0.9,1390.0,M,-18.0,M,,") +
         sentence("GPRMC," + time + ",A," + place +
                  fmt::format(",{:.2f},{:.1f},", speed_knots, course_deg) + date + ",,,A");
}

}  // namespace mastwise::test
