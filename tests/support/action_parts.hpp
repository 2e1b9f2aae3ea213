#pragma once

#include "app/session/action.hpp"

#include <vector>

namespace mastwise::test {

// What actions hold, with no member at its default.
Station some_station();
reception::Outlook some_outlook();
std::vector<reception::Reason> some_reasons();
MapSheet some_sheet();
RouteSheet some_route();
AreaSheet some_area();
reception::PathPicture some_picture();
reception::SignalBudget some_budget();
places::PopulatedPlace some_place();
PlacesAnswer some_places();
LogbookFilesAnswer some_files();
KeptSweep some_sweep();
Sweep some_measured_sweep();
IntakeAnswer some_intake();

}  // namespace mastwise::test
