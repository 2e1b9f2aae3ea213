#pragma once

#include "app/shared/names.hpp"

#include <cstddef>

// Where the person is in the app. An enum's names are those in settings and recordings.
namespace mastwise {

// The places that the rail leads to, in the order of their release.
enum class Place { Here, Stations, Aim, Peak, Logbook, Ahead, Map };
inline constexpr std::size_t kPlaceCount = 7;
template <>
inline constexpr std::array kStoredNames<Place> = names({"here", "stations", "aim", "peak",
                                                         "logbook", "ahead", "map"});

// The sheets that a person opens over the places.
enum class Sheet {
  None,
  Gear,
  Surroundings,
  Path,
  Plan,
  Scan,
  Ways,
  Nose,
  Paper,
  Handle,
  Checks,
  LogbookFiles,
  Carries,
  Import,
  Noise,
  Television,
  Parking,
  Antennas,
  Settings,
  Start,
  Stops,
  Position,
  Meter,
  Needle,
  Sensor,
  NoiseHunt,
  Towers,
  Tablet
};
template <>
inline constexpr std::array kStoredNames<Sheet> = names(
    {"none",     "gear",       "surroundings", "path",     "plan",          "scan",    "ways",
     "nose",     "paper",      "handle",       "checks",   "logbook_files", "carries", "import",
     "noise",    "television", "parking",      "antennas", "settings",      "start",   "stops",
     "position", "meter",      "needle",       "sensor",   "noise_hunt",    "towers",  "tablet"});

// The drawn guides: a page for each place, for the sheets that need one, and for the roof.
enum class Guide { None, Here, Stations, Map, Aim, Plan, Path, Peak, Logbook, Ahead, Data, Roof };
template <>
inline constexpr std::array kStoredNames<Guide> = names({"none", "here", "stations", "map", "aim",
                                                         "plan", "path", "peak", "logbook", "ahead",
                                                         "data", "roof"});

// What is typed.
enum class KeypadPurpose { Position, Nose, Search, Field, Appliance };
template <>
inline constexpr std::array kStoredNames<KeypadPurpose> = names({"position", "nose", "search",
                                                                 "field", "appliance"});

// The prompt that is open.
enum class Asking {
  Nothing,
  Raise,
  Roof,
  Weather,
  Drive,
  AfterAlarm,
  UndoRaise,
  MergeLogbook,
  StillUp,
  Moving
};
template <>
inline constexpr std::array kStoredNames<Asking> = names({"nothing", "raise", "roof", "weather",
                                                          "drive", "after_alarm", "undo_raise",
                                                          "merge_logbook", "still_up", "moving"});

}  // namespace mastwise
