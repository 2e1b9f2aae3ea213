#pragma once

#include "app/shared/link.hpp"
#include "app/shared/plan.hpp"
#include "app/shared/stop.hpp"
#include "core/channels/channels.hpp"
#include "core/gear/noise_hunt.hpp"
#include "core/headings/compass_checks.hpp"
#include "core/nmea/receiver.hpp"
#include "core/sweep/edges.hpp"
#include "core/sweep/live_sweep.hpp"
#include "core/sweep/meter_lines.hpp"
#include "core/sweep/strong_station.hpp"
#include "core/sweep/sweep.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// What the receiver's meter shows. Without a meter, the picture alone tells the two headings where
// it fails.
enum class Meter { quality, decibel, bars_of_5, bars_of_10, none };
template <>
inline constexpr std::array kStoredNames<Meter> = names({"quality", "db", "bars", "bars10",
                                                         "none"});
// std::nullopt for none.
std::optional<aim::Scale> scale_of(Meter meter);
Meter meter_of(aim::Scale scale);

// Meter readings taken at several headings, and their fit.
struct Sweep {
  StationKey station = {};
  std::string title = {};
  Band band = Band::uhf;
  SweepBy by = SweepBy::Compass;
  aim::Scale scale = aim::Scale::quality_percent;
  Bearing<Dial> heading = {};  // at which the next reading is taken
  double value = 0.0;          // of the next reading
  bool no_meter = false;       // the two edges are looked for, not readings
  std::vector<aim::Reading> readings = {};

  std::optional<aim::SweepFit> fit = {};
  std::optional<Bearing<Dial>> next = {};   // the most useful next heading
  std::string why_no_fit = {};              // instead of `fit`, once there are readings
  std::vector<aim::CurvePoint> curve = {};  // of the fit

  // While a sensor and a meter speak: they take the readings, and what to do next.
  std::optional<aim::LiveSweep> live = {};
  aim::LiveHint hint = {};

  // The headings left and right where the picture fails.
  std::optional<Bearing<Dial>> left_edge = {}, right_edge = {};
  std::optional<aim::EdgeMiddle> between_edges = {};
  std::optional<Agreement> edges_agree = {};  // with the fit
  std::string edge_trouble = {};              // why the middle or agreement is missing
  bool operator==(const Sweep&) const = default;
};

// The greatest value of the scale, and the step of its plus and minus.
double scale_most(aim::Scale scale);
double scale_step(aim::Scale scale);
// The meter's start value before a reading.
double scale_start(aim::Scale scale);

// Fits the readings and compares the edges with them.
void fit(Sweep& sweep, const gear::Pattern& pattern);

// Takes over the readings of the sensor and the meter if there are new ones, and fits again.
void follow_live(Sweep& sweep, const gear::Pattern& pattern, Monotonic now);

// Adds the current reading and fits again; `nothing`: no lock at this heading.
void read_meter(Sweep& sweep, const gear::Pattern& pattern, bool nothing);
void drop_last_reading(Sweep& sweep, const gear::Pattern& pattern);
// The picture fails at the current heading.
void mark_edge(Sweep& sweep, bool right);
// The station's direction by the readings, else between the edges.
struct SweepResult {
  Bearing<Dial> peak;
  double sigma_deg;
  double error95_deg;  // it is within this many degrees to either side, 95 times of 100
};
std::optional<SweepResult> result_of(const Sweep& sweep);

// A meter that may be connected.
struct MeterChoice {
  std::string name = {};   // as in Settings::meter
  std::string label = {};  // of a serial device; empty for a tuner
  bool operator==(const MeterChoice&) const = default;
};

// The hunt for the appliance that disturbs, on one station.
struct NoiseHunt {
  std::string title = {};  // of the station
  Band band = Band::uhf;
  double value_db = 15.0;                  // of the next reading
  std::vector<gear::NoiseStep> steps{{}};  // the last one is being read
  Monotonic not_before = {};               // a connected meter is not read earlier
  bool operator==(const NoiseHunt&) const = default;
};

struct PeakState {
  // Of the next sweep.
  SweepBy by = SweepBy::Compass;
  Meter meter = Meter::quality;

  std::optional<NoiseHunt> hunt = {};
  std::optional<Sweep> sweep = {};
  bool turning = false;  // the keys change the heading to read at, not the reading

  aim::MeterLines line = {};  // what the connected meter sends
  Link line_link = {};
  std::vector<MeterChoice> meters = {};  // found last
  std::uint64_t headings_followed = 0;   // see nmea::HeadingSensor::taken
  bool operator==(const PeakState&) const = default;
};

// Whether sensor and meter take the readings now: both have spoken within some seconds.
bool reads_itself(const PeakState& peak, const nmea::Receiver& receiver, Monotonic now);

}  // namespace mastwise
