#pragma once

#include "app/model/choices.hpp"
#include "app/model/stations.hpp"
#include "app/model/stop.hpp"
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
struct SwitchUnits {};     // miles or kilometres
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
struct ForgetNose {};

struct ClearSearch {};
struct SelectStation {
  StationKey key;
};
struct NextChanceFloor {};  // list only what is likelier
struct SwitchGrouping {};   // the best source of each network, or all
struct StationsFound {
  StationsAnswer answer;
};

struct AskRaise {};
struct ConfirmRaise {};
struct RefuseRaise {};
struct AntennaIsDown {};

struct Trouble {
  std::string what;  // something could not be kept or read; shown until the next touch
};

struct TakeBack {};  // undo the last touch that changed something

}  // namespace mastwise::act

namespace mastwise {

using Action =
    std::variant<act::Tick, act::ReceiverBytes, act::LinkChanged, act::Show, act::SetStop,
                 act::UseReceiver, act::NextNotation, act::SwitchNight, act::SwitchUnits,
                 act::SwitchHand, act::SwitchPractice, act::TurnDial, act::OpenSheet,
                 act::ChooseSurroundings, act::ChooseGear, act::OpenKeypad, act::KeypadType,
                 act::KeypadErase, act::KeypadEraseAll, act::KeypadPage, act::KeypadNorth,
                 act::KeypadAccept, act::KeypadClose, act::NoseFromCourse, act::ForgetNose,
                 act::ClearSearch, act::SelectStation, act::NextChanceFloor, act::SwitchGrouping,
                 act::StationsFound, act::AskRaise, act::ConfirmRaise, act::RefuseRaise,
                 act::AntennaIsDown, act::Trouble, act::TakeBack>;

}  // namespace mastwise
