#include "core/reception/same_site.hpp"

#include "core/reception/chance.hpp"
#include "core/reception/link_budget.hpp"

#include <cmath>

namespace mastwise::reception {

double SameSite::chance_percent(double margin_db, double deviation_db) const {
  // A small share never reaches 1, and its spread is one among others.
  constexpr double kSmall = 0.05;
  if (share < kSmall) {
    return reception::chance_percent(margin_db - dbm(factor()),
                                     std::sqrt(deviation_db * deviation_db + variance()));
  }
  const double share_deviation_db = std::sqrt(spread) / share;
  constexpr double kStep = 0.05, kMost = 4.0;  // deviations
  double sum = 0.0, weights = 0.0;
  for (double deviate = -kMost; deviate <= kMost; deviate += kStep) {
    const double weight = std::exp(-0.5 * deviate * deviate);
    weights += weight;
    const double left = 1.0 - share * milliwatts(deviate * share_deviation_db);
    if (left <= 0.0) continue;
    sum += weight * reception::chance_percent(margin_db + dbm(left), deviation_db);
  }
  return sum / weights;
}

}  // namespace mastwise::reception
