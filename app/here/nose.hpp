#pragma once

#include "app/shared/shared.hpp"

// Rig headings from the rig and its instruments. Each function sets the heading, or the trouble
// with the reason.
namespace mastwise {

void nose_from_course(Shared& shared, bool backed_in);
void nose_from_sensor(Shared& shared);
void nose_from_sun(Shared& shared, SunFrom side);
void nose_from_points(Shared& shared);

}  // namespace mastwise
