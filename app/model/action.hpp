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
#include "core/logbook/record.hpp"
#include "core/time.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

// Everything that can happen to the model. Devices, fingers, the clock and the worker make these;
// nothing else changes the model, so that a session is the list of its actions.
namespace mastwise::act {

// The clocks moved on. `utc` is the machine's own and may be wrong.
struct Tick {
  Monotonic now;
  UtcTime utc;
};

// Bytes from the position receiver or heading sensor, as they came.
struct ReceiverBytes {
  Monotonic now;
  std::string bytes;
};

// The line to the receiver: what it is called and whether it is there.
struct LinkChanged {
  Link link;
};

struct Show {
  Place place;
};
struct SetStop {
  Stop stop;  // a whole stop at once: from the command line or the logbook
};
struct UseReceiver {};     // position from the receiver
struct NextNotation {};    // show positions in the next notation
struct SwitchNight {};     // day look or night look
struct SwitchUnits {};     // miles or kilometers
struct SwitchHand {};      // acts under the right or the left thumb
struct SwitchPractice {};  // into or out of the practice area
struct TurnDial {};        // next choice of what is up on the dial

struct OpenSheet {
  Sheet sheet;
};
struct ChooseSurroundings {
  reception::Surroundings surroundings;
};
struct ChooseGear {
  GearChoice gear;
};

struct OpenKeypad {
  KeypadPurpose purpose;
};
struct OpenField {
  Field field;
};
struct UseMapPlace {  // what the paper map gave is where the rig stands
  bool by_net;        // between the lines of its net, else by direction and millimeters
};
struct KeepHandle {};  // as the form has it
struct ForgetHandle {};
struct KeypadType {
  std::string text;  // what the key writes
};
struct KeypadErase {};
struct KeypadEraseAll {};
struct KeypadPage {};   // figures or letters
struct KeypadNorth {};  // the heading typed is magnetic or true
struct KeypadAccept {};
struct KeypadClose {};

// The straight course driven last gives the nose.
struct NoseFromCourse {
  bool backed_in;
};
struct NoseFromSensor {};
struct NoseFromSun {
  SunFrom side;  // of the rig on which the sun stands
};
struct MarkTail {};        // the receiver lies at the tail end of the flank
struct NoseFromPoints {};  // and now at its nose end
struct NextCarrier {};     // what carries the antenna
struct ForgetNose {};

struct ClearSearch {};
struct SelectStation {
  StationKey key;
};
// Pinned stations are in every plan; again: no longer.
struct PinStation {
  StationKey key;
};
struct ChoosePlan {
  PlanFor plan_for;
};
struct NextPlanFloor {};       // the least chance that a heading must bring
struct SwitchChannelEntry {};  // whether the receiver lets channels be entered
struct ScanStep {
  std::size_t step;  // of the plan: show its channels
};
struct TickStation {  // not tried, found, not found
  StationKey key;
};
struct ChoosePointing {  // by what the antenna is brought onto a heading
  PointingMethod method;
};
// The middle of a place that was searched for: what the keypad is to be told.
struct TakePlace {
  places::Place place;
};
struct PlacesFound {
  PlacesAnswer answer;
};

struct NextChanceFloor {};  // list only what is likelier
struct SwitchGrouping {};   // the best source of each network, or all
struct StationsFound {
  StationsAnswer answer;
};

// The map of the stations, and where to stand.
struct SwitchMap {};  // to the list, to the map
struct MoveMap {
  MapMove move;
};
struct TouchMap {
  MapOffset at;
};
struct NextMapUp {};   // north or the rig's nose
struct CenterMap {};   // the stop in the middle again
struct SwitchArea {};  // the chance around the stop
struct NextAreaRadius {};
struct MapDrawn {
  MapSheet sheet;
};
struct AreaScanned {
  AreaSheet sheet;
};

// A safety prompt, and the answer to it.
struct Ask {
  Asking what;
};
struct ConfirmAsked {};
struct RefuseAsked {};
struct AntennaIsDown {};

struct GoToRoof {};  // the look for the walk; asks first
struct LeaveRoof {};
struct SwitchTone {};

// A sweep: readings of the meter at several headings.
struct BeginSweep {
  SweepBy by;
};
struct TurnSweep {
  double degrees;  // clockwise, seen from above
};
struct SetMeter {
  double by;
};
struct ReadMeter {
  bool nothing;  // no lock at this heading
};
struct NextScale {};
struct DropReading {};
struct MarkEdge {  // the picture fails at the heading that is set up
  bool right;      // of where it holds
};
struct KeepSweep {};
struct ForgetCorrection {};

struct DropPlace {
  std::size_t index;  // of the places where one might stop
};
struct DropAllPlaces {};
struct SwitchAlong {};  // what holds on the way there
struct RouteSurveyed {
  RouteSheet sheet;
};

// What a station did at this stop.
struct LogOutcome {
  StationKey key;
  Outcome outcome;
};
struct NextWeather {};
// The logbook as files.
struct AskLogbookFiles {
  LogbookTask task;
  std::string path;  // of the file to be taken in
};
struct NextLogbookFolder {};  // into which it is given out
struct LogbookFilesDone {
  LogbookFilesAnswer answer;
};

struct LogWritten {};  // all that was to be written is on the disk

struct SavePaper {};  // the card for paper, into a file
struct PaperSaved {
  std::string file;  // empty: it could not be; the trouble follows
};
// Taking in tables of stations and programs.
struct OpenIntakeFolder {
  std::string path;  // empty: back to the catalog and where to begin to look
};
struct PickTable {
  std::string path;
};
struct ChooseColumnOf {
  std::string part;  // of how the table is read; empty: choose none
};
struct CorrectReading {
  std::string part;
  std::string value;
};
struct TakeIn {};
struct StopTakingIn {};
struct IntakeFound {
  IntakeAnswer answer;
};
struct TickNetwork {  // it was seen on the station; again: it was not
  TickedNetwork ticked;
};
// Pinned networks are wanted at every stop; again: no longer.
struct PinNetwork {
  std::string network;
};

struct Trouble {
  std::string what;  // something could not be kept or read; shown until the next touch
};

struct TakeBack {};  // undo the last touch that changed something

}  // namespace mastwise::act

namespace mastwise {

using Action = std::variant<
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
    act::LogWritten, act::AntennaIsDown, act::Trouble, act::TakePlace, act::PlacesFound,
    act::AskLogbookFiles, act::NextLogbookFolder, act::LogbookFilesDone, act::SavePaper,
    act::PaperSaved, act::OpenIntakeFolder, act::PickTable, act::ChooseColumnOf,
    act::CorrectReading, act::TakeIn, act::StopTakingIn, act::IntakeFound, act::PinNetwork,
    act::TickNetwork, act::TakeBack>;

}  // namespace mastwise
