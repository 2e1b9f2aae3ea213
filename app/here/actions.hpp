#pragma once

#include "app/shared/action.hpp"
#include "app/shared/settings.hpp"
#include "core/gear/near_towers.hpp"
#include "core/headings/standing.hpp"
#include "core/reception/surroundings.hpp"
#include "core/rig/rig_heading.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace mastwise::act {

// Position from the receiver.
struct UseReceiver {
  static constexpr std::string_view kName = "UseReceiver";
};

// The position found on the paper map becomes the rig's.
struct UseMapPlace {
  static constexpr std::string_view kName = "UseMapPlace";
  static constexpr auto kFields = fields("by_net");
  bool by_net;  // from grid lines, else by direction and millimeters
};

struct ChooseSurroundings {
  static constexpr std::string_view kName = "ChooseSurroundings";
  static constexpr auto kFields = fields("surroundings");
  reception::Surroundings surroundings;
};

struct ChooseNoise {
  static constexpr std::string_view kName = "ChooseNoise";
  static constexpr auto kFields = fields("noise", "inverter_on");
  std::optional<gear::NoiseEnvironment> noise;  // empty: that of the surroundings
  bool inverter_on;
};
struct ChooseTowers {
  static constexpr std::string_view kName = "ChooseTowers";
  static constexpr auto kFields = fields("radio", "cell");
  gear::TowerRange radio, cell;
};
struct ChooseLeaves {
  static constexpr std::string_view kName = "ChooseLeaves";
  static constexpr auto kFields = fields("leaves");
  reception::LeafChoice leaves;
};

struct ChooseGear {
  static constexpr std::string_view kName = "ChooseGear";
  static constexpr auto kFields = fields("gear");
  GearChoice gear;
};

// Sets the rig heading from the last straight course.
struct NoseFromCourse {
  static constexpr std::string_view kName = "NoseFromCourse";
  static constexpr auto kFields = fields("backed_in");
  bool backed_in;
};

struct NoseFromSensor {
  static constexpr std::string_view kName = "NoseFromSensor";
};

struct NoseFromSun {
  static constexpr std::string_view kName = "NoseFromSun";
  static constexpr auto kFields = fields("side");
  SunFrom side;  // of the rig that faces the sun
};

// The receiver is in line with the rig's side, behind the tail.
struct MarkTail {
  static constexpr std::string_view kName = "MarkTail";
};

// The receiver is now ahead of the nose.
struct NoseFromPoints {
  static constexpr std::string_view kName = "NoseFromPoints";
};

// Where the compass was read for the typed rig heading.
struct NoseReadAt {
  static constexpr std::string_view kName = "NoseReadAt";
  static constexpr auto kFields = fields("standing");
  Standing standing;
};

// Throws away what the heading sensor's deviation was learned from.
struct ForgetStretches {
  static constexpr std::string_view kName = "ForgetStretches";
};

// Undoes ForgetStretches.
struct StretchesBack {
  static constexpr std::string_view kName = "StretchesBack";
  static constexpr auto kFields = fields("stretches");
  std::vector<DrivenStretch> stretches;
};

struct ForgetNose {
  static constexpr std::string_view kName = "ForgetNose";
};

}  // namespace mastwise::act

namespace mastwise {

using HereActions =
    ActionList<act::UseReceiver, act::UseMapPlace, act::ChooseSurroundings, act::ChooseLeaves,
               act::ChooseNoise, act::ChooseTowers, act::ChooseGear, act::NoseFromCourse,
               act::NoseFromSensor, act::NoseFromSun, act::MarkTail, act::NoseFromPoints,
               act::NoseReadAt, act::ForgetStretches, act::StretchesBack, act::ForgetNose>;

}  // namespace mastwise
