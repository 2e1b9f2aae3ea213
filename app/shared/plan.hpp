#pragma once

#include "app/shared/names.hpp"
#include "core/angles/bearing.hpp"
#include "core/plan/slack.hpp"
#include "core/stations/station.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace mastwise {

// The key of a station in a catalog.
struct StationKey {
  std::string source, id;
  bool operator==(const StationKey&) const = default;
};
StationKey key_of(const Station& station);

// What a pinned station was called when it was last on board.
struct PinNote {
  StationKey key = {};
  std::string call_sign = {};
  std::string facility_id = {};
  std::string channel = {};
  bool operator==(const PinNote&) const = default;
};
PinNote pin_note(const Station& station);

// The stations that the turn plan should bring in.
enum class PlanFor {
  Pinned,    // every pinned station; without any, the target
  Networks,  // one station of each network in reach
  All,       // every station above the floor
};
template <>
inline constexpr std::array kStoredNames<PlanFor> = names({"pinned", "networks", "all"});

// The least chance that a heading of the plan must bring, in percent; the default first.
inline constexpr std::array kPlanFloors{kUsualFloor_percent, 90.0, 40.0};

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

// Why a heading is beside a station: an interferer is weaker there.
struct PlanRemark {
  std::string station = {}, interferer = {};  // call signs
  double gain_percent = 0.0;                  // of the station's chance
  bool on_null = false;                       // a null of the measured pattern lies on it
  std::vector<std::string> loses = {};        // then: what comes in straight at the station only
  bool operator==(const PlanRemark&) const = default;
};

// A heading at which a null of the antenna lies on what disturbs the target most.
struct NullHint {
  Bearing<True> heading = {};
  std::string interferer = {};  // call sign
  Bearing<True> interferer_bearing = {};
  double width_deg = 0.0, depth_db = 0.0;  // of the null in place
  double chance_percent = 0.0;             // of the target there
  double gain_percent = 0.0;               // points over aiming straight
  std::vector<std::string> loses = {};     // call signs
  bool operator==(const NullHint&) const = default;
};

// A station or network that no heading brings in.
struct NotInPlan {
  std::string name = {};                    // of the station or network
  std::optional<double> best_percent = {};  // its best chance, where known
  std::optional<StationKey> key = {};       // of the station with it
  bool operator==(const NotInPlan&) const = default;
};

struct PlanStep {
  Bearing<True> bearing;
  Slack slack = {};
  std::vector<PlanStation> brings = {};  // its main stations first
  std::vector<PlanStation> loses = {};
  std::vector<PlanRemark> remarks = {};
  bool operator==(const PlanStep&) const = default;
};

// The fewest headings that bring in the wanted stations.
struct Plan {
  std::vector<PlanStep> steps = {};
  std::optional<PlanStep> again = {};  // where one is enough: what turning once more would bring
  std::vector<NotInPlan> out = {};
  std::vector<NotInPlan> too_weak = {};  // the best of the other stations that no heading brings
  bool fewest_proved = true;
  bool operator==(const Plan&) const = default;
};

}  // namespace mastwise
