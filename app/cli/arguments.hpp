#pragma once

#include "core/geo/position.hpp"
#include "core/headings/aim_card.hpp"
#include "core/headings/heading_error.hpp"
#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "core/time.hpp"
#include "core/zones/time_zone.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

// Arguments and printed output that several verbs share.
namespace mastwise::cli {

// Printed before invented data.
inline constexpr const char* kPracticeLine = "PRACTICE AREA: invented stations and hills\n";

// Ends the parsing as wrong usage, with status 2: what a verb cannot do without is missing. For
// callbacks of verbs.
[[noreturn]] void wrong_usage(const Error& error);

// A position in any notation; the error shows the character.
Result<Position> position_argument(const std::string& option, const std::string& text);

// "2026-07-02", which is its noon in the zone, or "2026-07-02T18:00:00Z"; now if empty.
Result<UtcTime> date_argument(const std::string& option, const std::string& text,
                              const TimeZone& zone);

// "1280x800".
struct Size {
  int width_px, height_px;
};
Result<Size> size_argument(const std::string& text);

// A true heading of the nose, 0 to 360 degrees.
Result<std::optional<RigHeading>> nose_argument(std::optional<double> degrees);

// The target of a heading: a position, or a station of a catalog.
struct Destination {
  Position position;
  std::optional<Station> station = {};
};
// `to` is a position in any notation and `call_sign` a station; exactly one is given.
Result<Destination> destination_argument(const std::string& to, const std::string& call_sign,
                                         const std::string& given_catalog);

// The practice area's station with that call sign.
Result<Station> practice_station(const std::vector<Station>& stations,
                                 const std::string& call_sign);

// The catalog file that a verb uses: the given one, else the default.
Result<std::string> catalog_path(const std::string& given);

// Prints one JSON object on standard output, with table text that is not UTF-8 replaced.
void print(const nlohmann::json& json);

// The text of an antenna pattern file with two columns, angle and response (see gear::Pattern), or
// an error if it does not parse.
Result<std::string> pattern_argument(const std::string& path);

// What the error of a compass in the hand depends on for a typed position.
HeadingContext compass_context(const AimCard& card, std::optional<Standing> standing);

nlohmann::json card_json(const AimCard& card, std::optional<Standing> standing);
// The card as text; `day` is that of the declination, `standing` where the compass is read, if
// known.
std::string card_text(const AimCard& card, std::optional<Standing> standing, Position from,
                      const Destination& to, std::chrono::local_days day);

}  // namespace mastwise::cli
