#pragma once

#include "app/safety/state.hpp"
#include "app/shared/action.hpp"

#include <string>

namespace mastwise::act {

// Opens a safety prompt.
struct Ask {
  static constexpr std::string_view kName = "Ask";
  Asking what;
};
struct ConfirmAsked {
  static constexpr std::string_view kName = "ConfirmAsked";
};
struct RefuseAsked {
  static constexpr std::string_view kName = "RefuseAsked";
};

// Makes the drive-off alarm quieter for 30 s.
struct QuietAlarm {
  static constexpr std::string_view kName = "QuietAlarm";
};

// The store has tried to write a change of the antenna.
struct AntennaWritten {
  static constexpr std::string_view kName = "AntennaWritten";
  std::string trouble;  // why it could not; empty: it is on the disk
};

// The look for the walk on the roof; asks first.
struct GoToRoof {
  static constexpr std::string_view kName = "GoToRoof";
};
struct LeaveRoof {
  static constexpr std::string_view kName = "LeaveRoof";
};

}  // namespace mastwise::act

namespace mastwise {

using SafetyActions = ActionList<act::Ask, act::ConfirmAsked, act::RefuseAsked, act::QuietAlarm,
                                 act::AntennaWritten, act::GoToRoof, act::LeaveRoof>;

}  // namespace mastwise
