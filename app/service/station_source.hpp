#pragma once

#include "core/catalog/catalog.hpp"
#include "core/import/guess_mapping.hpp"
#include "core/import/joined_import.hpp"
#include "core/import/joined_mapping.hpp"
#include "core/import/table_mapping.hpp"
#include "core/result.hpp"
#include "core/stations/station_table.hpp"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

// Station tables on disk, for the command line and the touch import:
//
//   show_folder(folder)                 tables to choose from (browsing.hpp)
//   head_of(path)                       the start of the chosen file
//   is_own_format(head)                 if true, read it as OwnFormat
//   MappingMemory, ready_for_table(head)   else: an earlier correction, or a built-in mapping
//                                       (known_tables.hpp)
//   guess_mapping(head, source_of(path))   else: guessed columns with doubts
//   mapping_parts(mapping), correct(...)   the person chooses another column or reading
//                                       (core/import/mapping_parts.hpp)
//   sample_stations(head, mapping)      ten stations for the map, after each choice
//   import_stations(path, way, catalog, progress)  the whole table, in a worker
//
// The path of a table in an archive of several is "archive.zip/table.csv". Text may be UTF-8,
// UTF-16 or Windows-1252.
namespace mastwise::sources {

// Mastwise's station table, import_csv.hpp.
struct OwnFormat {
  Source source = {};
};
using Way = std::variant<OwnFormat, TableMapping, JoinedMapping>;

// The first 256 kB of a file, or of the one file in a zip archive. If that is the whole file, it
// ends in a newline, so that the last row does not look cut off.
Result<std::string> head_of(const std::string& path);

// Whether a head's header has the call sign and position columns of Mastwise's format.
bool is_own_format(std::string_view head);

// The file's name as the name of its source.
Source source_of(const std::string& path, const std::string& date = {});

// A mapping of one table or of joined ones, by its file or its built-in name ("us_post_auction",
// "us_lms"). A `date` that is not empty replaces the mapping's date.
Result<Way> load_mapping(const std::string& name, const std::string& date = {});

// Imports a whole file, or a folder or archive of joined tables, into the catalog. Of joined tables
// the progress without a file name counts the stations written. Errors leave the catalog unchanged.
Result<ImportReport> import_stations(const std::string& path, const Way& way, Catalog& catalog,
                                     const JoinProgress& progress = {},
                                     const ImportFocus& focus = {});

// Remarks on a text's encoding that are worth showing: UTF-16, Windows-1252.
std::vector<std::string> encoding_remarks(const std::string& path, std::string_view head);

// By its name.
bool is_archive(const std::string& path);

// A whole file, or the one file in a zip archive, 32 MB at most.
Result<std::string> read_whole(const std::string& path);

}  // namespace mastwise::sources
