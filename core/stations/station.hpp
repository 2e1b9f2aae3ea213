#pragma once

#include "core/channels/channels.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"
#include "core/stations/transmit_pattern.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise {

enum class BroadcastStandard : std::uint8_t { atsc1, atsc3, dvb_t, dvb_t2, isdb_t };

enum class Polarization : std::uint8_t { unknown, horizontal, vertical, elliptical };

// One program of a station's multiplex. Empty texts are unknown.
struct Program {
  std::string virtual_channel = {};  // what the receiver shows, "6.1"
  std::string name = {};
  std::string network = {};
  std::string language = {};  // as the source writes it
  bool operator==(const Program&) const = default;
};

// A cell of the source that fits no field of Station.
struct Note {
  std::string column = {};
  std::string text = {};
  bool operator==(const Note&) const = default;
};

// A table of stations from one publisher.
struct Source {
  std::string name = {};
  std::string date = {};  // of the table, "2017-04-13"; empty if unknown
  bool operator==(const Source&) const = default;
};

// The source of a station's facts.
struct Provenance {
  Source source = {};
  std::size_t line = 0;  // the first line of the text is 1
  bool operator==(const Provenance&) const = default;
};

// One transmitter at one site. Unknown texts are empty; everything else unknown is std::nullopt.
struct Station {
  std::string id = {};  // the same after a new import; unique within its source
  std::string call_sign = {};
  std::string facility_id = {};
  std::string name = {};
  std::string network = {};
  // The same for the transmitters of one single-frequency network on one channel.
  std::string multiplex = {};
  std::vector<Program> programs = {};

  Raster raster = Raster::atsc;
  RfChannel rf_channel = {};  // a channel of the plan
  std::optional<BroadcastStandard> standard = {};

  Position position;
  std::optional<double> site_amsl_m = {};     // the ground, above mean sea level
  std::optional<double> antenna_amsl_m = {};  // the radiation center, above mean sea level
  std::optional<double> haat_m = {};          // above the average terrain around
  std::optional<double> erp_kw = {};          // toward the strongest direction
  Polarization polarization = Polarization::unknown;
  std::optional<bool> directional = {};
  std::optional<TransmitPattern> pattern = {};  // azimuths are true
  std::optional<bool> translator = {};

  std::string city = {};  // place of license
  std::string state = {};

  std::vector<Note> notes = {};
  Provenance provenance = {};

  bool operator==(const Station&) const = default;
};

// "ATSC 1.0", "ATSC 3.0", "DVB-T", "DVB-T2", "ISDB-T"; parsing ignores case.
std::string_view to_text(BroadcastStandard standard);
Result<BroadcastStandard> parse_broadcast_standard(std::string_view text);

// "unknown", "horizontal", "vertical", "elliptical"; parsing ignores case.
std::string_view to_text(Polarization polarization);
Result<Polarization> parse_polarization(std::string_view text);

}  // namespace mastwise
