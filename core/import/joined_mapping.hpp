#pragma once

#include "core/import/record_reader.hpp"
#include "core/import/table_mapping.hpp"
#include "core/result.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

// One file of a set of tables.
struct TableFile {
  std::string file = {};                  // "app_location.dat"
  std::vector<std::string> columns = {};  // their names, if the file has no header line
  std::string key = {};                   // column of this file; empty for the first table
  std::string joins = {};                 // "table.column" of an earlier table, equal to the key
  // Column: one of these cells, or none of them. See one_of().
  std::map<std::string, std::vector<std::string>> where = {};
  std::map<std::string, std::vector<std::string>> where_not = {};
};

struct JoinedTable {
  std::string name = {};  // its columns are called "name.column"
  TableFile file = {};
  bool optional = false;  // keep stations without a row in it, or without the file
};

// The table of transmitting antenna patterns: a row for each azimuth. Without its file the patterns
// stay unknown.
struct PatternTable {
  TableFile file = {};
  std::string azimuth = {};   // column of this file, degrees
  std::string field = {};     // column of this file, relative field
  std::string rotation = {};  // "table.column", degrees clockwise; empty: none
};

// Which of several rows of one station is in force: the one where two columns agree, else the one
// with the latest date, as text.
struct LatestRule {
  std::string column = {};  // "table.column"
  std::string equals = {};
  std::string date = {};
};

// A note on a station: the first column that is not empty.
struct JoinedNote {
  std::string label = {};
  std::vector<std::string> columns = {};  // "table.column"; the tables may lack them
};

// How to build stations from a regulator's set of tables, joined by keys.
struct JoinedMapping {
  TableMapping stations = {};  // its columns are "table.column"
  RecordFormat format = {};
  std::vector<JoinedTable> tables = {};  // in reading order
  std::optional<PatternTable> pattern = {};
  std::optional<LatestRule> latest = {};
  std::vector<JoinedNote> notes = {};
};

// Reads a mapping of joined tables, JSON: a mapping as in table_mapping.hpp whose columns are named
// "table.column", and besides
//   "record_end": "|^|"                     may be left out: then every line is a record
//   "tables": [
//     {"name": "facility", "file": "facility.dat", "where": {"active_ind": ["Y"]}},
//     {"name": "place", "file": "app_location.dat", "key": "application_id",
//      "joins": "facility.application_id", "where_not": {"reference_ind": ["Y"]},
//      "optional": false, "columns": ["...", "..."]}]
//   "pattern": {"file": "...", "key": "...", "joins": "antenna.record_id",
//               "azimuth": "...", "field": "...", "rotation": "antenna.rotation_deg"},
//   "latest": {"column": "filing.id", "equals": "facility.latest_id", "date": "filing.date"},
//   "notes": {"Beam tilt": ["antenna.tilt_deg"]}
// "separator" is required. The tables are read in this order, each once; the first should be the
// one that matches the fewest rows of the others. A row of a later table belongs to those earlier
// rows whose column `joins` equals its `key`: none (the row is skipped), one, or several. "columns"
// names the columns of a file without a header line. "pattern",
// "latest" and "notes" are optional. A file may be joined twice under two names, as for the station
// that a translator repeats.
Result<JoinedMapping> parse_joined_mapping(std::string_view json);

// Whether a mapping's text is one of joined tables: it has "tables". False for text that is not
// JSON.
bool is_joined_mapping(std::string_view json);

}  // namespace mastwise
