#pragma once

#include "core/geo/position.hpp"
#include "core/headings/aim_card.hpp"
#include "core/result.hpp"
#include "core/stations/station.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

// What several verbs read from their arguments and print.
namespace mastwise::cli {

// Told before anything that is invented.
inline constexpr const char* kPracticeLine = "PRACTICE AREA: invented stations and hills\n";

// A position in any notation; the error shows the character.
Result<Position> position_argument(const std::string& option, const std::string& text);

// "2026-07-02" or "2026-07-02T18:00:00Z"; now where empty.
Result<UtcTime> date_argument(const std::string& option, const std::string& text);

// "1280x800".
struct Size {
  int width_px, height_px;
};
Result<Size> size_argument(const std::string& text);

// A true heading of the nose, 0 to 360 degrees.
Result<std::optional<RigHeading>> nose_argument(std::optional<double> degrees);

// Where a heading leads: a position, or a station of a catalog.
struct Destination {
  Position position;
  std::optional<Station> station = {};
};
// `to` is a position in any notation and `call_sign` a station; exactly one is given.
Result<Destination> destination_argument(const std::string& to, const std::string& call_sign,
                                         const std::string& given_catalog);

// The practice area's station of that call sign.
Result<Station> practice_station(const std::vector<Station>& stations,
                                 const std::string& call_sign);

// The catalog that a verb uses: the one given, else the user's own.
Result<std::string> catalog_path(const std::string& given);

// One JSON object on standard output; what a table says that is no UTF-8 is marked as lost.
void print(const nlohmann::json& json);

// An antenna's pattern from a file of two columns, angle and response; see gear::Pattern. Returns
// the table's text once it has been read without fault.
Result<std::string> pattern_argument(const std::string& path);

nlohmann::json card_json(const AimCard& card);
// The card as a person reads it.
std::string card_text(const AimCard& card, Position from, const Destination& to, UtcTime date);

}  // namespace mastwise::cli
