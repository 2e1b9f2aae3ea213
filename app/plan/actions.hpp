#pragma once

#include "app/plan/state.hpp"
#include "app/shared/action.hpp"

#include <string>
#include <string_view>

namespace mastwise::act {

struct ChoosePlan {
  static constexpr std::string_view kName = "ChoosePlan";
  static constexpr auto kFields = fields("plan_for");
  PlanFor plan_for;
};

// The least chance that a heading must bring.
struct NextPlanFloor {
  static constexpr std::string_view kName = "NextPlanFloor";
};

// The heading to show beside the first.
struct ShowTurn {
  static constexpr std::string_view kName = "ShowTurn";
  static constexpr auto kFields = fields("column");
  std::size_t column;  // of the table; at least 1
};

// The heading that the acts are about.
struct ChooseTurn {
  static constexpr std::string_view kName = "ChooseTurn";
  static constexpr auto kFields = fields("column");
  std::size_t column;  // of the table
};

struct ScanStep {
  static constexpr std::string_view kName = "ScanStep";
  static constexpr auto kFields = fields("step");
  std::size_t step;  // of the plan: show its channels
};

// What the receiver's list shows of a station.
struct SetTick {
  static constexpr std::string_view kName = "SetTick";
  static constexpr auto kFields = fields("key", "tick");
  StationKey key;
  ScanTick tick;
};

// Not tried, found, not found, one after another, in recordings of the first releases.
struct TickStation {
  static constexpr std::string_view kName = "TickStation";
  static constexpr auto kFields = fields("key");
  StationKey key;
};

// Saves the paper card to a file.
struct SavePaper {
  static constexpr std::string_view kName = "SavePaper";
};

struct PaperSaved {
  static constexpr std::string_view kName = "PaperSaved";
  static constexpr auto kFields = fields("file");
  std::string file;  // empty: saving failed, and the trouble follows
};

}  // namespace mastwise::act

namespace mastwise {

using PlanActions =
    ActionList<act::ChoosePlan, act::NextPlanFloor, act::ShowTurn, act::ChooseTurn, act::ScanStep,
               act::SetTick, act::TickStation, act::SavePaper, act::PaperSaved>;

}  // namespace mastwise
