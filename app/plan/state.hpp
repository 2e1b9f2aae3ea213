#pragma once

#include "app/shared/plan.hpp"
#include "core/geo/position.hpp"
#include "core/plan/scan_help.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

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

struct PlanState {
  PlanFor plan_for = PlanFor::Pinned;
  std::size_t floor = 0;      // of kPlanFloors
  std::size_t scan_step = 0;  // of the plan, whose channels the sheet shows
  std::vector<Ticked> ticks = {};
  std::optional<Position> ticked_at = {};  // position of the ticks, which do not count elsewhere
  bool paper_wanted = false;               // the paper card is still to be written
  std::string paper_file = {};             // path of the last one

  ScanList scan = {};  // while its sheet is open
  bool operator==(const PlanState&) const = default;
};

}  // namespace mastwise
