#pragma once

#include "core/angles/bearing.hpp"
#include "core/plan/slack.hpp"
#include "core/stations/station.hpp"

#include <string>
#include <vector>

namespace mastwise {

// A station as a catalog tells it from all others.
struct StationKey {
  std::string source, id;
  bool operator==(const StationKey&) const = default;
};
StationKey key_of(const Station& station);

// What the turn plan is to bring.
enum class PlanFor {
  Pinned,    // every pinned station; without any, the target
  Networks,  // one station of each network that can be had
  All,       // whatever reaches the floor
};

// A station in the plan.
struct PlanStation {
  StationKey key;
  std::string title = {};       // call sign and virtual channel
  std::string rf_channel = {};  // as it is entered by hand
  std::string network = {};
  double chance_percent = 0.0;
  bool pinned = false;
  bool operator==(const PlanStation&) const = default;
};

struct PlanStep {
  Bearing<True> bearing;
  Slack slack = {};
  std::vector<PlanStation> brings = {};  // what it is there for first
  std::vector<PlanStation> loses = {};
  std::string remark = {};  // why it is aimed beside a station
  bool operator==(const PlanStep&) const = default;
};

// The fewest headings that bring in what is wanted.
struct Plan {
  std::vector<PlanStep> steps = {};
  std::vector<std::string> out = {};  // what no heading brings, and its best chance
  bool fewest_proved = true;
  bool operator==(const Plan&) const = default;
};

}  // namespace mastwise
