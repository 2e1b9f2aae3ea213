#pragma once

#include "app/shared/ahead_stop.hpp"
#include "app/shared/shared.hpp"

#include <string>
#include <string_view>

// What all features may do or hear: devices, clock, navigation, the stop, the survey, Undo.
namespace mastwise::act {

// A clock tick. `utc` is the machine's clock and may be wrong.
struct Tick {
  static constexpr std::string_view kName = "Tick";
  static constexpr auto kFields = fields("now", "utc");
  Monotonic now;
  UtcTime utc;
};

// Raw bytes from the position receiver or heading sensor.
struct ReceiverBytes {
  static constexpr std::string_view kName = "ReceiverBytes";
  Monotonic now;
  std::string bytes;
};

// Bytes from the tablet's own sensors, as in core/motion/sensor_lines.hpp.
struct TabletBytes {
  static constexpr std::string_view kName = "TabletBytes";
  Monotonic now;
  std::string bytes;
};

struct TabletLinkChanged {
  static constexpr std::string_view kName = "TabletLinkChanged";
  static constexpr auto kFields = fields("link");
  Link link;
};

// The name and state of the receiver's connection.
struct LinkChanged {
  static constexpr std::string_view kName = "LinkChanged";
  static constexpr auto kFields = fields("link");
  Link link;
};

// The system lets the screen's backlight be set.
struct BacklightFound {
  static constexpr std::string_view kName = "BacklightFound";
};

// Whether there was a voice for the last words.
struct VoiceAnswered {
  static constexpr std::string_view kName = "VoiceAnswered";
  static constexpr auto kFields = fields("heard");
  bool heard;
};

// Mastwise is a browser's page.
struct InBrowser {
  static constexpr std::string_view kName = "InBrowser";
};

struct Show {
  static constexpr std::string_view kName = "Show";
  static constexpr auto kFields = fields("place");
  Place place;
};

// Between the list of stations and their map, before that was a place of its own.
struct SwitchMap {
  static constexpr std::string_view kName = "SwitchMap";
};

// Opens the page that explains a word of the trade; an empty one closes it.
struct Explain {
  static constexpr std::string_view kName = "Explain";
  static constexpr auto kFields = fields("term");
  std::string term;
};

// Opens a drawn guide; None closes it.
struct OpenGuide {
  static constexpr std::string_view kName = "OpenGuide";
  static constexpr auto kFields = fields("guide");
  Guide guide;
};

struct OpenSheet {
  static constexpr std::string_view kName = "OpenSheet";
  static constexpr auto kFields = fields("sheet");
  Sheet sheet;
};

struct OpenKeypad {
  static constexpr std::string_view kName = "OpenKeypad";
  static constexpr auto kFields = fields("purpose");
  KeypadPurpose purpose;
};

struct OpenField {
  static constexpr std::string_view kName = "OpenField";
  static constexpr auto kFields = fields("field");
  Field field;
};

// Opens a safety prompt.
struct Ask {
  static constexpr std::string_view kName = "Ask";
  static constexpr auto kFields = fields("what");
  Asking what;
};

// A prompt of another feature than safety was confirmed.
struct Confirmed {
  static constexpr std::string_view kName = "Confirmed";
  static constexpr auto kFields = fields("what");
  Asking what;
};

// The look for the walk on the roof; asks first.
struct GoToRoof {
  static constexpr std::string_view kName = "GoToRoof";
};
struct LeaveRoof {
  static constexpr std::string_view kName = "LeaveRoof";
};

// The next value of a setting that has few: on or off, one after another.
struct NextSetting {
  static constexpr std::string_view kName = "NextSetting";
  static constexpr auto kFields = fields("setting");
  std::string setting;  // its name in Settings::each
};

// A setting's new value, by its stored name; "on" or "off" for a switch.
struct ChooseSetting {
  static constexpr std::string_view kName = "ChooseSetting";
  static constexpr auto kFields = fields("setting", "value");
  std::string setting, value;
};

struct SetStop {
  static constexpr std::string_view kName = "SetStop";
  static constexpr auto kFields = fields("stop");
  Stop stop;  // a whole stop, from the command line or the logbook
};

// The stop of the last run is this one after all.
struct UseEarlierStop {
  static constexpr std::string_view kName = "UseEarlierStop";
};

// The store could not write this many records; 0: all is on the disk.
struct NotSaved {
  static constexpr std::string_view kName = "NotSaved";
  static constexpr auto kFields = fields("records", "why");
  std::size_t records;
  std::string why;
};

// Into or out of the practice area.
struct SwitchPractice {
  static constexpr std::string_view kName = "SwitchPractice";
};

struct SelectStation {
  static constexpr std::string_view kName = "SelectStation";
  static constexpr auto kFields = fields("key");
  StationKey key;
};

// Turns the antenna to a heading of the turn plan, which brings this station and others.
struct AimTurn {
  static constexpr std::string_view kName = "AimTurn";
  static constexpr auto kFields = fields("key", "bearing");
  StationKey key;
  Bearing<True> bearing;
};

// The next step of the hunt for noise: this appliance of the rig is off now, too.
struct TurnedOff {
  static constexpr std::string_view kName = "TurnedOff";
  static constexpr auto kFields = fields("appliance");
  std::string appliance;
};

// Pins a station into every plan, or unpins it.
struct PinStation {
  static constexpr std::string_view kName = "PinStation";
  static constexpr auto kFields = fields("key");
  StationKey key;
};

// The start folders to choose a route or a list of places from.
struct ShowRoutePlaces {
  static constexpr std::string_view kName = "ShowRoutePlaces";
};

// Possible stops from a file, in place of those ahead.
struct PlacesFromFile {
  static constexpr std::string_view kName = "PlacesFromFile";
  static constexpr auto kFields = fields("stops");
  std::vector<AheadStop> stops;
};

struct StationsFound {
  static constexpr std::string_view kName = "StationsFound";
  static constexpr auto kFields = fields("answer");
  StationsAnswer answer;
};

struct PlacesFound {
  static constexpr std::string_view kName = "PlacesFound";
  static constexpr auto kFields = fields("answer");
  PlacesAnswer answer;
};

// A place was typed for the list of those ahead.
struct PlaceTyped {
  static constexpr std::string_view kName = "PlaceTyped";
  static constexpr auto kFields = fields("position");
  Position position;
};

struct SweepKept {
  static constexpr std::string_view kName = "SweepKept";
  static constexpr auto kFields = fields("sweep");
  KeptSweep sweep;
};

struct Trouble {
  static constexpr std::string_view kName = "Trouble";
  static constexpr auto kFields = fields("what");
  std::string what;  // a failed save or read; shown until the next touch
};

// Undo the last change.
struct TakeBack {
  static constexpr std::string_view kName = "TakeBack";
};

}  // namespace mastwise::act

namespace mastwise {

using SharedActions =
    ActionList<act::Tick, act::ReceiverBytes, act::TabletBytes, act::TabletLinkChanged,
               act::LinkChanged, act::BacklightFound, act::VoiceAnswered, act::InBrowser, act::Show,
               act::SwitchMap, act::OpenSheet, act::Explain, act::OpenGuide, act::OpenKeypad,
               act::OpenField, act::Ask, act::Confirmed, act::GoToRoof, act::LeaveRoof,
               act::NextSetting, act::ChooseSetting, act::SetStop, act::UseEarlierStop,
               act::NotSaved, act::SwitchPractice, act::SelectStation, act::AimTurn, act::TurnedOff,
               act::PinStation, act::StationsFound, act::PlacesFound, act::PlaceTyped,
               act::ShowRoutePlaces, act::PlacesFromFile, act::SweepKept, act::Trouble,
               act::TakeBack>;

}  // namespace mastwise
