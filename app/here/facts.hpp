#pragma once

#include "app/shared/shared.hpp"

#include <string>
#include <vector>

// What Here says of the stop, as words.
namespace mastwise::screens {

// Where the position comes from and how well it is known.
struct PositionFacts {
  std::string title = {};  // "GPS ± 5 ft"
  bool warns = false;
  std::vector<std::string> lines = {};
};
PositionFacts position_facts(const Shared& shared);

// The radius of the ring drawn around the receiver's positions, m: a round figure in the units in
// use that holds nearly all of them.
double scatter_ring_m(const std::vector<nmea::ParkedAverage::Offset>& offsets, bool miles);

// The rig heading and how it is known; `origin` says what is missing if it is unknown.
struct NoseFacts {
  std::string true_words = {}, magnetic_words = {};
  std::string origin = {};
  bool warns = false;
};
NoseFacts nose_facts(const Shared& shared);

// What is around the antenna: the painted sides, else the surroundings as chosen.
std::string around_words(const Shared& shared);

// The noise around the antenna, and what the TV decodes.
std::string noise_words(const Shared& shared);
// "none seen", "radio tower", "radio and cell tower".
std::string towers_words(const Shared& shared);
std::string television_words(const Shared& shared);
gear::DecoderSet decoders_here(const Shared& shared);

// "44° N 71° W": where no town is known.
std::string octants_words(const Position& position);

// What is wrong with clocks or the needle; empty if nothing.
std::vector<std::string> clock_warnings(const Shared& shared);

}  // namespace mastwise::screens
