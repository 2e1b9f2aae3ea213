#include "core/gear/antennas.hpp"
#include "core/gear/gear.hpp"
#include "core/text/words.hpp"

#include <fmt/format.h>

namespace mastwise::gear {
namespace {

// Common practice, no source: gain 12 to 20 dB, noise figure 1.5 to 4 dB, overload at -25 to -15
// dBm.
constexpr Amplifier kHeadAmplifier{.gain_db = 16.0, .noise_figure_db = 3.0, .overload_dbm = -20.0};
// Common practice, no source; the planning factors have 10 dB in VHF and 7 in UHF.
constexpr double kReceiverNoiseFigureDb = 8.0;

constexpr double kRoofHeightM = 3.5;  // common practice, no source: on the roof of a rig
constexpr double kCrankUpHeightM = 4.5;
constexpr double kPoleHeightM = 6.0;

// Behind a rig's built-in antenna: a cable through the walls and two outlets.
Gear on_the_rig(std::string_view name, AntennaKind kind, double height_m, bool amplified) {
  return {.name = std::string(name),
          .antenna = typical_antenna(kind),
          .height_m = height_m,
          .amplifier = amplified ? std::optional(kHeadAmplifier) : std::nullopt,
          .cable = {CableType::rg6, 10.0},
          .splits = 2,
          .receiver_noise_figure_db = kReceiverNoiseFigureDb};
}

// Gear set up beside the rig: a longer cable to one receiver.
Gear beside_the_rig(std::string_view name, AntennaKind kind, bool amplified) {
  Gear gear = on_the_rig(name, kind, kPoleHeightM, amplified);
  gear.cable.length_m = 15.0;
  gear.splits = 1;
  return gear;
}

}  // namespace

std::vector<Gear> presets() {
  using enum AntennaKind;
  return {
      on_the_rig("Bidirectional crank-up with amplifier", bidirectional, kCrankUpHeightM, true),
      on_the_rig("Bidirectional crank-up without amplifier", bidirectional, kCrankUpHeightM, false),
      on_the_rig("Directional crank-up with amplifier", short_yagi, kCrankUpHeightM, true),
      on_the_rig("Directional roof head with amplifier", log_periodic, kRoofHeightM, true),
      on_the_rig("Omnidirectional roof disc with amplifier", omnidirectional, kRoofHeightM, true),
      on_the_rig("Omnidirectional roof disc without amplifier", omnidirectional, kRoofHeightM,
                 false),
      beside_the_rig("Panel on a pole with amplifier", small_panel, true),
      beside_the_rig("Large panel on a pole with amplifier", large_panel, true),
      beside_the_rig("Log-periodic on a pole with amplifier", log_periodic, true),
      beside_the_rig("Long Yagi on a pole without amplifier", long_yagi, false),
      beside_the_rig("Long Yagi on a pole with amplifier", long_yagi, true),
  };
}

Result<Gear> preset(std::string_view name) {
  name = words::trimmed(name);
  std::string known;
  for (const Gear& gear : presets()) {
    if (words::same_word(gear.name, name)) return gear;
    known += (known.empty() ? "" : ", ") + gear.name;
  }
  return Error{.what = fmt::format("\"{}\" is not a known gear preset", name),
               .remedy = "choose one of: " + known};
}

}  // namespace mastwise::gear
