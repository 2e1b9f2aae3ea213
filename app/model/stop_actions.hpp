#pragma once

#include "app/model/choices.hpp"
#include "app/model/form.hpp"
#include "app/model/places.hpp"
#include "app/model/stop.hpp"
#include "app/shared/action.hpp"
#include "core/places/place_table.hpp"
#include "core/time.hpp"

#include <string>
#include <string_view>

// What sets up the stop: devices, position, the rig's nose, gear, typing, the looks.
namespace mastwise::act {

// A clock tick. `utc` is the machine's clock and may be wrong.
struct Tick {
  static constexpr std::string_view kName = "Tick";
  Monotonic now;
  UtcTime utc;
};

// Raw bytes from the position receiver or heading sensor.
struct ReceiverBytes {
  static constexpr std::string_view kName = "ReceiverBytes";
  Monotonic now;
  std::string bytes;
};

// The name and state of the receiver's connection.
struct LinkChanged {
  static constexpr std::string_view kName = "LinkChanged";
  Link link;
};

struct Show {
  static constexpr std::string_view kName = "Show";
  Place place;
};

struct SetStop {
  static constexpr std::string_view kName = "SetStop";
  Stop stop;  // a whole stop, from the command line or the logbook
};

// Position from the receiver.
struct UseReceiver {
  static constexpr std::string_view kName = "UseReceiver";
};

// Show positions in the next notation.
struct NextNotation {
  static constexpr std::string_view kName = "NextNotation";
};

// Day look or night look.
struct SwitchNight {
  static constexpr std::string_view kName = "SwitchNight";
};

// Miles or kilometers.
struct SwitchUnits {
  static constexpr std::string_view kName = "SwitchUnits";
};

// Buttons under the right or the left thumb.
struct SwitchHand {
  static constexpr std::string_view kName = "SwitchHand";
};

// Into or out of the practice area.
struct SwitchPractice {
  static constexpr std::string_view kName = "SwitchPractice";
};

// The next direction at the top of the dial.
struct TurnDial {
  static constexpr std::string_view kName = "TurnDial";
};

struct OpenSheet {
  static constexpr std::string_view kName = "OpenSheet";
  Sheet sheet;
};

struct ChooseSurroundings {
  static constexpr std::string_view kName = "ChooseSurroundings";
  reception::Surroundings surroundings;
};

struct ChooseGear {
  static constexpr std::string_view kName = "ChooseGear";
  GearChoice gear;
};

struct OpenKeypad {
  static constexpr std::string_view kName = "OpenKeypad";
  KeypadPurpose purpose;
};

struct OpenField {
  static constexpr std::string_view kName = "OpenField";
  Field field;
};

// The position found on the paper map becomes the rig's.
struct UseMapPlace {
  static constexpr std::string_view kName = "UseMapPlace";
  bool by_net;  // from grid lines, else by direction and millimeters
};

// Saves the handle as typed in the form.
struct KeepHandle {
  static constexpr std::string_view kName = "KeepHandle";
};

struct ForgetHandle {
  static constexpr std::string_view kName = "ForgetHandle";
};

struct KeypadType {
  static constexpr std::string_view kName = "KeypadType";
  std::string text;  // what the key writes
};

struct KeypadErase {
  static constexpr std::string_view kName = "KeypadErase";
};

struct KeypadEraseAll {
  static constexpr std::string_view kName = "KeypadEraseAll";
};

// Figures or letters.
struct KeypadPage {
  static constexpr std::string_view kName = "KeypadPage";
};

// The heading typed is magnetic or true.
struct KeypadNorth {
  static constexpr std::string_view kName = "KeypadNorth";
};

struct KeypadAccept {
  static constexpr std::string_view kName = "KeypadAccept";
};

struct KeypadClose {
  static constexpr std::string_view kName = "KeypadClose";
};

// Sets the rig heading from the last straight course.
struct NoseFromCourse {
  static constexpr std::string_view kName = "NoseFromCourse";
  bool backed_in;
};

struct NoseFromSensor {
  static constexpr std::string_view kName = "NoseFromSensor";
};

struct NoseFromSun {
  static constexpr std::string_view kName = "NoseFromSun";
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

// The vehicle that carries the antenna.
struct NextCarrier {
  static constexpr std::string_view kName = "NextCarrier";
};

struct ForgetNose {
  static constexpr std::string_view kName = "ForgetNose";
};

// The way to point the antenna.
struct ChoosePointing {
  static constexpr std::string_view kName = "ChoosePointing";
  PointingMethod method;
};

// Enters the middle of a found place on the keypad.
struct TakePlace {
  static constexpr std::string_view kName = "TakePlace";
  places::Place place;
};

struct PlacesFound {
  static constexpr std::string_view kName = "PlacesFound";
  PlacesAnswer answer;
};

struct SwitchTone {
  static constexpr std::string_view kName = "SwitchTone";
};

struct Trouble {
  static constexpr std::string_view kName = "Trouble";
  std::string what;  // a failed save or read; shown until the next touch
};

// Undo the last change.
struct TakeBack {
  static constexpr std::string_view kName = "TakeBack";
};

}  // namespace mastwise::act

namespace mastwise {

using StopActions = ActionList<
    act::Tick, act::ReceiverBytes, act::LinkChanged, act::Show, act::SetStop, act::UseReceiver,
    act::NextNotation, act::SwitchNight, act::SwitchUnits, act::SwitchHand, act::SwitchPractice,
    act::TurnDial, act::OpenSheet, act::ChooseSurroundings, act::ChooseGear, act::OpenKeypad,
    act::OpenField, act::UseMapPlace, act::KeepHandle, act::ForgetHandle, act::KeypadType,
    act::KeypadErase, act::KeypadEraseAll, act::KeypadPage, act::KeypadNorth, act::KeypadAccept,
    act::KeypadClose, act::NoseFromCourse, act::NoseFromSensor, act::NoseFromSun, act::MarkTail,
    act::NoseFromPoints, act::NextCarrier, act::ForgetNose, act::ChoosePointing, act::TakePlace,
    act::PlacesFound, act::SwitchTone, act::Trouble, act::TakeBack>;

}  // namespace mastwise
