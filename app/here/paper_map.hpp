#pragma once

#include "app/shared/shared.hpp"

// The sheet for the paper map. Each answer is empty until all needed fields are typed.
namespace mastwise {

// The position by direction and millimeters from a named place, or between grid lines.
FormAnswer place_from_map(const Form& form, bool miles);
FormAnswer place_from_net(const Form& form, bool miles);
// Where to lay the ruler for the heading in use.
FormAnswer ruler_for_heading(const Shared& shared);

}  // namespace mastwise
