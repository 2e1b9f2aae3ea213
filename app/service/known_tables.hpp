#pragma once

#include "app/service/station_source.hpp"
#include "core/import/suspicion.hpp"
#include "core/places/gazetteer.hpp"
#include "core/result.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Tables that Mastwise reads without a guess: by their columns, or by the names of their files.
namespace mastwise::sources {

// A column of a table with the values of its first rows.
struct ColumnShown {
  std::string name = {};
  std::string example = {};
  bool operator==(const ColumnShown&) const = default;
};
std::vector<ColumnShown> columns_shown(std::string_view head);

// Whether a head's header has the columns of a table of programs, guess_program_columns(), and none
// of positions.
bool is_program_table(std::string_view head);

// A built-in mapping.
struct ReadyMapping {
  std::string name = {};  // for load_mapping()
  Way way = {};           // a TableMapping or a JoinedMapping
};
// The built-in mapping of a single table if the head has all its columns.
std::optional<ReadyMapping> ready_for_table(std::string_view head);
// The built-in mapping of joined tables if the folder or archive has all its required files.
std::optional<ReadyMapping> ready_for_set(const std::string& folder_or_zip);

// The countries of the towns within 100 km, for suspicion_of(); the gazetteer's data is shared.
CountriesNear countries_by(const places::Gazetteer& gazetteer);

// Mappings corrected by a person, each for tables with the same columns.
class MappingMemory {
 public:
  explicit MappingMemory(std::string folder) : folder_(std::move(folder)) {}
  // The mapping of tables with the head's columns; empty if missing or unreadable.
  std::optional<TableMapping> recall(std::string_view head) const;
  Result<Done> remember(std::string_view head, const TableMapping& mapping) const;

 private:
  std::string file_for(std::string_view head) const;
  std::string folder_;
};

}  // namespace mastwise::sources
