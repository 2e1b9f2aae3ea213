#include "app/shared/settings.hpp"

#include "app/shared/stored_names.hpp"
#include "core/stations/networks.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <utility>

namespace mastwise {
namespace {

void next(bool& setting) {
  setting = !setting;
}
template <StoredByName E>
void next(E& setting) {
  setting = static_cast<E>((static_cast<std::size_t>(setting) + 1) % kStoredNames<E>.size());
}
// Any other setting is chosen from a list.
template <class Other>
void next(Other&) {}

void choose(bool& setting, std::string_view value) {
  if (value == "on" || value == "off") setting = value == "on";
}
template <StoredByName E>
void choose(E& setting, std::string_view value) {
  const auto& all = kStoredNames<E>;
  const auto found = std::find(all.begin(), all.end(), value);
  if (found != all.end()) setting = static_cast<E>(found - all.begin());
}
template <StoredByName E>
void choose(std::optional<E>& setting, std::string_view value) {
  const auto& all = kStoredNames<E>;
  const auto found = std::find(all.begin(), all.end(), value);
  if (found != all.end()) setting = static_cast<E>(found - all.begin());
}
template <class Other>
void choose(Other&, std::string_view) {}

}  // namespace

void next_setting(Settings& settings, std::string_view name) {
  // Recordings of before the red look switched between two.
  if (name == "night") {
    settings.look = settings.look == LookChoice::Night ? LookChoice::Day : LookChoice::Night;
  }
  Settings::each(settings, [&](const char* one, auto& setting) {
    if (name == one) next(setting);
  });
}

void choose_setting(Settings& settings, std::string_view name, std::string_view value) {
  Settings::each(settings, [&](const char* one, auto& setting) {
    if (name == one) choose(setting, value);
  });
}

gear::Gear gear_of(const GearChoice& choice) {
  const auto named = gear::preset(choice.preset);
  gear::Gear gear = named ? *named : gear::presets().front();
  gear.height_m = choice.height_m.value_or(gear.height_m);
  gear.cable.length_m = choice.cable_m.value_or(gear.cable.length_m);
  gear.splits = choice.splits.value_or(gear.splits);
  gear.decoders = choice.decoders;
  if (!choice.amplifier) gear = gear::switched_off(std::move(gear));
  if (choice.pattern_table.empty()) return gear;
  // A text that is not a table was refused earlier.
  if (const auto own = gear::Pattern::from_table(choice.pattern_table)) {
    gear.antenna.low_vhf.pattern = *own;
    gear.antenna.high_vhf.pattern = *own;
    gear.antenna.uhf.pattern = *own;
  }
  return gear;
}

bool same_preset(const GearChoice& one, const GearChoice& other) {
  return gear_of(one).name == gear_of(other).name;
}

std::vector<GearChoice> rig_gears(const Settings& settings) {
  std::vector<GearChoice> gears{settings.gear};
  for (const GearChoice& other : settings.other_gears) {
    const bool there = std::any_of(gears.begin(), gears.end(),
                                   [&](const GearChoice& one) { return same_preset(one, other); });
    if (!there) gears.push_back(other);
  }
  std::stable_sort(gears.begin(), gears.end(), [](const GearChoice& one, const GearChoice& other) {
    const gear::Gear left = gear_of(one), right = gear_of(other);
    return left.height_m != right.height_m ? left.height_m < right.height_m
                                           : left.name < right.name;
  });
  return gears;
}

void use_gear(Settings& settings, const GearChoice& choice) {
  auto& others = settings.other_gears;
  if (!same_preset(choice, settings.gear)) {
    std::replace_if(
        others.begin(), others.end(),
        [&](const GearChoice& other) { return same_preset(other, choice); }, settings.gear);
  }
  settings.gear = choice;
}

void toggle_gear(Settings& settings, const std::string& preset) {
  const GearChoice choice{.preset = preset};
  if (same_preset(choice, settings.gear)) return;
  const auto removed = std::erase_if(
      settings.other_gears, [&](const GearChoice& other) { return same_preset(other, choice); });
  if (removed == 0) settings.other_gears.push_back(choice);
}

Result<Handle> handle_of(const HandleChoice& choice) {
  const auto point = [](double reading_deg, double angle_deg) {
    return HandlePoint{HandleReading::dial_deg(reading_deg), RigAngle::clockwise_deg(angle_deg)};
  };
  HandleMechanism mechanism;
  if (choice.reach_from_deg && choice.reach_to_deg) {
    mechanism.reach = HandleArc{HandleReading::dial_deg(*choice.reach_from_deg),
                                HandleReading::dial_deg(*choice.reach_to_deg)};
  }
  if (choice.stow_deg) mechanism.stow_reading = HandleReading::dial_deg(*choice.stow_deg);
  return Handle::calibrate(point(choice.first_reading_deg, choice.first_angle_deg),
                           point(choice.second_reading_deg, choice.second_angle_deg), mechanism);
}

bool is_pinned(const Settings& settings, const std::string& network) {
  return has_network(settings.pinned_networks, network);
}

void pin_network(Settings& settings, const std::string& network) {
  auto& pinned = settings.pinned_networks;
  const bool there = is_pinned(settings, network);
  std::erase_if(pinned, [&](const std::string& one) { return words::same_word(one, network); });
  if (!there && !network.empty()) pinned.push_back(network);
}

bool is_ticked(const Settings& settings, const TickedNetwork& ticked) {
  const auto& all = settings.ticked_networks;
  return std::find(all.begin(), all.end(), ticked) != all.end();
}

void tick_network(Settings& settings, const TickedNetwork& ticked) {
  if (std::erase(settings.ticked_networks, ticked) == 0) settings.ticked_networks.push_back(ticked);
}

}  // namespace mastwise
