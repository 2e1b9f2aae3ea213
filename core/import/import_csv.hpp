#pragma once

#include "core/import/table_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"

#include <string_view>

namespace mastwise {

// The Mastwise station table: delimited text (RFC 4180; comma, semicolon, tab or bar; UTF-8). Lines
// that begin with # are comments; one header line, then one row for each transmitter. Unless the
// separator is a comma, numbers may have a decimal comma. Columns are in any order and in any case;
// an empty cell is "unknown":
//
//   call_sign       text                                                           must be there
//   raster          ATSC, Europe, Australia, Japan, Brazil                         must be there
//   rf_channel      23, 9A: one that the raster has (not the virtual channel)      must be there
//   latitude_deg    decimal degrees, north positive, WGS84                         must be there
//   longitude_deg   decimal degrees, east positive, WGS84                          must be there
//   id              text, unique in the table; else facility and site, else call sign and channel
//   facility_id     text, the regulator's number
//   site            text, distinguishes the transmitters of one facility
//   name            text
//   network         text
//   multiplex       text, the same for the transmitters of one single-frequency network
//   programs      each "virtual channel|name|network|language", separated by ";"; ends may be left
//                   out: "6.1|Basin Public|Basin Public|en; 6.2|Basin Kids"
//   standard        ATSC 1.0, ATSC 3.0, DVB-T, DVB-T2, ISDB-T
//   site_amsl_m     ground above mean sea level, -500 to 9000
//   antenna_amsl_m  radiation center above mean sea level, -500 to 10000
//   haat_m          radiation center above the average terrain, -9000 to 10000
//   erp_kw          effective radiated power toward the strongest direction, above 0 to 10000
//   polarization    horizontal, vertical, elliptical
//   directional     yes, no
//   pattern         the transmitting antenna's: azimuth from true north and relative field, 0 to 1,
//                   separated by ";", no gap above 90 degrees: "0 0.85; 10 0.9; 20 1; ..."; where
//                   the separator is ";", in quotes
//   city, state     text, the place of license
//   translator      yes, no
//   virtual_channel  of the first program, "6.1" or "6", if the table has no programs column
//
// Any other column is kept as a note.
//
// How that table is read, as a mapping.
TableMapping own_mapping(const Source& source);

// Reads such a table; rows and errors as with read_station_table().
Result<StationTable> read_station_csv(std::string_view text, const Source& source);

}  // namespace mastwise
