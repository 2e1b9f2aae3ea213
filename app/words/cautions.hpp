#pragma once

#include "core/safety/prompts.hpp"

#include <string>

// Cautions as the screens show them.
namespace mastwise::words {

// A distance to keep, rounded up: "23 ft (7 m)", or "7 m (23 ft)". Alone: "23 ft", "7 m".
std::string at_least(double distance_m, bool miles);
std::string at_least_alone(double distance_m, bool miles);

// The caution's head; `distance_m` fills its blank, if it has one.
std::string caution_head(const safety::Caution& caution, double distance_m, bool miles);

// Text of core's prompts in the language in use.
std::string in_language(std::string_view english);

// The sources of all cautions of a prompt, each once.
std::string sources(const safety::Prompt& prompt);

// "58", "mph"; "93", "km/h".
std::string speed_number(double speed_kmh, bool miles);
std::string speed_unit(bool miles);

}  // namespace mastwise::words
