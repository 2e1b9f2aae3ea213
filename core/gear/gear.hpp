#pragma once

#include "core/channels/channels.hpp"
#include "core/gear/pattern.hpp"
#include "core/gear/television.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::gear {

// An antenna's figures in one band.
struct BandAntenna {
  double gain_dbd = 0.0;  // along the axis, over a half-wave dipole
  Pattern pattern = Pattern::omnidirectional();
  bool operator==(const BandAntenna&) const = default;
};

struct Antenna {
  std::string name = {};
  BandAntenna low_vhf = {};
  BandAntenna high_vhf = {};
  BandAntenna uhf = {};
  bool horizontal = true;  // polarization; false is vertical

  const BandAntenna& in(Band band) const;
  bool operator==(const Antenna&) const = default;
};

// An amplifier at the antenna, before the cable.
struct Amplifier {
  double gain_db = 0.0;
  double noise_figure_db = 0.0;
  double overload_dbm = 0.0;  // the largest sum of all signals at its input without overload
  // What the signal loses on its way through an amplifier without power [common practice, no
  // source: 5 to 20 dB, some let nothing through].
  double off_loss_db = 10.0;
  bool operator==(const Amplifier&) const = default;
};

enum class CableType : std::uint8_t { rg6, rg59 };

// "RG-6", "RG-59".
std::string_view to_text(CableType type);

struct Cable {
  CableType type = CableType::rg6;
  double length_m = 0.0;

  // Cable loss, dB; `frequency_mhz` over 0. RG-6 per 100 m: 5 dB at 55 MHz, 10 at 211, 15 at 470,
  // 18 at 700, linear in the root of the frequency between them and proportional to it beyond;
  // RG-59 30 % more [common practice, no source].
  double loss_db(double frequency_mhz) const;
  bool operator==(const Cable&) const = default;
};

// Loss of a splitter, dB, at each outlet: 0 for one, 3.5 dB for two, 7 for four [common practice,
// no source]; other numbers are built from two-way splits. Fewer than 1 counts as 1.
double split_loss_db(int outlets);

struct Gear {
  std::string name = {};
  Antenna antenna = {};
  double height_m = 0.0;  // of the antenna above ground when raised
  std::optional<Amplifier> amplifier = {};
  double off_loss_db = 0.0;  // of an amplifier without power, which `amplifier` is not
  Cable cable = {};
  int splits = 1;  // outlets that share the antenna: 1, 2 or 4
  double receiver_noise_figure_db = 0.0;
  std::optional<DecoderSet> decoders = {};  // of the TV; if unknown, the usual_decoders()
  bool operator==(const Gear&) const = default;
};

// The gear with its amplifier switched off, or without power; the same if it has none.
Gear switched_off(Gear gear);

// Typical gear of travelers, named in trade words. Every figure is typical [common practice, no
// source]; the first preset is the default.
std::vector<Gear> presets();

// The preset of that name, ignoring case; the error lists the known names.
Result<Gear> preset(std::string_view name);

}  // namespace mastwise::gear
