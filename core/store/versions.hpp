#pragma once

#include "core/result.hpp"
#include "core/store/sqlite.hpp"

#include <span>
#include <string_view>

namespace mastwise::store {

// Brings a file to the newest version, which is the number of `steps`: each script upgrades from
// the version of its index to the next. An older file is first backed up beside itself as
// "PATH.version-N"; an empty one is version 0 and needs no backup. Either all steps are done or
// none. Fails if the file is newer or damaged, the backup cannot be written, or a script fails; the
// file is then unchanged. `name` is the user's word for the file: "logbook".
Result<Done> bring_up_to_date(Database& database, std::span<const char* const> steps,
                              std::string_view name);

// Runs the steps that a database of an older version lacks, all or none, without a backup.
Result<Done> upgrade(Database& database, std::span<const char* const> steps);

}  // namespace mastwise::store
