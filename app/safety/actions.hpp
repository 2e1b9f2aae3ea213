#pragma once

#include "app/shared/action.hpp"

#include <string>

namespace mastwise::act {

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

// The rig stands after the alarm, and somebody goes out to lower the antenna.
struct WillLower {
  static constexpr std::string_view kName = "WillLower";
};

// A passenger unlocks the screens while the rig moves, on purpose.
struct UnlockForPassenger {
  static constexpr std::string_view kName = "UnlockForPassenger";
};

// The tablet went from external power to its battery, as when somebody gets ready to drive. A
// raised antenna is asked about.
struct Unplugged {
  static constexpr std::string_view kName = "Unplugged";
};

// The store has tried to write a change of the antenna.
struct AntennaWritten {
  static constexpr std::string_view kName = "AntennaWritten";
  static constexpr auto kFields = fields("trouble");
  std::string trouble;  // why it could not; empty: it is on the disk
};

}  // namespace mastwise::act

namespace mastwise {

using SafetyActions =
    ActionList<act::ConfirmAsked, act::RefuseAsked, act::QuietAlarm, act::WillLower,
               act::UnlockForPassenger, act::Unplugged, act::AntennaWritten>;

}  // namespace mastwise
