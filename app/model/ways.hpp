#pragma once

#include "app/model/plan.hpp"
#include "core/headings/sayings.hpp"
#include "core/plan/scan_help.hpp"

#include <string>
#include <vector>

// What the sheets of the heading show, derived while they are open.
namespace mastwise {

struct Model;
struct Findings;
struct StationsAnswer;

// One channel to enter into the receiver.
struct ScanLine {
  StationKey key = {};  // of the best station on it
  ChannelToEnter channel = {};
  std::string carries = {};  // the networks of that station
  ScanTick tick = ScanTick::not_tried;
  bool operator==(const ScanLine&) const = default;
};
struct ScanList {
  Bearing<True> heading = {};
  ScanChoice which = ScanChoice::full;
  ScanState state = ScanState::not_finished;  // what the ticks say
  std::vector<Twins> twins = {};
  std::vector<ScanLine> lines = {};
  bool operator==(const ScanList&) const = default;
};

// A station that was looked for in the receiver's list.
struct Ticked {
  StationKey key = {};
  ScanTick tick = ScanTick::not_tried;
  bool operator==(const Ticked&) const = default;
};

// What a transmitter's position is unsure by, one sigma in m: public records give it to the second
// of arc.
inline constexpr double kTransmitter_m = 30.0;

// How wrong the clock may be, in minutes: a receiver's is right to the second, a machine's own may
// be a minute off [common practice, no source].
double clock_error_min(const Model& model);

// The world's time, by the receiver where it tells it.
UtcTime moment_of(const Model& model);

// The error of pointing by the means in use, and what it is made of.
HeadingContext heading_context(const Model& model);

// What a step of the plan is to bring, as far as the answer knows it.
std::vector<ScanCandidate> scan_candidates(const StationsAnswer& answer, const PlanStep& step);

// Fills what the open sheet shows.
void derive_ways(const Model& model, Findings& findings);
void derive_scan(const Model& model, Findings& findings);

}  // namespace mastwise
