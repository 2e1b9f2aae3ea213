#include "core/reception/aimed.hpp"

#include "core/reception/link_budget.hpp"

namespace mastwise::reception {

std::optional<Aimed> aimed_elsewhere(const Outlook& outlook, const gear::Pattern& pattern,
                                     Bearing<True> aimed, double error_deg) {
  if (!outlook.margin_db) return std::nullopt;
  const HeadingLoss straight = heading_loss(pattern, Turn(), error_deg);
  const HeadingLoss there = heading_loss(pattern, outlook.bearing - aimed, error_deg);
  Deviations deviations = outlook.deviations;
  deviations.heading_db = there.deviation_db;
  return Aimed{.margin_db = *outlook.margin_db + straight.mean_db - there.mean_db,
               .deviation_db = deviations.total_db()};
}

}  // namespace mastwise::reception
