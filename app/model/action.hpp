#pragma once

#include "app/model/choices.hpp"
#include "app/model/form.hpp"
#include "app/model/intake.hpp"
#include "app/model/logbook_files.hpp"
#include "app/model/map.hpp"
#include "app/model/places.hpp"
#include "app/model/route.hpp"
#include "app/model/stations.hpp"
#include "app/model/stop.hpp"
#include "app/model/sweep.hpp"
#include "app/safety/state.hpp"
#include "app/shared/action.hpp"
#include "core/logbook/record.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// All actions that change the model. Devices, fingers, the clock and the worker make them. Nothing
// else changes the model, so a session is the list of its actions.
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

struct ClearSearch {
  static constexpr std::string_view kName = "ClearSearch";
};
struct SelectStation {
  static constexpr std::string_view kName = "SelectStation";
  StationKey key;
};
// Pins a station into every plan, or unpins it.
struct PinStation {
  static constexpr std::string_view kName = "PinStation";
  StationKey key;
};
struct ChoosePlan {
  static constexpr std::string_view kName = "ChoosePlan";
  PlanFor plan_for;
};
// The least chance that a heading must bring.
struct NextPlanFloor {
  static constexpr std::string_view kName = "NextPlanFloor";
};
// Whether the receiver accepts channels by hand.
struct SwitchChannelEntry {
  static constexpr std::string_view kName = "SwitchChannelEntry";
};
struct ScanStep {
  static constexpr std::string_view kName = "ScanStep";
  std::size_t step;  // of the plan: show its channels
};
// Not tried, found, not found.
struct TickStation {
  static constexpr std::string_view kName = "TickStation";
  StationKey key;
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

// List only stations above the next chance.
struct NextChanceFloor {
  static constexpr std::string_view kName = "NextChanceFloor";
};
// The best source of each network, or all.
struct SwitchGrouping {
  static constexpr std::string_view kName = "SwitchGrouping";
};
struct StationsFound {
  static constexpr std::string_view kName = "StationsFound";
  StationsAnswer answer;
};

// The station map and the best spots.
// Between list and map.
struct SwitchMap {
  static constexpr std::string_view kName = "SwitchMap";
};
struct MoveMap {
  static constexpr std::string_view kName = "MoveMap";
  MapMove move;
};
struct TouchMap {
  static constexpr std::string_view kName = "TouchMap";
  MapOffset at;
};
// North or the rig's nose.
struct NextMapUp {
  static constexpr std::string_view kName = "NextMapUp";
};
// The stop in the middle again.
struct CenterMap {
  static constexpr std::string_view kName = "CenterMap";
};
// The chance around the stop.
struct SwitchArea {
  static constexpr std::string_view kName = "SwitchArea";
};
struct NextAreaRadius {
  static constexpr std::string_view kName = "NextAreaRadius";
};
struct MapDrawn {
  static constexpr std::string_view kName = "MapDrawn";
  MapSheet sheet;
};
struct AreaScanned {
  static constexpr std::string_view kName = "AreaScanned";
  AreaSheet sheet;
};

// A safety prompt and its answer.
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
// For 30 s.
struct QuietAlarm {
  static constexpr std::string_view kName = "QuietAlarm";
};
struct AntennaWritten {
  static constexpr std::string_view kName = "AntennaWritten";
  std::string trouble;  // why writing failed; empty: it is on the disk
};

// Opens the roof screen; asks first.
struct GoToRoof {
  static constexpr std::string_view kName = "GoToRoof";
};
struct LeaveRoof {
  static constexpr std::string_view kName = "LeaveRoof";
};
struct SwitchTone {
  static constexpr std::string_view kName = "SwitchTone";
};

// A sweep: readings of the meter at several headings.
struct BeginSweep {
  static constexpr std::string_view kName = "BeginSweep";
  SweepBy by;
};
struct TurnSweep {
  static constexpr std::string_view kName = "TurnSweep";
  double degrees;  // clockwise, seen from above
};
struct SetMeter {
  static constexpr std::string_view kName = "SetMeter";
  double by;
};
struct ReadMeter {
  static constexpr std::string_view kName = "ReadMeter";
  bool nothing;  // no lock at this heading
};
struct NextScale {
  static constexpr std::string_view kName = "NextScale";
};
struct DropReading {
  static constexpr std::string_view kName = "DropReading";
};
// The picture fails at the current heading.
struct MarkEdge {
  static constexpr std::string_view kName = "MarkEdge";
  bool right;  // of the headings with a picture
};
struct KeepSweep {
  static constexpr std::string_view kName = "KeepSweep";
};
struct ForgetCorrection {
  static constexpr std::string_view kName = "ForgetCorrection";
};

struct DropPlace {
  static constexpr std::string_view kName = "DropPlace";
  std::size_t index;  // of the possible stops
};
struct DropAllPlaces {
  static constexpr std::string_view kName = "DropAllPlaces";
};
// The networks along the route there.
struct SwitchAlong {
  static constexpr std::string_view kName = "SwitchAlong";
};
struct RouteSurveyed {
  static constexpr std::string_view kName = "RouteSurveyed";
  RouteSheet sheet;
};

// The outcome of a station at this stop.
struct LogOutcome {
  static constexpr std::string_view kName = "LogOutcome";
  StationKey key;
  Outcome outcome;
};
struct NextWeather {
  static constexpr std::string_view kName = "NextWeather";
};
// The logbook as files.
struct AskLogbookFiles {
  static constexpr std::string_view kName = "AskLogbookFiles";
  LogbookTask task;
  std::string path;  // of the file to import
};
struct AskMerge {
  static constexpr std::string_view kName = "AskMerge";
  std::string path;  // of the logbook to merge into this one
};
// The next folder to export to.
struct NextLogbookFolder {
  static constexpr std::string_view kName = "NextLogbookFolder";
};
struct LogbookFilesDone {
  static constexpr std::string_view kName = "LogbookFilesDone";
  LogbookFilesAnswer answer;
};

// All pending writes are on the disk.
struct LogWritten {
  static constexpr std::string_view kName = "LogWritten";
};

// Saves the paper card to a file.
struct SavePaper {
  static constexpr std::string_view kName = "SavePaper";
};
struct PaperSaved {
  static constexpr std::string_view kName = "PaperSaved";
  std::string file;  // empty: saving failed, and the trouble follows
};
// Imports of station and program tables.
struct OpenIntakeFolder {
  static constexpr std::string_view kName = "OpenIntakeFolder";
  std::string path;  // empty: back to the catalog and the start folders
};
struct PickTable {
  static constexpr std::string_view kName = "PickTable";
  std::string path;
};
struct ChooseColumnOf {
  static constexpr std::string_view kName = "ChooseColumnOf";
  std::string part;  // of the table's mapping; empty: stop choosing
};
struct CorrectReading {
  static constexpr std::string_view kName = "CorrectReading";
  std::string part;
  std::string value;
};
struct TakeIn {
  static constexpr std::string_view kName = "TakeIn";
};
struct StopTakingIn {
  static constexpr std::string_view kName = "StopTakingIn";
};
struct IntakeFound {
  static constexpr std::string_view kName = "IntakeFound";
  IntakeAnswer answer;
};
// Ticks a network seen on the station, or unticks it.
struct TickNetwork {
  static constexpr std::string_view kName = "TickNetwork";
  TickedNetwork ticked;
};
// Pins a network for every stop, or unpins it.
struct PinNetwork {
  static constexpr std::string_view kName = "PinNetwork";
  std::string network;
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

using AllActions = ActionList<
    act::Tick, act::ReceiverBytes, act::LinkChanged, act::Show, act::SetStop, act::UseReceiver,
    act::NextNotation, act::SwitchNight, act::SwitchUnits, act::SwitchHand, act::SwitchPractice,
    act::TurnDial, act::OpenSheet, act::ChooseSurroundings, act::ChooseGear, act::OpenKeypad,
    act::OpenField, act::UseMapPlace, act::KeepHandle, act::ForgetHandle, act::KeypadType,
    act::KeypadErase, act::KeypadEraseAll, act::KeypadPage, act::KeypadNorth, act::KeypadAccept,
    act::KeypadClose, act::NoseFromCourse, act::NoseFromSensor, act::NoseFromSun, act::MarkTail,
    act::NoseFromPoints, act::NextCarrier, act::ForgetNose, act::ClearSearch, act::SelectStation,
    act::PinStation, act::ChoosePlan, act::NextPlanFloor, act::SwitchChannelEntry, act::ScanStep,
    act::TickStation, act::ChoosePointing, act::NextChanceFloor, act::SwitchGrouping,
    act::StationsFound, act::SwitchMap, act::MoveMap, act::TouchMap, act::NextMapUp, act::CenterMap,
    act::SwitchArea, act::NextAreaRadius, act::MapDrawn, act::AreaScanned, act::Ask,
    act::ConfirmAsked, act::RefuseAsked, act::GoToRoof, act::LeaveRoof, act::SwitchTone,
    act::BeginSweep, act::TurnSweep, act::SetMeter, act::ReadMeter, act::NextScale,
    act::DropReading, act::MarkEdge, act::KeepSweep, act::ForgetCorrection, act::DropPlace,
    act::DropAllPlaces, act::SwitchAlong, act::RouteSurveyed, act::LogOutcome, act::NextWeather,
    act::LogWritten, act::QuietAlarm, act::AntennaWritten, act::Trouble, act::TakePlace,
    act::PlacesFound, act::AskMerge, act::AskLogbookFiles, act::NextLogbookFolder,
    act::LogbookFilesDone, act::SavePaper, act::PaperSaved, act::OpenIntakeFolder, act::PickTable,
    act::ChooseColumnOf, act::CorrectReading, act::TakeIn, act::StopTakingIn, act::IntakeFound,
    act::PinNetwork, act::TickNetwork, act::TakeBack>;

}  // namespace mastwise
