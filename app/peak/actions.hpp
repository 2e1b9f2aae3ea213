#pragma once

#include "app/peak/state.hpp"
#include "app/shared/action.hpp"

#include <string_view>

namespace mastwise::act {

// A sweep: readings of the meter at several headings.
struct BeginSweep {
  static constexpr std::string_view kName = "BeginSweep";
  static constexpr auto kFields = fields("by");
  SweepBy by;
};

struct TurnSweep {
  static constexpr std::string_view kName = "TurnSweep";
  static constexpr auto kFields = fields("degrees");
  double degrees;  // clockwise, seen from above
};

struct SetMeter {
  static constexpr std::string_view kName = "SetMeter";
  static constexpr auto kFields = fields("by");
  double by;
};

struct ReadMeter {
  static constexpr std::string_view kName = "ReadMeter";
  static constexpr auto kFields = fields("nothing");
  bool nothing;  // no lock at this heading
};

// Of the next sweep, or of the one that has no readings yet. Between a scale and none at any time.
struct ChooseMeter {
  static constexpr std::string_view kName = "ChooseMeter";
  static constexpr auto kFields = fields("meter");
  Meter meter;
};

// How the next sweep is turned.
struct ChooseTurnBy {
  static constexpr std::string_view kName = "ChooseTurnBy";
  static constexpr auto kFields = fields("by");
  SweepBy by;
};

// The keys change the heading to read at, or the reading again.
struct SwitchTurning {
  static constexpr std::string_view kName = "SwitchTurning";
};

// Puts the sweep away; Undo puts it back.
struct EndSweep {
  static constexpr std::string_view kName = "EndSweep";
};

// The next scale, in recordings of the first releases.
struct NextScale {
  static constexpr std::string_view kName = "NextScale";
};

struct DropReading {
  static constexpr std::string_view kName = "DropReading";
};

// Undoes EndSweep, and BeginSweep over an earlier sweep.
struct PutSweepBack {
  static constexpr std::string_view kName = "PutSweepBack";
  static constexpr auto kFields = fields("sweep");
  Sweep sweep;
};

// The picture fails at the current heading.
struct MarkEdge {
  static constexpr std::string_view kName = "MarkEdge";
  static constexpr auto kFields = fields("right");
  bool right;  // of the headings with a picture
};

// Bytes from the meter.
struct MeterBytes {
  static constexpr std::string_view kName = "MeterBytes";
  Monotonic now;
  std::string bytes;
};

// The name and state of the meter's connection.
struct MeterLinkChanged {
  static constexpr std::string_view kName = "MeterLinkChanged";
  static constexpr auto kFields = fields("link");
  Link link;
};

// Meters that may be connected, while their sheet is open.
struct MetersFound {
  static constexpr std::string_view kName = "MetersFound";
  static constexpr auto kFields = fields("meters");
  std::vector<MeterChoice> meters;
};

// Reads this meter from now on; an empty name: none.
struct ConnectMeter {
  static constexpr std::string_view kName = "ConnectMeter";
  static constexpr auto kFields = fields("name");
  std::string name;
};

struct KeepSweep {
  static constexpr std::string_view kName = "KeepSweep";
};

// A hunt for noise on the target, in place of an earlier one.
struct BeginHunt {
  static constexpr std::string_view kName = "BeginHunt";
};

struct SetHunt {
  static constexpr std::string_view kName = "SetHunt";
  static constexpr auto kFields = fields("by");
  double by;  // dB
};

struct ReadHunt {
  static constexpr std::string_view kName = "ReadHunt";
};

// Takes back the last reading, or the last appliance.
struct DropHunt {
  static constexpr std::string_view kName = "DropHunt";
};

struct EndHunt {
  static constexpr std::string_view kName = "EndHunt";
};

// What the hunt found becomes the rig's.
struct KeepHunt {
  static constexpr std::string_view kName = "KeepHunt";
};

// The appliances of the rig with their noise, as measured or put back.
struct SetAppliances {
  static constexpr std::string_view kName = "SetAppliances";
  static constexpr auto kFields = fields("appliances");
  std::vector<gear::ApplianceNoise> appliances;
};

// Whether an appliance is on while one watches.
struct SwitchAppliance {
  static constexpr std::string_view kName = "SwitchAppliance";
  static constexpr auto kFields = fields("name", "on");
  std::string name;
  bool on;
};

}  // namespace mastwise::act

namespace mastwise {

using PeakActions =
    ActionList<act::BeginSweep, act::TurnSweep, act::SetMeter, act::ReadMeter, act::ChooseMeter,
               act::ChooseTurnBy, act::SwitchTurning, act::EndSweep, act::NextScale,
               act::DropReading, act::MarkEdge, act::KeepSweep, act::PutSweepBack, act::MeterBytes,
               act::MeterLinkChanged, act::MetersFound, act::ConnectMeter, act::BeginHunt,
               act::SetHunt, act::ReadHunt, act::DropHunt, act::EndHunt, act::KeepHunt,
               act::SetAppliances, act::SwitchAppliance>;

}  // namespace mastwise
