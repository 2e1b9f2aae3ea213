#pragma once

#include "app/plan/table.hpp"
#include "app/shared/plan.hpp"
#include "core/geo/position.hpp"
#include "core/plan/scan_help.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

template <>
inline constexpr std::array kStoredNames<ScanTick> = names({"not_tried", "found", "not_found"});

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
  std::size_t floor = 0;   // of kPlanFloors
  std::size_t second = 1;  // the column of the table beside the first
  std::size_t chosen = 0;  // of the table's columns, to aim at and to scan
  std::vector<Ticked> ticks = {};
  std::optional<Position> ticked_at = {};  // position of the ticks, which do not count elsewhere
  bool paper_wanted = false;               // the paper card is still to be written
  std::string paper_file = {};             // path of the last one

  // While their sheets are open.
  std::optional<PlanTable> table = {};
  ScanList scan = {};
  bool operator==(const PlanState&) const = default;
};

}  // namespace mastwise
