#pragma once

#include "core/angles/bearing.hpp"
#include "core/gear/pattern.hpp"
#include "core/reception/prospect.hpp"

#include <optional>

namespace mastwise::reception {

// What a station's outlook is with the antenna aimed elsewhere than at it.
struct Aimed {
  double margin_db = 0.0;     // the outlook's margin, less what the pattern loses there
  double deviation_db = 0.0;  // its spread
};

// `aimed`: the antenna's true heading, known to one sigma of `error_deg`; `pattern`: in the
// station's band. Nothing if the outlook has no margin. Interference is taken as it is on the axis.
std::optional<Aimed> aimed_elsewhere(const Outlook& outlook, const gear::Pattern& pattern,
                                     Bearing<True> aimed, double error_deg);

}  // namespace mastwise::reception
