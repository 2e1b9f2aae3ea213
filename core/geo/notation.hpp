#pragma once

#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <string>
#include <string_view>

namespace mastwise {

// The ways of writing a position, with the size of one step of the last digit.
enum class Notation {
  Decimal,                // 44.435217, -71.675993             0.000001 degree (0.11 m)
  DegreesMinutes,         // 44°26.1130′N 71°40.5596′W         0.0001 minute (0.19 m)
  DegreesMinutesSeconds,  // 44°26′06.8″N 71°40′33.6″W         0.1 second (3.1 m)
  UtmUps,                 // 19N 287027 4923696, UPS N 2106113 1398202   1 m, rounded
  Mgrs,                   // 19TBK 87027 23696, ZBA 06113 98202          the square of 1 m
};

// Reads a position on WGS84 written in any common way, UTF-8:
// - degrees, degrees and minutes, or degrees, minutes and seconds, separated by marks (° º * ' ′ ’
// " ″ '' d m s deg min sec), colons, hyphens (only if letters give the sides) or spaces;
// - the sides by N S E W or their English words, all before or all after, or by a sign; latitude
// first, or either order with letters or the labels lat and lon before the numbers. If one number
// has a letter, the other needs a letter or a sign; a sign is attached to its number;
// - a decimal comma, if the text has no point and each coordinate has one such comma;
// - UTM "19N 287027 4923696", the zone before or after, also "19T 287027mE 4923696mN" with a band
// letter, and UPS "UPS N 2106113 1398202". N and S after a zone's number are the hemisphere; if S
// could also be band S (northings of 32 to 40 degrees north) the text is refused: write "18 north"
// or "18 south", as format_position does;
// - MGRS "19TBK 87027 23696", spaces optional, squares of 1 km or smaller; the position is the
// middle of the square. "deg" and "lat" are squares only in capitals attached to the zone.
//
// The error points at the byte of the text (Error::character) and says what is wrong there and what
// to write; text.size() means that something is missing at the end.
//
// Source of the grids: GeographicLib::UTMUPS and GeographicLib::MGRS.
Result<Position> parse_position(std::string_view text);

// The position as text; parse_position reads it back within half a step of the last digit in each
// coordinate. A value that rounds to 60 minutes or seconds carries over.
std::string format_position(Position position, Notation notation);

}  // namespace mastwise
