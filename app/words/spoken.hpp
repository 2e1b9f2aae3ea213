#pragma once

#include "core/angles/bearing.hpp"

#include <string>

// What the voice says. The synthesizer reads figures as words of its language.
namespace mastwise::words {

// The synthesizer's voice for the language in use.
std::string voice();

std::string spoken_turn(Turn turn);        // "Turn right, 12 degrees"
std::string spoken_degrees(int left_deg);  // "5"
std::string spoken_there();                // "There"
std::string spoken_alarm();                // "The antenna is up. Stop."
std::string spoken_moving();               // "The rig seems to move. The antenna is up."

}  // namespace mastwise::words
