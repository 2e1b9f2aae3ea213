#pragma once

#include "core/result.hpp"
#include "core/store/sqlite.hpp"

#include <span>
#include <string_view>

namespace mastwise::store {

// Brings a file to the newest version, which is the number of `steps`: each script brings it from
// the version of its index to the next. A file of an older version is first backed up beside itself
// as "PATH.version-N"; an empty one is version 0 and needs no backup. All steps are done or none.
// Fails when the file is of a newer version or damaged, the backup cannot be written or a script
// fails; the file is then as it was. `name` is what the person calls the file: "logbook".
Result<Done> bring_up_to_date(Database& database, std::span<const char* const> steps,
                              std::string_view name);

}  // namespace mastwise::store
