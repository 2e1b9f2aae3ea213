#pragma once

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

// Station tables as they lie on the disk, for the command line and for the touch import:
//
//   show_folder(folder)                 what could be imported, to choose from (browsing.hpp)
//   head_of(path)                       the beginning of what was chosen
//   is_own_format(head)                 if so, OwnFormat is the way to read it
//   MappingMemory, ready_for_table(head)   else: what was corrected before, or a ready mapping
//                                       (known_tables.hpp)
//   guess_mapping(head, source_of(path))   else: the columns, and what is in doubt
//   mapping_parts(mapping), correct(...)   a thumb takes another column or reading
//                                       (core/import/mapping_parts.hpp)
//   sample_stations(head, mapping)      ten stations for the map, after each choice
//   read_stations(path, way, progress)  all of it, by a worker; then Catalog::replace_source
namespace mastwise::sources {

// The project's own station table, import_csv.hpp.
struct OwnFormat {
  Source source = {};
};
using Way = std::variant<OwnFormat, TableMapping, JoinedMapping>;

// The first 256 kB of a file, or of the one file in a zip archive. Where that is all of it, it ends
// in an end of line, so that the last row is not taken for one that is cut off.
Result<std::string> head_of(const std::string& path);

// Whether a head's header has the columns of the project's own format for call sign and position.
bool is_own_format(std::string_view head);

// The file's name as the name of its source.
Source source_of(const std::string& path, const std::string& date = {});

// A mapping, of one table or of joined ones, by its file or by its name among those that come with
// the program ("us_post_auction", "us_lms"). `date` goes before the mapping's own where not empty.
Result<Way> load_mapping(const std::string& name, const std::string& date = {});

// Reads all of a file, or of a folder or archive of joined tables. A single table is held in memory
// whole and may have 256 MB; progress is told of joined tables only.
Result<StationTable> read_stations(const std::string& path, const Way& way,
                                   const JoinProgress& progress = {});

// By its name.
bool is_archive(const std::string& path);

// All of a file, or of the one file in a zip archive, 256 MB at most.
Result<std::string> read_whole(const std::string& path);

}  // namespace mastwise::sources
