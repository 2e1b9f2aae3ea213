#pragma once

#include "core/geo/position.hpp"
#include "core/import/table_mapping.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// Another way to read a table's coordinates.
enum class CoordinateReading : std::uint8_t {
  as_mapped,
  latitude_turned,   // the other sign
  longitude_turned,  // the other sign
  both_turned,
  swapped,  // latitude and longitude exchanged
  swapped_longitude_turned,
};

// Why the positions of a table look wrong.
struct Suspicion {
  enum class Kind : std::uint8_t {
    unreadable,     // hardly a row has a possible position
    no_land,        // most positions are far from any town, as at sea
    other_country,  // most are in another country than their call signs
  };
  Kind kind = Kind::no_land;
  CoordinateReading as_read = CoordinateReading::as_mapped;
  std::optional<CoordinateReading> other = {};  // the reading that explains it, if one does
  double share = 0.0;        // of the stations that lie where they can be, 0 to 1
  double share_other = 0.0;  // by the other reading
  bool operator==(const Suspicion&) const = default;
};

// The mapping with its coordinates read in another way. A letter in the cells or a letter column
// fixes the sign, so a turned axis with one stays as it is.
TableMapping reread(const TableMapping& mapping, CoordinateReading reading);

// The countries of the towns near a position, ISO 3166 alpha-2; empty at sea and in empty land.
using CountriesNear = std::function<std::vector<std::string>(const Position&)>;

// The country that issues call signs of these first letters, of those whose television uses them on
// the air: US, CA or MX; else empty. Source: ITU Radio Regulations, appendix 42.
std::string_view country_of_call_sign(std::string_view call_sign);

// Looks at the positions of up to 100 stations of a table's head. A suspicion needs most of them to
// be where no station is heard: far from every town, or in another country than their call signs.
// If another reading of the coordinates puts most of them where they belong, it is named. Empty if
// the positions look right, or too few rows (fewer than 3) can be read in any way.
std::optional<Suspicion> suspicion_of(std::string_view head, const TableMapping& mapping,
                                      const CountriesNear& countries_near);

}  // namespace mastwise
