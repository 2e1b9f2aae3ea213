#include "core/safety/prompts.hpp"

#include <array>

// Every caution that Mastwise shows is in this file.
namespace mastwise::safety {
namespace {

constexpr std::string_view kPractice = "common practice, no source";

using Mark = CautionMark;

constexpr std::array kBeforeRaising{
    Caution{Mark::LookUp, "Stay {distance} from any line",
            "10 ft (3 m), or one and a half times the raised height if more.",
            "29 CFR 1926.1408 table A, lines to 50 kV; US CPSC 2002"},
    Caution{Mark::LiveLine, "Treat every line as live",
            "Voltage not known: 20 ft (6 m) at least. Never take a line for insulated.",
            "29 CFR 1926.1408 table A, lines to 350 kV; US CPSC 2002"},
    Caution{Mark::WindAndBolt, "No strong wind, no storm coming",
            "Thunder heard: wait 30 minutes after the last.",
            "Thunder: US National Weather Service. Wind: common practice"},
    Caution{Mark::Falling, "It falls? Let go, stay away",
            "If it touches a line, stay clear and call the utility.", "US CPSC 2002"},
};

constexpr std::array kBeforeRoof{
    Caution{Mark::Rain, "Inside is better",
            "Never go up when it is wet, icy, windy or dark, or alone.", kPractice},
    Caution{Mark::Ladder, "Set the ladder one in four",
            "Its foot out by a quarter of its length, its rails 3 ft (0.9 m) above the landing.",
            "29 CFR 1926.1053(b)(1), (b)(5)(i)"},
    Caution{Mark::ThreePoints, "Three points of contact",
            "Hands free: tablet and tools come up by bag or line.",
            "29 CFR 1926.1053(b)(21), (b)(22). Three points, bag or line: common practice"},
    Caution{Mark::LookUp, "Look up for overhead lines",
            "You, the ladder and the antenna all count for the distance.",
            "US CPSC 2002 for the antenna; you and the ladder: common practice"},
};

constexpr std::array kWeather{
    Caution{Mark::Wind, "Keep to the wind limit",
            "That of the antenna's maker or owner. Not known: lower it at a strong breeze.",
            "Common practice, no source. Strong breeze: Beaufort 6, from 22 knots"},
    Caution{Mark::Storm, "Lower it before any storm", "While it can still be done calmly.",
            kPractice},
    Caution{Mark::Thunder, "Thunder heard: stop",
            "Get off the roof and inside. Leave the antenna as it is.",
            "US National Weather Service; leaving the antenna: common practice"},
    Caution{Mark::HalfHour, "Then wait 30 minutes",
            "30 minutes after the last thunder, before you go out again.",
            "US National Weather Service"},
};

constexpr std::array kBeforeDriving{
    Caution{Mark::Down, "Go out and look",
            "The antenna is down, turned to its stow direction, and latched.", kPractice},
    Caution{Mark::Tag, "Up? Hang a tag on the wheel",
            "Take it off only when you have seen the antenna down.", kPractice},
    Caution{Mark::Stowed, "Ladder, cable and jacks in", "Nothing is left on the roof.", kPractice},
    Caution{Mark::Passenger, "The screen is for the stop", "Under way let a passenger use it.",
            "NHTSA visual-manual guidelines, 78 FR 24817"},
};

constexpr std::array kWhileMoving{
    Caution{Mark::Passenger, "Driving? Stop first",
            "Stop off the road. Under way let a passenger use the screen.",
            "NHTSA visual-manual guidelines, 78 FR 24817"},
    kBeforeDriving[0],
    kBeforeDriving[1],
};

constexpr Prompt kRaising{
    .title = "Look up before you raise the antenna",
    .picture = PromptPicture::KeepOut,
    .cautions = kBeforeRaising,
    .deference =
        "Local codes, the owner of the line and licensed electricians decide. This app "
        "cannot tell that a place is safe.",
    .accept = "I looked up. Raise",
    .refuse = "Leave it down",
};

constexpr Prompt kRoof{
    .title = "Before you go on the roof",
    .picture = PromptPicture::Ladder,
    .cautions = kBeforeRoof,
    .deference =
        "The rig's maker says whether its roof bears you; local rules decide. This app cannot "
        "tell that a roof is safe.",
    .accept = "I looked and I am not alone. Go up",
    .refuse = "Stay down",
};

constexpr Prompt kWindAndThunder{
    .title = "Wind and thunder",
    .picture = PromptPicture::Storm,
    .cautions = kWeather,
    .deference =
        "The weather service and the antenna's maker decide. This app does not see the sky "
        "and cannot tell that it is safe.",
    .accept = "I looked at the sky. Go on",
    .refuse = "Stop here",
};

constexpr Prompt kDriving{
    .title = "Before you drive off",
    .picture = PromptPicture::Lowered,
    .cautions = kBeforeDriving,
    .deference =
        "The driver decides. This app knows only what it was told and cannot tell that the "
        "rig is safe.",
    .accept = "I saw it down",
    .refuse = "Not yet",
};

// The alarm has ended because the rig stands; nobody has looked at the antenna yet.
constexpr Prompt kAfterAlarm{
    .title = "Is it down and latched?",
    .picture = PromptPicture::Lowered,
    .cautions = kBeforeDriving,
    .deference = kDriving.deference,
    .accept = "I saw it down and latched",
    .refuse = "It is still up",
};

constexpr Prompt kStillUp{
    .title = "The antenna was left up",
    .picture = PromptPicture::Lowered,
    .cautions = kBeforeDriving,
    .deference = kDriving.deference,
    .accept = "I saw it down and latched",
    .refuse = "It is still up",
};

constexpr Prompt kMoving{
    .title = "The rig seems to move",
    .picture = PromptPicture::Lowered,
    .cautions = kWhileMoving,
    .deference = kDriving.deference,
    .accept = "I saw it down and latched",
    .refuse = "It stands, antenna up",
};

constexpr std::array kBeforeMerging{
    Caution{Mark::Files, "Both logbooks are joined",
            "Where both have the same record, the later entry is kept.",
            "To be able to go back, cancel and export a backup first."},
};

constexpr Prompt kMerging{
    .title = "Import this logbook?",
    .cautions = kBeforeMerging,
    .deference = "This cannot be undone.",
    .accept = "Import",
    .refuse = "Cancel",
};

constexpr Prompt kUndoRaising{
    .title = "Is the antenna still down?",
    .picture = PromptPicture::Lowered,
    .cautions = kBeforeDriving,
    .deference = kDriving.deference,
    .accept = "I saw it down. Undo",
    .refuse = "Leave it marked up",
};

}  // namespace

const Prompt& before_raising() {
  return kRaising;
}

const Prompt& before_roof() {
  return kRoof;
}

const Prompt& weather() {
  return kWindAndThunder;
}

const Prompt& before_driving() {
  return kDriving;
}

const Prompt& after_alarm() {
  return kAfterAlarm;
}

const Prompt& still_up() {
  return kStillUp;
}

const Prompt& seems_to_move() {
  return kMoving;
}

const Prompt& undo_raising() {
  return kUndoRaising;
}

const Prompt& before_merging() {
  return kMerging;
}

}  // namespace mastwise::safety
