#include "core/logbook/lesson.hpp"

#include <cmath>

namespace mastwise::learning {

std::optional<Lesson> main_lesson(const std::array<Correction, 3>& corrections) {
  std::optional<Lesson> main;
  for (std::size_t band = 0; band < corrections.size(); ++band) {
    const Correction& one = corrections[band];
    if (!one.applied || (main && std::fabs(one.bias_db) <= std::fabs(main->bias_db))) continue;
    main = Lesson{.band = static_cast<Band>(band),
                  .bias_db = one.bias_db,
                  .sigma_db = one.sigma_db,
                  .outcomes = one.outcomes,
                  .stops = one.stops};
  }
  return main;
}

}  // namespace mastwise::learning
