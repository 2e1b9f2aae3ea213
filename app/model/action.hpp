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
#include "app/safety/actions.hpp"
#include "app/shared/action.hpp"
#include "core/logbook/record.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Everything that can happen to the model. Devices, fingers, the clock and the worker make these;
// nothing else changes the model, so that a session is the list of its actions.
namespace mastwise::act {

// The clocks moved on. `utc` is the machine's own and may be wrong.
struct Tick {
  static constexpr std::string_view kName = "Tick";
  Monotonic now;
  UtcTime utc;
};

// Bytes from the position receiver or heading sensor, as they came.
struct ReceiverBytes {
  static constexpr std::string_view kName = "ReceiverBytes";
  Monotonic now;
  std::string bytes;
};

// The line to the receiver: what it is called and whether it is there.
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
  Stop stop;  // a whole stop at once: from the command line or the logbook
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
// Acts under the right or the left thumb.
struct SwitchHand {
  static constexpr std::string_view kName = "SwitchHand";
};
// Into or out of the practice area.
struct SwitchPractice {
  static constexpr std::string_view kName = "SwitchPractice";
};
// Next choice of what is up on the dial.
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
// What the paper map gave is where the rig stands.
struct UseMapPlace {
  static constexpr std::string_view kName = "UseMapPlace";
  bool by_net;  // between the lines of its net, else by direction and millimeters
};
// As the form has it.
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

// The straight course driven last gives the nose.
struct NoseFromCourse {
  static constexpr std::string_view kName = "NoseFromCourse";
  bool backed_in;
};
struct NoseFromSensor {
  static constexpr std::string_view kName = "NoseFromSensor";
};
struct NoseFromSun {
  static constexpr std::string_view kName = "NoseFromSun";
  SunFrom side;  // of the rig on which the sun stands
};
// The receiver lies at the tail end of the flank.
struct MarkTail {
  static constexpr std::string_view kName = "MarkTail";
};
// And now at its nose end.
struct NoseFromPoints {
  static constexpr std::string_view kName = "NoseFromPoints";
};
// What carries the antenna.
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
// Pinned stations are in every plan; again: no longer.
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
// Whether the receiver lets channels be entered.
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
// By what the antenna is brought onto a heading.
struct ChoosePointing {
  static constexpr std::string_view kName = "ChoosePointing";
  PointingMethod method;
};
// The middle of a place that was searched for: what the keypad is to be told.
struct TakePlace {
  static constexpr std::string_view kName = "TakePlace";
  places::Place place;
};
struct PlacesFound {
  static constexpr std::string_view kName = "PlacesFound";
  PlacesAnswer answer;
};

// List only what is likelier.
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

// The map of the stations, and where to stand.
// To the list, to the map.
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
// The picture fails at the heading that is set up.
struct MarkEdge {
  static constexpr std::string_view kName = "MarkEdge";
  bool right;  // of where it holds
};
struct KeepSweep {
  static constexpr std::string_view kName = "KeepSweep";
};
struct ForgetCorrection {
  static constexpr std::string_view kName = "ForgetCorrection";
};

struct DropPlace {
  static constexpr std::string_view kName = "DropPlace";
  std::size_t index;  // of the places where one might stop
};
struct DropAllPlaces {
  static constexpr std::string_view kName = "DropAllPlaces";
};
// What holds on the way there.
struct SwitchAlong {
  static constexpr std::string_view kName = "SwitchAlong";
};
struct RouteSurveyed {
  static constexpr std::string_view kName = "RouteSurveyed";
  RouteSheet sheet;
};

// What a station did at this stop.
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
  std::string path;  // of the file to be taken in
};
struct AskMerge {
  static constexpr std::string_view kName = "AskMerge";
  std::string path;  // of the logbook to be merged into this one
};
// Into which it is given out.
struct NextLogbookFolder {
  static constexpr std::string_view kName = "NextLogbookFolder";
};
struct LogbookFilesDone {
  static constexpr std::string_view kName = "LogbookFilesDone";
  LogbookFilesAnswer answer;
};

// All that was to be written is on the disk.
struct LogWritten {
  static constexpr std::string_view kName = "LogWritten";
};

// The card for paper, into a file.
struct SavePaper {
  static constexpr std::string_view kName = "SavePaper";
};
struct PaperSaved {
  static constexpr std::string_view kName = "PaperSaved";
  std::string file;  // empty: it could not be; the trouble follows
};
// Taking in tables of stations and programs.
struct OpenIntakeFolder {
  static constexpr std::string_view kName = "OpenIntakeFolder";
  std::string path;  // empty: back to the catalog and where to begin to look
};
struct PickTable {
  static constexpr std::string_view kName = "PickTable";
  std::string path;
};
struct ChooseColumnOf {
  static constexpr std::string_view kName = "ChooseColumnOf";
  std::string part;  // of how the table is read; empty: choose none
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
// It was seen on the station; again: it was not.
struct TickNetwork {
  static constexpr std::string_view kName = "TickNetwork";
  TickedNetwork ticked;
};
// Pinned networks are wanted at every stop; again: no longer.
struct PinNetwork {
  static constexpr std::string_view kName = "PinNetwork";
  std::string network;
};

struct Trouble {
  static constexpr std::string_view kName = "Trouble";
  std::string what;  // something could not be kept or read; shown until the next touch
};

// Undo the last touch that changed something.
struct TakeBack {
  static constexpr std::string_view kName = "TakeBack";
};

}  // namespace mastwise::act

namespace mastwise {

using ModelActions = ActionList<
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
    act::SwitchArea, act::NextAreaRadius, act::MapDrawn, act::AreaScanned, act::SwitchTone,
    act::BeginSweep, act::TurnSweep, act::SetMeter, act::ReadMeter, act::NextScale,
    act::DropReading, act::MarkEdge, act::KeepSweep, act::ForgetCorrection, act::DropPlace,
    act::DropAllPlaces, act::SwitchAlong, act::RouteSurveyed, act::LogOutcome, act::NextWeather,
    act::LogWritten, act::Trouble, act::TakePlace, act::PlacesFound, act::AskMerge,
    act::AskLogbookFiles, act::NextLogbookFolder, act::LogbookFilesDone, act::SavePaper,
    act::PaperSaved, act::OpenIntakeFolder, act::PickTable, act::ChooseColumnOf,
    act::CorrectReading, act::TakeIn, act::StopTakingIn, act::IntakeFound, act::PinNetwork,
    act::TickNetwork, act::TakeBack>;

using AllActions = Joined<SafetyActions, ModelActions>;

}  // namespace mastwise
