#pragma once

#include "app/model/action.hpp"

#include <array>
#include <variant>

namespace mastwise {

// What actions are called in recordings; in the order of the variant.
inline constexpr std::array kActionNames{
    "Tick",           "ReceiverBytes",      "LinkChanged",       "Show",
    "SetStop",        "UseReceiver",        "NextNotation",      "SwitchNight",
    "SwitchUnits",    "SwitchHand",         "SwitchPractice",    "TurnDial",
    "OpenSheet",      "ChooseSurroundings", "ChooseGear",        "OpenKeypad",
    "OpenField",      "UseMapPlace",        "KeepHandle",        "ForgetHandle",
    "KeypadType",     "KeypadErase",        "KeypadEraseAll",    "KeypadPage",
    "KeypadNorth",    "KeypadAccept",       "KeypadClose",       "NoseFromCourse",
    "NoseFromSensor", "NoseFromSun",        "MarkTail",          "NoseFromPoints",
    "NextCarrier",    "ForgetNose",         "ClearSearch",       "SelectStation",
    "PinStation",     "ChoosePlan",         "NextPlanFloor",     "SwitchChannelEntry",
    "ScanStep",       "TickStation",        "ChoosePointing",    "NextChanceFloor",
    "SwitchGrouping", "StationsFound",      "SwitchMap",         "MoveMap",
    "TouchMap",       "NextMapUp",          "CentreMap",         "SwitchArea",
    "NextAreaRadius", "MapDrawn",           "AreaScanned",       "Ask",
    "ConfirmAsked",   "RefuseAsked",        "GoToRoof",          "LeaveRoof",
    "SwitchTone",     "BeginSweep",         "TurnSweep",         "SetMeter",
    "ReadMeter",      "NextScale",          "DropReading",       "MarkEdge",
    "KeepSweep",      "ForgetCorrection",   "DropPlace",         "DropAllPlaces",
    "SwitchAlong",    "RouteSurveyed",      "LogOutcome",        "NextWeather",
    "LogWritten",     "AntennaIsDown",      "Trouble",           "TakePlace",
    "PlacesFound",    "AskLogbookFiles",    "NextLogbookFolder", "LogbookFilesDone",
    "SavePaper",      "PaperSaved",         "TakeBack"};
static_assert(kActionNames.size() == std::variant_size_v<Action>, "every action has its name here");

}  // namespace mastwise
