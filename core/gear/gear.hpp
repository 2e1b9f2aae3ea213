#pragma once

#include "core/channels/channels.hpp"
#include "core/gear/pattern.hpp"
#include "core/result.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::gear {

// An antenna within one band.
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
  bool horizontal = true;  // its polarization; else vertical

  const BandAntenna& in(Band band) const;
  bool operator==(const Antenna&) const = default;
};

// At the antenna, before the cable.
struct Amplifier {
  double gain_db = 0.0;
  double noise_figure_db = 0.0;
  double overload_dbm = 0.0;  // the sum of all signals at its input that it still stands
  bool operator==(const Amplifier&) const = default;
};

enum class CableType : std::uint8_t { rg6, rg59 };

// "RG-6", "RG-59".
std::string_view to_text(CableType type);

struct Cable {
  CableType type = CableType::rg6;
  double length_m = 0.0;

  // `frequency_mhz` over 0. RG-6 per 100 m: 5 dB at 55 MHz, 10 at 211, 15 at 470, 18 at 700,
  // straight between them over the root of the frequency and in proportion to it beyond; RG-59 30 %
  // more [common practice, no source].
  double loss_db(double frequency_mhz) const;
  bool operator==(const Cable&) const = default;
};

// What a splitter with so many outlets costs at each: none for one, 3.5 dB for two, 7 for four
// [common practice, no source]; other numbers are built of two-way splits. Fewer than 1 is 1.
double split_loss_db(int outlets);

struct Gear {
  std::string name = {};
  Antenna antenna = {};
  double height_m = 0.0;  // of the antenna above ground when raised
  std::optional<Amplifier> amplifier = {};
  Cable cable = {};
  int splits = 1;  // outlets that share the antenna: 1, 2 or 4
  double receiver_noise_figure_db = 0.0;
  bool operator==(const Gear&) const = default;
};

// What travelers usually have, in plain words of the trade. Every figure is a typical one
// [common practice, no source]; the first is the usual start.
std::vector<Gear> presets();

// The preset of that name, in whatever case; else an error that lists the known names.
Result<Gear> preset(std::string_view name);

}  // namespace mastwise::gear
