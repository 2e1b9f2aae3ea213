#pragma once

#include "core/gear/gear.hpp"
#include "core/result.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace mastwise::gear {

// Transmitters of other services near the rig, which no table of TV stations lists. They bring no
// picture, but add to what an amplifier has to bear.
enum class TowerService : std::uint8_t { radio, cell };

// How near one is, as far as it can be seen.
enum class TowerRange : std::uint8_t { none, in_sight, near, beside };
inline constexpr std::array kTowerRanges{TowerRange::none, TowerRange::in_sight, TowerRange::near,
                                         TowerRange::beside};

// "none", "in sight", "near", "beside"; parsing ignores case.
std::string_view to_text(TowerRange range);
Result<TowerRange> parse_tower_range(std::string_view text);

struct NearTowers {
  TowerRange radio = TowerRange::none;  // FM
  TowerRange cell = TowerRange::none;   // of the mobile phone network
  bool operator==(const NearTowers&) const = default;
};

// The distance that a range counts as, m; `range` not none. A radio tower in sight counts as 16 km
// away, near as 5 km and beside as 1.6 km, a cell tower as 1.6 km, 400 m and 160 m [common
// practice, no source].
double tower_distance_m(TowerService service, TowerRange range);

// The largest power that the rules of the USA allow: 100 kW ERP for FM (47 CFR 73.211, class C),
// and 1 kW ERP for a cell tower in the 600 MHz band (47 CFR 27.50), both from memory.
double tower_erp_kw(TowerService service);

// The power of both at the antenna's terminals, dBm; std::nullopt without any. The worst case:
// free space (ITU-R P.525), full power, and the antenna's gain along its axis in the nearest TV
// band: FM at 98 MHz counts as low VHF, a cell tower at 635 MHz as UHF.
std::optional<double> near_towers_dbm(const Antenna& antenna, const NearTowers& towers);

}  // namespace mastwise::gear
