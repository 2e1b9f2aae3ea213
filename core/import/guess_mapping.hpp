#pragma once

#include "core/import/table_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// Something that a table does not say and that was assumed.
struct Doubt {
  enum class Kind : std::uint8_t {
    column,           // which column has the field
    latitude_sign,    // "north", "south": which way positive counts
    longitude_sign,   // "east", "west"
    datum,            // "WGS84", "NAD83", "NAD27"
    power_unit,       // "kW", "W", "MW"
    height_unit,      // "m", "ft"; of all heights
    raster,           // the rasters' names
    zero_is_unknown,  // "not known", "as it is": what the figure 0 means in the field
  };
  Kind kind = Kind::column;
  std::string field = {};  // as in table_mapping.hpp; or latitude, longitude, heights
  std::vector<std::string> options = {};  // all readings
  std::size_t chosen = 0;                 // the one that the mapping has
  std::string why = {};                   // why it was chosen and can be wrong, for a person
  bool operator==(const Doubt&) const = default;
};

struct GuessedMapping {
  TableMapping mapping = {};
  std::vector<Doubt> doubts = {};  // the gravest first: those that move stations
};

// Guesses what the columns of a delimited table are, from its header and the rows of its head (the
// first 200 are looked at; a last row that is cut off is left out): by words of the header and by
// what the cells can be. The words are common practice, no source. Longitudes that are all positive
// and carry no letter are taken for west where most call signs are of North America's series [ITU
// Radio Regulations, appendix 42: K, N, W; CF to CK, VA to VG, XA to XI], else for east; either way
// it is a doubt. An error says which of call sign, RF channel, latitude and longitude was not found
// and which columns there are.
Result<GuessedMapping> guess_mapping(std::string_view head, const Source& source);

// Takes another of a doubt's readings. `doubt` and `option` are numbers in the lists; others change
// nothing.
void choose(GuessedMapping& guess, std::size_t doubt, std::size_t option);

// Up to `count` stations of the head, spread over it, for a map to show by. A head of which no row
// can be read gives none.
std::vector<Station> sample_stations(std::string_view head, const TableMapping& mapping,
                                     std::size_t count = 10);

// At most so many of the stations, evenly over their order.
std::vector<Station> spread_over(const std::vector<Station>& stations, std::size_t count);

// How tables write a figure of nothing that stands for "not known".
std::vector<std::string> zero_cells();

}  // namespace mastwise
