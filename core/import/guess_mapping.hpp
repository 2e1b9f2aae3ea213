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

// An assumption about something that the table does not say.
struct Doubt {
  enum class Kind : std::uint8_t {
    column,           // which column has the field
    latitude_sign,    // "north", "south": which way positive counts
    longitude_sign,   // "east", "west"
    datum,            // "WGS84", "NAD83", "NAD27"
    power_unit,       // "kW", "W", "MW"
    height_unit,      // "m", "ft"; of all heights
    raster,           // the names of the channel plans
    zero_is_unknown,  // "not known", "as it is": the meaning of 0 in the field
  };
  Kind kind = Kind::column;
  std::string field = {};  // as in table_mapping.hpp; or latitude, longitude, heights
  std::vector<std::string> options = {};  // all readings
  std::size_t chosen = 0;                 // the one in the mapping
  std::string why = {};                   // why it was chosen and can be wrong, for the user
  bool operator==(const Doubt&) const = default;
};

struct GuessedMapping {
  TableMapping mapping = {};
  std::vector<Doubt> doubts = {};         // those that move stations first
  std::vector<std::string> missing = {};  // "the RF channel": needed, and not recognized
  std::vector<std::string> remarks = {};  // what was recognized and changes how numbers are read
};

// Guesses the columns of a delimited table from its header and the first 200 rows of its head (an
// incomplete last row is left out), by header words and cell contents. The words are common
// practice, no source. If all longitudes are positive without a letter, they are west if most call
// signs are of North America's series [ITU Radio Regulations, appendix 42: K, N, W; CF to CK, VA to
// VG, XA to XI], else east; either way this is listed as a doubt. The error says which of call
// sign, RF channel, latitude and longitude was not found, and lists the columns.
Result<GuessedMapping> guess_mapping(std::string_view head, const Source& source);

// The same with the columns that can be recognized, for a person to complete: never an error.
GuessedMapping recognized_columns(std::string_view head, const Source& source);

// Chooses another reading of a doubt. `doubt` and `option` are indexes in the lists; an invalid
// index changes nothing.
void choose(GuessedMapping& guess, std::size_t doubt, std::size_t option);

// Up to `count` stations, spread evenly over the head, for a preview map. Empty if no row can be
// read.
std::vector<Station> sample_stations(std::string_view head, const TableMapping& mapping,
                                     std::size_t count = 10);

// At most this many stations, evenly spaced in their order.
std::vector<Station> spread_over(const std::vector<Station>& stations, std::size_t count);

// How tables write a zero that stands for "not known".
std::vector<std::string> zero_cells();

}  // namespace mastwise
