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

// How one of a station's fields is found in a foreign table.
struct FieldRule {
  std::string column = {};
  double factor = 1.0;                    // the cell's number times this gives our unit
  std::vector<std::string> unknown = {};  // cells that mean "not known", besides the empty one
  std::map<std::string, std::string> values = {};  // cell to our word; empty: cells are our words
  bool operator==(const FieldRule&) const = default;
};

enum class AngleNotation : std::uint8_t {
  decimal,     // 44.352778
  packed_dms,  // DDMMSS or DDDMMSS, seconds may have a fraction: 442110, 0714413.5; or with marks
               // between: 44-21-10, 44°21'10.5"
  separate,    // degrees, minutes and seconds each in a column
};

// How a latitude or a longitude is found and which way it counts.
struct AngleRule {
  AngleNotation notation = AngleNotation::decimal;
  std::string column = {};  // with `separate`: that of the degrees
  std::string minutes_column = {};
  std::string seconds_column = {};
  std::string letter_column = {};  // N, S, E or W by itself; empty: none
  bool letter_in_cell = false;     // "44.35N": the cell ends in its letter
  bool positive_is_south_or_west = false;
  bool sixty_seconds_carry = false;  // 60 seconds (a rounded 59.5 and more) are the next minute
  bool operator==(const AngleRule&) const = default;
};

// How to read a regulator's delimited table.
struct TableMapping {
  Source source = {};
  char separator = '\0';              // '\0': the one that the header has most of
  char comment = '\0';                // lines that begin with it are passed over; '\0': none are
  std::optional<Raster> raster = {};  // nothing: the table has a column for it
  std::optional<BroadcastStandard> standard = {};
  Datum datum = Datum::wgs84;
  AngleRule latitude = {};
  AngleRule longitude = {};
  std::map<std::string, FieldRule> fields = {};  // by the field names of import_csv.hpp
  bool optional_columns = false;                 // columns that the table lacks are passed over
  bool operator==(const TableMapping&) const = default;
};

// Reads a mapping file, JSON:
//   {"source": {"name": "...", "date": "2017-04-13"},       date may be left out
//    "separator": ",",                                       may be left out
//    "comment": "#",                                         may be left out
//    "raster": "ATSC",                                       unless "fields" has raster
//    "standard": "ATSC 1.0",                                 may be left out
//    "datum": "NAD83",                                       WGS84, NAD83, NAD27
//    "latitude":  {"column": "Lat", "notation": "DDMMSS", "positive": "north"},
//    "longitude": {"column": "Lon", "notation": "DDDMMSS", "positive": "west",
//                  "sixty_seconds": "carry"},
//    "fields": {"call_sign": "Call",
//               "erp_kw": {"column": "ERP_W", "unit": "W", "unknown": ["0"]},
//               "directional": {"column": "DA", "values": {"DA": "yes", "ND": "no"}}},
//    "about": "..."}                                         for the human reader
// Notations: "decimal"; "DDMMSS" or "DDDMMSS"; "separate" with "degrees", "minutes", "seconds"
// (columns; the last two may be left out) in place of "column". "positive": north, south, east or
// west; "letter" when the cell ends in its letter; or leave it out and name a "letter_column".
// "values": "*" stands for any other cell, and a word that is empty for "not known".
// "sixty_seconds": "refuse" (as if left out) or "carry". Units: kW, W, MW for erp_kw; m, ft for the
// heights. Fields: those of import_csv.hpp but the coordinates, and "site" (told apart within a
// facility). An error says which key is wrong, what is known there and what to do.
Result<TableMapping> parse_table_mapping(std::string_view json);

// The mapping file that parse_table_mapping() reads as this mapping, so that one that was guessed
// and corrected can be remembered. `optional_columns` is no part of it. A factor that is no unit's
// cannot be written: parse_table_mapping() gives none.
std::string to_json(const TableMapping& mapping);

}  // namespace mastwise
