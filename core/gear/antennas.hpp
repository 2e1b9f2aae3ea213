#pragma once

#include "core/gear/gear.hpp"

#include <array>
#include <cstdint>
#include <string_view>

namespace mastwise::gear {

// The antenna types of the trade.
enum class AntennaKind : std::uint8_t {
  omnidirectional,
  bidirectional,
  short_yagi,
  long_yagi,
  log_periodic,
  small_panel,  // one or two bow-tie bays
  large_panel,  // four bow-tie bays
};

inline constexpr std::array kAntennaKinds{AntennaKind::omnidirectional, AntennaKind::bidirectional,
                                          AntennaKind::short_yagi,      AntennaKind::long_yagi,
                                          AntennaKind::log_periodic,    AntennaKind::small_panel,
                                          AntennaKind::large_panel};

// "omnidirectional", "bidirectional", "short Yagi", "long Yagi", "log-periodic", "panel of two
// bays", "panel of four bays".
std::string_view to_text(AntennaKind kind);

// An antenna of that type with middling figures in each band, named as in to_text() [common
// practice, no source].
Antenna typical_antenna(AntennaKind kind);

}  // namespace mastwise::gear
