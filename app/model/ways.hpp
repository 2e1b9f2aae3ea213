#pragma once

#include "app/model/plan.hpp"
#include "core/headings/sayings.hpp"
#include "core/plan/scan_help.hpp"

#include <string>
#include <vector>

// Contents of the heading's sheets, derived while they are open.
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
  ScanState state = ScanState::not_finished;  // result of the ticks
  std::vector<Twins> twins = {};
  std::vector<ScanLine> lines = {};
  bool operator==(const ScanList&) const = default;
};

// A station ticked in the receiver's list.
struct Ticked {
  StationKey key = {};
  ScanTick tick = ScanTick::not_tried;
  bool operator==(const Ticked&) const = default;
};

// Uncertainty of a transmitter's position, one sigma, meters: public records round to the arc
// second.
inline constexpr double kTransmitter_m = 30.0;

// Clock error in minutes: a receiver's clock is right to the second, a tablet's may be a minute
// off [common practice, no source].
double clock_error_min(const Model& model);

// UTC, from the receiver if it sends it.
UtcTime moment_of(const Model& model);

// The error of the chosen way to point, and its parts.
HeadingContext heading_context(const Model& model);

// The stations of a plan step that the answer knows.
std::vector<ScanCandidate> scan_candidates(const StationsAnswer& answer, const PlanStep& step);

// Fills the open sheet's contents.
void derive_ways(const Model& model, Findings& findings);
void derive_scan(const Model& model, Findings& findings);

}  // namespace mastwise
