#pragma once

#include "core/channels/channels.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/reception/prospect.hpp"
#include "core/reception/rivals.hpp"
#include "core/reception/surroundings.hpp"
#include "core/terrain/tile.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>

namespace mastwise::reception {

// Why a station has no field.
enum class Missing : std::uint8_t { nothing, channel, power, height, distance, model };

// The strongest interferer among those on the same or on a neighboring channel.
struct Disturber {
  std::size_t station = 0;  // its index in the survey
  double over_db = 0.0;     // how far the wanted signal is above it
  double cost_db = 0.0;     // the margin it takes alone
};

// Values for the reasons beyond the outlook.
struct Detail {
  Missing missing = Missing::nothing;
  double without_terrain_m = 0.0;
  std::optional<terrain::TileCell> missing_tile = {};  // of the longest part without terrain
  double rough_ground_db = 0.0;  // how much weaker the field is if all unknown ground is rough
  double excess_db = 0.0;        // loss beyond free space down to the top of the surroundings
  itm::Warnings itm_warnings = 0;
  LocalLoss local = {};
  std::size_t side = 0;                // of the ring, whose obstacle adds to the local loss
  double station_pattern_db = 0.0;     // loss of the station's pattern toward the stop
  bool station_pattern_known = false;  // false: it is assumed
  double field_tenth_dbuvm = 0.0;      // exceeded for 10 % of the time
  double polarization_db = 0.0;
  double heading_db = 0.0;    // mean loss from the heading error
  double received_dbm = 0.0;  // median after all losses, antenna aimed
  // The same as if no obstacle of the ring stood on its side.
  double unsheltered_dbm() const { return received_dbm + local.side_db; }
  double noise_dbm = 0.0;
  double external_noise_db = 0.0;  // margin lost to external noise
  double required_cn_db = 0.0;
  double overload_db = 0.0;  // how far strong signals exceed the amplifier's limit; 0: no overload
  double overload_sum_dbm = 0.0;
  bool overload_by_towers = false;  // mostly by near towers of other services
  double helped_db = 0.0;           // by other transmitters of the same program on the channel
  Rivals rivals = {};
  std::optional<Disturber> same_channel = {};
  std::optional<Disturber> next_channel = {};
};

// All data of the survey about one station.
struct Measurement {
  bool measured = false;
  ChannelSlot slot = {};
  BroadcastStandard standard = BroadcastStandard::atsc1;  // from the table or assumed
  Outlook outlook = {};
  Detail detail = {};

  bool heard() const { return measured && outlook.field_dbuvm.has_value(); }
};

}  // namespace mastwise::reception
