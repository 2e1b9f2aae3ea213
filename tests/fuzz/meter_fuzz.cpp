#include "core/sweep/live_sweep.hpp"
#include "core/sweep/meter_lines.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>
#include <optional>
#include <string_view>
#include <vector>

// Any bytes as the lines of a meter, whole and cut in two, while the antenna turns: the same
// readings both ways, each on its scale, and a sweep of them that is refused or finite.
extern "C" int LLVMFuzzerTestOneInput(const uint8_t* data, size_t size) {
  using namespace mastwise;
  using aim::MeterReading;
  using fuzz::require;
  const std::string_view text = fuzz::text_of(data, size);
  const std::string_view first = text.substr(0, size / 3), rest = text.substr(size / 3);
  aim::MeterLines whole, cut;
  std::vector<MeterReading> together, apart;
  whole.feed(text, Monotonic(), [&](const MeterReading& one) { together.push_back(one); });
  cut.feed(first, Monotonic(), [&](const MeterReading& one) { apart.push_back(one); });
  cut.feed(rest, Monotonic(), [&](const MeterReading& one) { apart.push_back(one); });
  require(together == apart);
  require(whole.state(Monotonic()) == cut.state(Monotonic()));

  static const auto fitter = aim::SweepFitter::for_pattern(gear::Pattern::directional(60.0, 13.0));
  const auto kind = whole.kind(Monotonic());
  if (!kind) return 0;
  const aim::Scale scale = aim::scale_of(*kind);
  aim::LiveSweep sweep({.scale = scale, .timing = whole.timing()});
  Monotonic now{};
  double heading_deg = 300.0;
  for (const MeterReading& one : together) {
    require(std::isfinite(one.value));
    if (one.kind && one.kind != kind) continue;
    now += milliseconds(500);
    heading_deg += 1.0;
    sweep.turn(now, Bearing<Dial>::degrees(heading_deg));
    sweep.read(now, one.kind ? std::optional(one.value) : std::nullopt);
  }
  require(std::isfinite(sweep.lag_sigma_deg()));
  const auto fit = fitter->fit(sweep.readings(), {.scale = scale});
  if (!fuzz::read_or_told(fit)) return 0;
  require(fit->error95_deg > 0.0 && fit->error95_deg <= 180.0);
  require(std::isfinite(sweep.hint(*fit, now).turn.clockwise_deg()));
  return 0;
}
