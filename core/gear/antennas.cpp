#include "core/gear/antennas.hpp"

#include <string>
#include <utility>

namespace mastwise::gear {
namespace {

// Every figure in this file: common practice, no source; the middle of what the trade states for
// the type. A type that is not built for a band has the figures of a short stray element, from
// memory.

BandAntenna all_round(double gain_dbd) {
  return {gain_dbd, Pattern::omnidirectional()};
}
BandAntenna beam(double gain_dbd, double half_power_beamwidth_deg, double front_to_back_db) {
  return {gain_dbd, Pattern::directional(half_power_beamwidth_deg, front_to_back_db)};
}
BandAntenna two_beams(double gain_dbd, double half_power_beamwidth_deg, double end_floor_db) {
  return {gain_dbd, Pattern::bidirectional(half_power_beamwidth_deg, end_floor_db)};
}

// A band outside the antenna's design.
BandAntenna out_of_band(double gain_dbd) {
  return two_beams(gain_dbd, 90.0, 10.0);
}

}  // namespace

std::string_view to_text(AntennaKind kind) {
  switch (kind) {
    case AntennaKind::omnidirectional:
      return "omnidirectional";
    case AntennaKind::bidirectional:
      return "bidirectional";
    case AntennaKind::short_yagi:
      return "short Yagi";
    case AntennaKind::long_yagi:
      return "long Yagi";
    case AntennaKind::log_periodic:
      return "log-periodic";
    case AntennaKind::small_panel:
      return "panel of two bays";
    case AntennaKind::large_panel:
      return "panel of four bays";
  }
  return "";
}

Antenna typical_antenna(AntennaKind kind) {
  Antenna antenna{.name = std::string(to_text(kind))};
  const auto set = [&](BandAntenna low_vhf, BandAntenna high_vhf, BandAntenna uhf) {
    antenna.low_vhf = std::move(low_vhf);
    antenna.high_vhf = std::move(high_vhf);
    antenna.uhf = std::move(uhf);
  };
  switch (kind) {
    case AntennaKind::omnidirectional:
      set(all_round(-4.5), all_round(-1.5), all_round(-1.0));
      break;
    case AntennaKind::bidirectional:
      set(two_beams(-2.0, 90.0, 15.0), two_beams(0.5, 80.0, 17.0), two_beams(2.0, 70.0, 17.0));
      break;
    case AntennaKind::short_yagi:
      set(beam(4.0, 70.0, 10.0), beam(5.5, 60.0, 12.0), beam(6.5, 52.0, 13.0));
      break;
    case AntennaKind::long_yagi:
      set(out_of_band(-8.0), beam(9.0, 45.0, 15.0), beam(12.0, 32.0, 17.0));
      break;
    case AntennaKind::log_periodic:
      set(beam(4.0, 65.0, 12.0), beam(6.0, 60.0, 15.0), beam(7.0, 55.0, 17.0));
      break;
    case AntennaKind::small_panel:
      set(out_of_band(-12.0), out_of_band(-3.0), beam(7.0, 57.0, 14.0));
      break;
    case AntennaKind::large_panel:
      set(out_of_band(-10.0), out_of_band(-1.0), beam(11.0, 52.0, 16.0));
      break;
  }
  return antenna;
}

}  // namespace mastwise::gear
