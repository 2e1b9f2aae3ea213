#pragma once

#include "core/geo/position.hpp"
#include "core/time.hpp"

#include <array>
#include <chrono>
#include <cstddef>
#include <optional>
#include <string_view>

namespace mastwise::nmea {

// Time since midnight UTC, below 24 h; a leap second reads 23:59:60, which is 24 h.
using TimeOfDay = milliseconds;
using Date = std::chrono::year_month_day;

// The fields of one sentence. Field 0 is the address ("GPRMC"); fields count as in the standard. A
// field that is absent, empty or malformed is std::nullopt, never 0.
class Fields {
 public:
  // `sentence` begins with its `$` and has no checksum; it must outlive this object. Fields after
  // the 40th are dropped: no sentence read here has more than 20.
  explicit Fields(std::string_view sentence);

  std::size_t count() const { return count_; }
  // Empty if absent.
  std::string_view text(std::size_t field) const;
  // The only character of the field; a null character if the field has none or several.
  char letter(std::size_t field) const;
  // A decimal number with an optional sign: no exponent, no words.
  std::optional<double> number(std::size_t field) const;
  // A whole number of 0 to 9999.
  std::optional<int> whole(std::size_t field) const;
  // hhmmss with optional decimals, of which three are kept.
  std::optional<TimeOfDay> time_of_day(std::size_t field) const;
  // ddmmyy. Two-digit years of 80 and later are of the 1900s: GPS time begins in January 1980.
  std::optional<Date> date(std::size_t field) const;
  // Four fields: ddmm.m, N or S, dddmm.m, E or W. Refuses minutes of 60 and more, latitudes over 90
  // degrees, longitudes over 180 degrees, and a missing hemisphere.
  std::optional<Position> position(std::size_t first_field) const;
  // Two fields: a size of 0 to 180 and E or W (negative), in degrees.
  std::optional<double> east_deg(std::size_t first_field) const;

 private:
  std::array<std::string_view, 40> fields_{};
  std::size_t count_ = 0;
};

}  // namespace mastwise::nmea
