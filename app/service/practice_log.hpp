#pragma once

#include "app/logbook/files.hpp"
#include "app/service/startup.hpp"

namespace mastwise::service {

// Invented nights in the practice area, marked PRACTICE: three at its stop before the date, and 14
// elsewhere. VHF came in worse than forecast, as with an inverter that is on.
LogbookRecords practice_log(const Practice& practice, UtcTime before);

}  // namespace mastwise::service
