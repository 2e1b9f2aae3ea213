#include "core/gear/pattern.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

// Any bytes as an antenna's table: refused with a reason, or a pattern with 0 dB on its axis, never
// above 0 dB, never below -60 dB, and with its stated width.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  using mastwise::Turn;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto pattern = mastwise::gear::Pattern::from_table(text);
  if (!pattern) {
    if (pattern.error().message().empty()) std::abort();
    return 0;
  }
  if (pattern->relative_db(Turn()) != 0.0) std::abort();
  for (double angle = -180.0; angle < 180.0; angle += 0.7) {
    const double relative_db = pattern->relative_db(Turn::clockwise_deg(angle));
    if (!(relative_db <= 0.0 && relative_db >= -60.0)) std::abort();
  }
  const auto width_deg = pattern->half_power_beamwidth_deg();
  if (width_deg && !(*width_deg > 0.0 && *width_deg <= 360.0)) std::abort();
  return 0;
}
