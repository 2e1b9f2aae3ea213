#include "app/model/choices.hpp"

namespace mastwise {

gear::Gear gear_of(const GearChoice& choice) {
  const auto named = gear::preset(choice.preset);
  gear::Gear gear = named ? *named : gear::presets().front();
  gear.height_m = choice.height_m.value_or(gear.height_m);
  gear.cable.length_m = choice.cable_m.value_or(gear.cable.length_m);
  gear.splits = choice.splits.value_or(gear.splits);
  if (!choice.amplifier) gear.amplifier.reset();
  return gear;
}

}  // namespace mastwise
