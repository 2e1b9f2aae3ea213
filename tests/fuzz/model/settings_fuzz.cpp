#include "app/shared/settings_json.hpp"
#include "tests/fuzz/fuzz.hpp"

#include <cmath>

using namespace mastwise;

// Any bytes as the kept settings: what was read is kept and read again the same, what was not is
// named, and the gear has figures that the survey can use.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const SettingsRead read = read_settings(std::string(fuzz::text_of(data, size)));
  for (const std::string& name : read.dropped) fuzz::require(!name.empty());
  const SettingsRead again = read_settings(settings_text(read.settings));
  fuzz::require(again.dropped.empty() && again.settings == read.settings);

  const gear::Gear gear = gear_of(read.settings.gear);
  fuzz::require(gear.height_m > 0.0 && gear.height_m < 1e3);
  const double loss_db = gear.cable.loss_db(600.0) + gear::split_loss_db(gear.splits);
  fuzz::require(loss_db >= 0.0 && std::isfinite(loss_db));
  if (read.settings.handle) static_cast<void>(fuzz::read_or_told(handle_of(*read.settings.handle)));
  Settings next = read.settings;
  Settings::each(read.settings, [&](const char* name, const auto&) { next_setting(next, name); });
  fuzz::require(next != read.settings);
  return 0;
}
