#include "core/sweep/sweep_table.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

// Any bytes as a sweep: refused with a reason, or readings that are fitted or refused on every
// scale. A fit has finite numbers and an error of at least a cell.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  using namespace mastwise;
  static const auto fitter = aim::SweepFitter::for_pattern(gear::Pattern::directional(60.0, 13.0));
  const auto readings = aim::read_sweep({reinterpret_cast<const char*>(data), size});
  if (!readings) {
    if (readings.error().message().empty()) std::abort();
    return 0;
  }
  for (const aim::Scale scale : aim::kScales) {
    const auto fit = fitter->fit(*readings, {.scale = scale});
    if (!fit) {
      if (fit.error().message().empty()) std::abort();
      continue;
    }
    if (!(fit->sigma_deg > 0.0 && fit->sigma_deg <= 180.0)) std::abort();
    if (!(fit->error95_deg > 0.0 && fit->error95_deg <= 180.0)) std::abort();
    if (!(fit->peak.degrees() >= 0.0 && fit->peak.degrees() < 360.0)) std::abort();
    if (!(fit->noise > 0.0 && std::isfinite(fit->noise))) std::abort();
  }
  return 0;
}
