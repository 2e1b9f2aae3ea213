#pragma once

#include "core/import/table_datum.hpp"
#include "core/result.hpp"
#include "core/stations/station.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// Cells that give a field where its own column has none.
struct Fallback {
  enum class How : std::uint8_t {
    value,    // of the one column
    largest,  // number of the columns
    sum,      // of a first number, which may be 0, and a second one
  };
  How how = How::value;
  std::vector<std::string> columns = {};
  bool operator==(const Fallback&) const = default;
};

// What a field's number counts.
enum class Scale : std::uint8_t {
  linear,
  dbw,         // of a power: dB above 1 W
  center_mhz,  // of an RF channel: the frequency of its center
  low_mhz,     // of an RF channel: its lower edge
};

// How to find one of a station's fields in a foreign table.
struct FieldRule {
  std::string column = {};
  double factor = 1.0;  // the cell's number times this is in the field's unit
  Scale scale = Scale::linear;
  std::vector<std::string> unknown = {};  // cells that mean "not known", besides an empty cell
  // Cell to Mastwise word; if empty, cells are Mastwise words.
  std::map<std::string, std::string> values = {};
  std::vector<Fallback> otherwise = {};  // tried in this order
  bool optional = false;                 // the table may lack the column
  bool operator==(const FieldRule&) const = default;
};

enum class AngleNotation : std::uint8_t {
  decimal,     // 44.352778
  packed_dms,  // DDMMSS or DDDMMSS, seconds may have a fraction: 442110, 0714413.5; or with marks
               // between: 44-21-10, 44°21'10.5"
  separate,    // degrees, minutes and seconds each in a column
  os_grid,     // a British grid reference, the same column for both: SU 387 148 (geo/os_grid.hpp)
};

// How to find a latitude or a longitude, and its positive direction.
struct AngleRule {
  AngleNotation notation = AngleNotation::decimal;
  std::string column = {};  // with `separate`: the degrees' column
  std::string minutes_column = {};
  std::string seconds_column = {};
  std::string letter_column = {};  // for a separate N, S, E or W; empty: none
  bool letter_in_cell = false;     // "44.35N": the cell ends in its letter
  bool positive_is_south_or_west = false;
  bool sixty_seconds_carry = false;  // 60 seconds (a rounded 59.5 and more) are the next minute
  bool operator==(const AngleRule&) const = default;
};

// How to read a regulator's delimited table.
struct TableMapping {
  Source source = {};
  char separator = '\0';              // '\0': the most frequent one in the header
  char comment = '\0';                // lines that begin with it are skipped; '\0': none are
  std::optional<Raster> raster = {};  // std::nullopt: the table has a column for it
  std::optional<BroadcastStandard> standard = {};
  Datum datum = Datum::wgs84;
  AngleRule latitude = {};
  AngleRule longitude = {};
  std::map<std::string, FieldRule> fields = {};  // by the field names of import_csv.hpp
  bool optional_columns = false;                 // columns that the table lacks are ignored
  bool decimal_comma = false;             // numbers have one though commas separate the cells
  std::vector<std::string> columns = {};  // their names, if the table has no header line
  // Rows to read: column: one of these cells, or none of them.
  std::map<std::string, std::vector<std::string>> where = {};
  std::map<std::string, std::vector<std::string>> where_not = {};
  bool operator==(const TableMapping&) const = default;
};

// Whether a filter lists the cell: "X*" stands for all that begin so, "*X*" for all with it inside.
bool one_of(const std::vector<std::string>& filter, std::string_view cell);

// Reads a mapping file, JSON:
//   {"source": {"name": "...", "date": "2017-04-13"},       date may be left out
//    "separator": ",",                                       may be left out
//    "comment": "#",                                         may be left out
//    "decimal_comma": true,                                  needed where "," is the separator too
//    "raster": "ATSC",                                       unless "fields" has raster
//    "standard": "ATSC 1.0",                                 may be left out
//    "datum": "NAD83",                                       WGS84, NAD83, NAD27
//    "latitude":  {"column": "Lat", "notation": "DDMMSS", "positive": "north"},
//    "longitude": {"column": "Lon", "notation": "DDDMMSS", "positive": "west",
//                  "sixty_seconds": "carry"},
//    "fields": {"call_sign": "Call",
//               "erp_kw": {"column": "ERP_W", "unit": "W", "unknown": ["0"]},
//               "directional": {"column": "DA", "values": {"DA": "yes", "ND": "no"}},
//               "antenna_amsl_m": {"column": "AMSL", "optional": true,
//                                  "otherwise": ["AMSL2", {"sum": ["Ground", "Height"]}]}},
//    "columns": ["Call", "Ch", ...],                         if the table has no header line
//    "where": {"Kind": ["TV"]}, "where_not": {"Status": ["off", "X*"]},  rows to read, as in
//                                                            joined_mapping.hpp; may be left out
//    "about": "..."}                                         for the human reader
// Notations: "decimal"; "DDMMSS" or "DDDMMSS"; "separate" with "degrees", "minutes", "seconds"
// (columns; the last two are optional) instead of "column"; "OS grid", a British grid reference,
// for both in one column, without "positive" and with the datum WGS84. "positive": north, south,
// east or west; "letter" if the cell ends in its letter; or omit it and name a "letter_column".
// "values": "*" matches any other cell, "" an empty one, and an empty word means "not known".
// "otherwise": columns for an empty or unknown cell, in the same unit: one, the {"largest": [...]}
// of several, or the
// {"sum": [...]} of two numbers. "optional": the table may lack the column. "sixty_seconds":
// "refuse" (the default) or "carry". Units: kW, W, MW,
// dBW for erp_kw; m, ft for the heights; "center MHz", "low MHz" for rf_channel. Fields:
// those of import_csv.hpp except the coordinates, and "site" (distinguishes transmitters within a
// facility). The error names the wrong key, the known choices and the remedy.
Result<TableMapping> parse_table_mapping(std::string_view json);

// A mapping file that parse_table_mapping() reads back as this mapping, so that a guessed and
// corrected mapping can be saved. It omits `optional_columns`. A factor that belongs to no unit
// cannot be written; parse_table_mapping() never returns one.
std::string to_json(const TableMapping& mapping);

}  // namespace mastwise
