#include "app/model/choices.hpp"

namespace mastwise {

gear::Gear gear_of(const GearChoice& choice) {
  const auto named = gear::preset(choice.preset);
  gear::Gear gear = named ? *named : gear::presets().front();
  gear.height_m = choice.height_m.value_or(gear.height_m);
  gear.cable.length_m = choice.cable_m.value_or(gear.cable.length_m);
  gear.splits = choice.splits.value_or(gear.splits);
  if (!choice.amplifier) gear.amplifier.reset();
  if (choice.pattern_table.empty()) return gear;
  // What is no table was refused when it was chosen.
  if (const auto own = gear::Pattern::from_table(choice.pattern_table)) {
    gear.antenna.low_vhf.pattern = *own;
    gear.antenna.high_vhf.pattern = *own;
    gear.antenna.uhf.pattern = *own;
  }
  return gear;
}

}  // namespace mastwise
