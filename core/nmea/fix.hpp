#pragma once

#include "core/angles/bearing.hpp"
#include "core/geo/position.hpp"
#include "core/nmea/report.hpp"
#include "core/time.hpp"

#include <cstdint>
#include <optional>

namespace mastwise::nmea {

// Why there is no good fix now.
enum class FixTrouble {
  none,
  no_data,              // nothing was ever received
  silent,               // no bytes for some time
  not_nmea,             // bytes, but no sentence: another speed, or another protocol
  damaged,              // sentences, but none of the latest with a correct checksum
  no_checksums,         // sentences, but none with a checksum
  no_position_reports,  // good sentences, but none about a position: only a compass
  no_satellites,        // the receiver reports no fix and no satellite in use
  receiver_says_void,   // the receiver reports no fix
  frozen_time,          // the receiver repeats one time: it has lost its fix without knowing
  no_time,              // positions without a time, which may be old ones repeated
  estimated,            // dead reckoning
  manual,               // typed in
  simulator,
  impossible_position,  // coordinates outside the earth's
};

// The receiver's position and its quality at one moment.
struct Fix {
  FixTrouble why_not_good = FixTrouble::no_data;
  bool good() const { return why_not_good == FixTrouble::none; }

  std::optional<Position> position;       // only while the fix is good
  std::optional<Position> last_position;  // the last good one, however old
  std::optional<milliseconds> age;        // of last_position
  std::uint64_t positions_taken = 0;  // increases by one for each UTC epoch with a good position
  std::optional<milliseconds> silent_for;  // since the last byte

  FixQuality quality = FixQuality::none;
  std::optional<int> satellites;  // in use; known without a fix too
  std::optional<int> dimensions;  // 2 or 3
  std::optional<double> hdop;
  std::optional<double> error_m;     // the receiver's one-sigma horizontal error (GST)
  std::optional<double> altitude_m;  // above mean sea level
  std::optional<double> speed_mps;
  std::optional<Bearing<True>> course;     // over ground; meaningless for the nose while parked
  std::optional<Declination> declination;  // by the receiver's own model

  std::optional<TimeOfDay> time_of_day;  // UTC, of last_position
  std::optional<UtcTime> utc;            // the same moment with its date, once a date is trusted
  bool operator==(const Fix&) const = default;
};

// The direction of a heading sensor, by the north it uses. The caller knows how the sensor is
// mounted on the rig.
struct HeadingSensor {
  std::optional<Bearing<True>> true_heading;          // HDT, THS
  std::optional<Bearing<Magnetic>> magnetic_heading;  // HDG, HDM
  std::optional<Declination> declination;  // by the sensor's setting (HDG): check it before use
  std::uint64_t taken = 0;                 // increases by one with each heading
  bool operator==(const HeadingSensor&) const = default;
};

// "autonomous", "RTK fixed" and so on.
const char* name_of(FixQuality quality);

}  // namespace mastwise::nmea
