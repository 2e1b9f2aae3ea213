#pragma once

#include <array>
#include <span>

// The Spanish of the texts that the screens pass to say(), in parts by what they are for. Each
// English text is in one part only, with the same blanks.
namespace mastwise::words {

struct Translation {
  const char* english;
  const char* spanish;
};

std::span<const Translation> spanish_of_frame();    // settings, keypad, forms, Undo, the frame
std::span<const Translation> spanish_of_here();     // Here, the first start, parking
std::span<const Translation> spanish_of_aim();      // Aim, its sheets, roof, safety, Peak
std::span<const Translation> spanish_of_compass();  // the needle, the deviation card
std::span<const Translation> spanish_of_plan();     // Stations, Plan, Path, Map
std::span<const Translation> spanish_of_notes();    // Logbook, Ahead, Data
std::span<const Translation> spanish_of_data();  // what changed, missing ground, fetching, routes
std::span<const Translation> spanish_of_guides();
std::span<const Translation> spanish_of_terms();  // the glossary and core's names of things

inline std::array<std::span<const Translation>, 9> spanish_screens() {
  return {spanish_of_frame(),   spanish_of_here(),   spanish_of_aim(),
          spanish_of_compass(), spanish_of_plan(),   spanish_of_notes(),
          spanish_of_data(),    spanish_of_guides(), spanish_of_terms()};
}

}  // namespace mastwise::words
