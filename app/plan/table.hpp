#pragma once

#include "app/shared/plan.hpp"
#include "app/shared/survey.hpp"
#include "core/reception/reason.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

// The turn plan as a table: networks against headings.
namespace mastwise {

// The best station of a row at a heading.
struct PlanCell {
  StationKey key = {};
  std::string channel = {};  // its virtual channel for the network, or its call sign
  double chance_percent = 0.0;
  bool comes_in = false;  // with at least the floor
  bool operator==(const PlanCell&) const = default;
};

// A station that comes in at only one of two headings, with its chance at the second.
struct PlanChange {
  std::string channel = {};
  double chance_percent = 0.0;
  bool gained = false;  // else lost
  bool operator==(const PlanChange&) const = default;
};

struct PlanRow {
  std::string name = {};  // of the network, or of the station where none is known
  bool wanted = true;     // else it comes in besides
  std::vector<std::optional<PlanCell>> cells = {};  // by column; empty: far below the floor
  std::vector<PlanChange> changes = {};             // from the first column to the shown one
  bool operator==(const PlanRow&) const = default;
};

struct PlanColumn {
  Bearing<True> bearing = {};
  Slack slack = {};
  std::optional<StationKey> aim_at = {};  // the main station
  std::vector<PlanRemark> remarks = {};
  bool operator==(const PlanColumn&) const = default;
};

// What no heading brings, and the reason whose absence would gain most.
struct WeakStation {
  std::string channel = {};  // virtual channel or call sign; empty if no station is known
  std::string name = {};     // of the network or station
  std::optional<double> best_percent = {};
  std::optional<reception::Reason> why = {};
  bool operator==(const WeakStation&) const = default;
};

struct PlanTable {
  std::vector<PlanColumn> columns = {};  // the plan's headings, then the second turn if it has one
  bool again = false;                    // the last column is more than the plan needs
  std::size_t shown = 0;                 // the column shown beside the first; 0: there is none
  std::vector<PlanRow> rows = {};        // wanted ones first, each part by name
  std::size_t gained = 0, lost = 0;      // stations, from the first column to the shown one
  // Networks, or stations in a plan of all that is likely.
  std::size_t wanted = 0, brought = 0;
  bool nothing_pinned = false;         // a plan of what is pinned, which is of the target instead
  std::vector<WeakStation> weak = {};  // wanted ones first
  bool operator==(const PlanTable&) const = default;
};

// `second`: the column to show beside the first, as far as there is one. The answer has a plan.
PlanTable plan_table(const StationsAnswer& answer, std::size_t second);

}  // namespace mastwise
