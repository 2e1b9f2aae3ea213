#pragma once

#include "core/channels/channels.hpp"
#include "core/propagation/itm/itm.hpp"
#include "core/reception/prospect.hpp"
#include "core/reception/surroundings.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>

namespace mastwise::reception {

// Why a station has no field.
enum class Missing : std::uint8_t { nothing, channel, power, height, distance, model };

// The station that disturbs most of those on the same or on a neighboring channel.
struct Disturber {
  std::size_t station = 0;  // its number in the survey
  double over_db = 0.0;     // how far the wanted signal is over it
  double cost_db = 0.0;     // what it alone takes off the margin
};

// What the words of the reasons need beyond the outlook.
struct Detail {
  Missing missing = Missing::nothing;
  double without_terrain_m = 0.0;
  double excess_db = 0.0;  // loss beyond free space down to the top of the surroundings
  itm::Warnings itm_warnings = 0;
  LocalLoss local = {};
  double station_pattern_db = 0.0;     // what its pattern takes toward the stop
  bool station_pattern_known = false;  // else it is assumed
  double field_tenth_dbuvm = 0.0;      // exceeded for 10 % of the time
  double polarization_db = 0.0;
  double heading_db = 0.0;    // mean loss by the error of the heading
  double received_dbm = 0.0;  // median, all losses taken off, antenna aimed
  double noise_dbm = 0.0;
  double external_noise_db = 0.0;  // what noise from outside the receiver takes off the margin
  double required_cn_db = 0.0;
  double overload_db = 0.0;  // by how much strong signals overload the amplifier; 0: they do not
  double overload_sum_dbm = 0.0;
  std::optional<Disturber> same_channel = {};
  std::optional<Disturber> next_channel = {};
};

// Everything that the survey holds of one station.
struct Measurement {
  bool measured = false;
  ChannelSlot slot = {};
  BroadcastStandard standard = BroadcastStandard::atsc1;  // told or assumed
  Outlook outlook = {};
  Detail detail = {};

  bool heard() const { return measured && outlook.field_dbuvm.has_value(); }
};

}  // namespace mastwise::reception
