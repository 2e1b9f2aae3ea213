#pragma once

#include "core/channels/channels.hpp"
#include "core/reception/obstacle.hpp"
#include "core/reception/obstacle_ring.hpp"
#include "core/stations/station.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace mastwise::itm {
enum class Warning : std::uint32_t;
}
namespace mastwise::gear {
enum class Decoding : std::uint8_t;
enum class NoiseEnvironment : std::uint8_t;
}  // namespace mastwise::gear

// Why a station has its chance, as facts; app/words makes the sentences.
namespace mastwise::reception {

enum class Surroundings : std::uint8_t;

// In the order of Fact's alternatives.
enum class ReasonKind : std::uint8_t {
  // Reasons that cost decibels.
  obstacle,      // a ridge, or the earth's curve
  rough_ground,  // the rest of the ground's loss beyond free space
  surroundings,  // at the stop
  leaves,
  polarization,
  same_channel,         // a station on the same channel
  next_channel,         // a station on a neighboring channel
  noise,                // man-made and galactic
  aim,                  // the heading error with this beam
  fading,               // evenings differ
  model_spread,         // the two models disagree
  transmitter_pattern,  // loss from a directional station's pattern, known or assumed
  shortfall,            // the missing decibels
  overload,             // strong signals exceed the amplifier's limit
  logbook,              // earlier stations came in worse, or better, than computed
  // Reasons without a cost in decibels, 0 dB.
  clear_line,     // nothing in the way
  no_terrain,     // no terrain for the path or for a part of it
  model_limit,    // a warning of a model
  unknown_fact,   // the power, the height, the standard is unknown
  amplifier_off,  // the amplifier has no power; this one costs decibels
  decoding,       // the TV cannot decode the station, or may be unable to
  assumed_mode,   // the table does not say how the station sends
  on_its_side,    // an obstacle that a person marked; this one costs decibels
};
inline constexpr std::size_t kReasonKinds = 23;

// The name for storage: "rough_ground". Empty for an invalid value.
std::string_view to_text(ReasonKind kind);

// Why a station has no field, or what is assumed for a missing fact.
enum class UnknownFact : std::uint8_t {
  channel,  // not in the channel plan
  power,
  height,        // of the transmitting antenna
  too_near,      // the stop is at the transmitter
  model_range,   // the heights are out of the models' range
  antenna_amsl,  // height above sea level: ordinary hills are assumed
  standard,      // one is assumed
};
inline constexpr std::size_t kUnknownFacts = 7;
std::string_view to_text(UnknownFact what);  // "too_near"

// The facts of each type of reason, besides its decibels.
namespace fact {

struct InTheWay {
  Obstacle obstacle = {};
  bool operator==(const InTheWay&) const = default;
};
struct RoughGround {
  double distance_m = 0.0;
  bool assumed = false;            // ordinary hills, since there is no terrain
  bool besides_obstacles = false;  // there are also obstacles
  bool operator==(const RoughGround&) const = default;
};
struct AroundStop {
  Surroundings around = {};
  double antenna_m = 0.0;                // height above ground
  std::optional<double> clutter_m = {};  // height of trees or houses; std::nullopt on open ground
  bool operator==(const AroundStop&) const = default;
};
struct Leaves {
  double depth_m = 0.0;
  bool bare = false;  // trees without leaves
  bool operator==(const Leaves&) const = default;
};
struct CrossedPolarization {
  bool antenna_horizontal = true;  // and the signal vertical; false: the reverse
  bool operator==(const CrossedPolarization&) const = default;
};
struct Interferer {
  std::string call_sign = {};  // empty if unknown
  double distance_m = 0.0;     // from the stop
  double over_db = 0.0;        // how far the wanted signal is above it; negative: below it
  bool operator==(const Interferer&) const = default;
};
struct SameChannel : Interferer {};
struct NextChannel : Interferer {};
struct Noise {
  double frequency_mhz = 0.0;
  gear::NoiseEnvironment environment = {};
  bool inverter_on = false;
  bool measured = false;  // the rig's appliances were measured in this band
  bool operator==(const Noise&) const = default;
};
struct HeadingError {
  double sigma_deg = 0.0;
  bool operator==(const HeadingError&) const = default;
};
struct Fading {
  double distance_m = 0.0;
  bool operator==(const Fading&) const = default;
};
struct ModelSpread {
  double spread_db = 0.0;  // the whole difference; half of it is the reason's decibels
  double distance_m = 0.0;
  bool operator==(const ModelSpread&) const = default;
};
struct TransmitterPattern {
  bool known = false;  // false: its loss is assumed
  bool operator==(const TransmitterPattern&) const = default;
};
struct Shortfall {
  bool beyond_amplifier = false;  // more than a usual amplifier gives
  bool operator==(const Shortfall&) const = default;
};
struct Overload {
  double sum_dbm = 0.0;    // of all signals; the reason's decibels are above the limit
  bool by_towers = false;  // mostly near towers of other services
  bool operator==(const Overload&) const = default;
};
struct Lesson {
  Band band = Band::uhf;
  double bias_db = 0.0;  // stations came in this much better than computed; negative: worse
  std::size_t stops = 0;
  bool operator==(const Lesson&) const = default;
};
struct ClearLine {
  double distance_m = 0.0;
  bool operator==(const ClearLine&) const = default;
};
struct NoTerrain {
  double missing_m = 0.0;  // of the path
  double distance_m = 0.0;
  std::string tile = {};  // the name of one that is missing: "N44W072"
  bool operator==(const NoTerrain&) const = default;
};
struct ModelLimit {
  itm::Warning warning = {};
  bool operator==(const ModelLimit&) const = default;
};
struct Unknown {
  UnknownFact what = UnknownFact::power;
  std::optional<RfChannel> channel = {};          // of `channel`
  std::optional<double> distance_m = {};          // of `too_near`
  std::optional<BroadcastStandard> assumed = {};  // of `standard`
  bool operator==(const Unknown&) const = default;
};

struct AmplifierOff {
  bool operator==(const AmplifierOff&) const = default;
};
struct Decoding {
  gear::Decoding decoding = {};
  BroadcastStandard standard = BroadcastStandard::atsc1;  // of the station, or assumed
  bool operator==(const Decoding&) const = default;
};
struct AssumedMode {
  BroadcastStandard standard = BroadcastStandard::atsc1;
  std::string mode = {};  // "64QAM 2/3"
  double needs_db = 0.0;  // its required carrier-to-noise ratio
  double least_db = 0.0;  // of the standard's most robust mode
  double most_db = 0.0;   // of its most demanding one
  bool operator==(const AssumedMode&) const = default;
};
struct OnItsSide {
  Side side = {};     // of the ring
  bool bare = false;  // trees without leaves
  bool operator==(const OnItsSide&) const = default;
};

}  // namespace fact

using Fact = std::variant<fact::InTheWay, fact::RoughGround, fact::AroundStop, fact::Leaves,
                          fact::CrossedPolarization, fact::SameChannel, fact::NextChannel,
                          fact::Noise, fact::HeadingError, fact::Fading, fact::ModelSpread,
                          fact::TransmitterPattern, fact::Shortfall, fact::Overload, fact::Lesson,
                          fact::ClearLine, fact::NoTerrain, fact::ModelLimit, fact::Unknown,
                          fact::AmplifierOff, fact::Decoding, fact::AssumedMode, fact::OnItsSide>;
static_assert(std::variant_size_v<Fact> == kReasonKinds);

struct Reason {
  double decibel = 0.0;  // its cost; at least 0
  Fact fact = {};
  double gain_percent = 0.0;  // points of chance that the station would gain without it
  ReasonKind kind() const { return static_cast<ReasonKind>(fact.index()); }
  bool operator==(const Reason&) const = default;
};

}  // namespace mastwise::reception
