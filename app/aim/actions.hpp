#pragma once

#include "app/aim/state.hpp"
#include "app/shared/action.hpp"
#include "app/shared/settings.hpp"

#include <optional>
#include <string_view>

namespace mastwise::act {

// The next direction at the top of the dial, in recordings of before it was chosen by name.
struct TurnDial {
  static constexpr std::string_view kName = "TurnDial";
};

struct ChooseDialUp {
  static constexpr std::string_view kName = "ChooseDialUp";
  static constexpr auto kFields = fields("up");
  DialUp up;
};

// The way to point the antenna.
struct ChoosePointing {
  static constexpr std::string_view kName = "ChoosePointing";
  static constexpr auto kFields = fields("method");
  PointingMethod method;
};

// Saves the handle as typed in the form.
struct KeepHandle {
  static constexpr std::string_view kName = "KeepHandle";
};

struct ForgetHandle {
  static constexpr std::string_view kName = "ForgetHandle";
};

// Undoes ForgetHandle.
struct HandleBack {
  static constexpr std::string_view kName = "HandleBack";
  static constexpr auto kFields = fields("handle");
  std::optional<HandleChoice> handle;
};

// Where the person stands with the compass.
struct StandAt {
  static constexpr std::string_view kName = "StandAt";
  static constexpr auto kFields = fields("standing");
  Standing standing;
};

// The compass reads Field::CompassRead_deg toward something whose direction is known now.
struct CheckCompass {
  static constexpr std::string_view kName = "CheckCompass";
  static constexpr auto kFields = fields("by");
  CompassCheckBy by;
};

// Uses the reciprocal bearings of the form at this stop.
struct KeepReciprocal {
  static constexpr std::string_view kName = "KeepReciprocal";
};

// The person has set the compass to the declination here.
struct CompassIsSet {
  static constexpr std::string_view kName = "CompassIsSet";
};

// The tablet is to learn its own iron anew.
struct ForgetTablet {
  static constexpr std::string_view kName = "ForgetTablet";
};

// Undoes ForgetTablet.
struct TabletBack {
  static constexpr std::string_view kName = "TabletBack";
  static constexpr auto kFields = fields("points");
  std::vector<motion::Vector> points;
};

struct ForgetCorrection {
  static constexpr std::string_view kName = "ForgetCorrection";
};

}  // namespace mastwise::act

namespace mastwise {

using AimActions = ActionList<act::TurnDial, act::ChooseDialUp, act::ChoosePointing,
                              act::KeepHandle, act::ForgetHandle, act::HandleBack, act::StandAt,
                              act::CheckCompass, act::KeepReciprocal, act::CompassIsSet,
                              act::ForgetTablet, act::TabletBack, act::ForgetCorrection>;

}  // namespace mastwise
