#pragma once

#include "app/shared/names.hpp"
#include "app/shared/plan.hpp"
#include "core/angles/bearing.hpp"
#include "core/channels/channels.hpp"
#include "core/gear/near_towers.hpp"
#include "core/geo/position.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/headings/heading_error.hpp"
#include "core/reception/obstacle_ring.hpp"
#include "core/reception/surroundings.hpp"
#include "core/rig/rig_heading.hpp"
#include "core/stations/station.hpp"
#include "core/sweep/sweep.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace mastwise {

// Position uncertainty, one sigma, meters: typed by hand; and by a town's name or a map's dot for
// it [our choices, no source].
inline constexpr double kTypedPosition_m = 50.0;
inline constexpr double kSomewhereInTown_m = 2000.0, kDotOfTown_m = 1000.0;

enum class PositionSource { Receiver, ByHand };
template <>
inline constexpr std::array kStoredNames<PositionSource> = names({"receiver", "by_hand"});

// The dial by which the person turns the antenna and reads the headings of a sweep; the sensor is
// on the antenna and reads itself, by map north.
enum class SweepBy { Compass, Handle, Sensor };
template <>
inline constexpr std::array kStoredNames<SweepBy> = names({"compass", "handle", "sensor"});

// A heading as read, with its north.
using ReadHeading = std::variant<Bearing<True>, Bearing<Magnetic>>;

// The rig heading and its origin.
struct Nose {
  enum class Origin { ByHand, LastCourse, BackedIn, Sensor, Sun, TwoPoints };
  ReadHeading heading;
  Origin origin = Origin::ByHand;
  double sigma_deg = kBaseplateCompass_deg;  // one standard deviation; see nose_sigma_deg()
  std::optional<Position> taken_at = {};     // valid there only; empty: valid where typed
  std::optional<RigHeadingCaution> caution = {};
  std::optional<Standing> read_at = {};  // ByHand: where the compass was read, if known
  bool operator==(const Nose&) const = default;
};
template <>
inline constexpr std::array kStoredNames<Nose::Origin> =
    names({"by_hand", "last_course", "backed_in", "sensor", "sun", "two_points"});

// A sweep that was kept: where the dial said that the station is.
struct PeakedStation {
  StationKey key = {};
  SweepBy by = SweepBy::Compass;
  Position position;  // of its transmitter
  Position taken_at;  // the rig's position: the compass may differ elsewhere
  double peak_deg = 0.0;
  double sigma_deg = 0.0;
  std::optional<Standing> standing = {};  // where the dial was read, if known
  std::optional<UtcTime> at = {};         // empty: by an older version, of unknown age
  bool operator==(const PeakedStation&) const = default;
};

// A compass read toward the sun's shadow, a star or a landmark, whose direction is known.
struct CompassSight {
  CompassCheckBy by = CompassCheckBy::sun;
  Bearing<True> bearing;  // the known direction
  double bearing_sigma_deg = kSight_deg;
  Bearing<Magnetic> read;
  Position taken_at;
  std::optional<Standing> standing = {};
  UtcTime at = {};
  bool operator==(const CompassSight&) const = default;
};

// Reciprocal bearings of two spots; see check_reciprocal().
struct KeptReciprocal {
  double disagreement_deg = 0.0;
  Position taken_at;
  std::optional<Standing> standing = {};
  UtcTime at = {};
  bool operator==(const KeptReciprocal&) const = default;
};

// What the record of a kept sweep needs.
struct KeptSweep {
  StationKey station = {};
  SweepBy by = SweepBy::Compass;
  Band band = Band::uhf;
  std::string scale = {};
  std::vector<aim::Reading> readings = {};
  Bearing<Dial> peak = {};
  double sigma_deg = 0.0;
  bool operator==(const KeptSweep&) const = default;
};

// The stop as the person set it. Undo reverts a change.
struct Stop {
  bool practice = false;  // the invented stop with its invented stations
  PositionSource source = PositionSource::Receiver;
  std::optional<Position> by_hand = {};
  double by_hand_error_m = kTypedPosition_m;  // one standard deviation
  std::string by_name = {};                   // of the place whose middle it is; empty if typed
  std::optional<Nose> nose = {};
  std::optional<Position> tail_mark = {};  // the first of two points along the flank
  std::optional<Station> target = {};
  // Heading of the antenna if it is not straight at the target: one of the turn plan.
  std::optional<Bearing<True>> turn = {};
  std::optional<Standing> standing = {};  // with the compass; empty: nobody has said
  std::vector<PeakedStation> strong_stations = {};
  std::vector<CompassSight> sights = {};
  std::optional<KeptReciprocal> reciprocal = {};
  std::vector<StationKey> pinned = {};  // must be in the plan
  std::vector<PinNote> pin_notes = {};  // of the pinned stations that were on board
  reception::Surroundings surroundings = reception::Surroundings::open;
  std::optional<gear::NoiseEnvironment> noise = {};  // empty: that of the surroundings
  bool inverter_on = false;
  gear::NearTowers towers = {};
  reception::LeafChoice leaves = reception::LeafChoice::by_season;
  reception::ObstacleRing ring = {};     // what stands around the rig
  std::optional<Position> ring_at = {};  // where it was marked; empty: here
  bool operator==(const Stop&) const = default;
};

// Outcomes at one are valid at the other.
inline constexpr double kSameStop_m = 200.0;
bool same_stop(const Position& a, const Position& b);

bool is_pinned(const Stop& stop, const StationKey& key);

// Sets the position by hand; `name`: of the place whose middle it is.
void stand_at(Stop& stop, const Position& position, double error_m, std::string name = {});

}  // namespace mastwise
