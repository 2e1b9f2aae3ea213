#include "core/safety/prompts.hpp"

#include <array>

// Every caution that the program shows stands in this file.
namespace mastwise::safety {
namespace {

constexpr std::array kBeforeRaising{
    Caution{
        "Look up and all round. From any overhead line keep 10 ft (3 m), or one and a half times "
        "the raised height if that is more.",
        "29 CFR 1926.1408 table A, lines to 50 kV; US CPSC 2002"},
    Caution{"Voltage not known: 20 ft (6 m) at least. Never take a line for insulated.",
            "29 CFR 1926.1408 table A, lines to 350 kV; US CPSC 2002"},
    Caution{"Not in strong wind or before a storm. Thunder heard: wait 30 minutes after the last.",
            "Thunder: US National Weather Service. Wind: common practice"},
    Caution{"If it starts to fall, let go and stay away. If it touches a line, stay clear and call "
            "the utility.",
            "US CPSC 2002"},
};

constexpr Prompt kRaising{
    .title = "Before you raise the antenna",
    .cautions = kBeforeRaising,
    .deference =
        "Local codes, the owner of the line and licensed electricians decide. This program "
        "cannot tell that a place is safe.",
    .accept = "I looked up. Raise",
    .refuse = "Leave it down",
};

}  // namespace

const Prompt& before_raising() {
  return kRaising;
}

}  // namespace mastwise::safety
