#pragma once

#include "core/geo/position.hpp"
#include "core/places/gazetteer.hpp"

#include <optional>
#include <string>
#include <vector>

// Places by name, and names for positions, from the gazetteer.
namespace mastwise {

struct Model;

// What the worker is asked of the gazetteer.
struct PlacesQuestion {
  std::string typed = {};             // the beginning of a name; empty: none is searched for
  std::optional<Position> near = {};  // places near it come first
  std::vector<Position> shown = {};   // positions to be said by a place near them
  bool operator==(const PlacesQuestion&) const = default;
};

struct PositionSaid {
  Position position;
  std::optional<places::NearPlace> near = {};
  bool operator==(const PositionSaid&) const = default;
};

struct PlacesAnswer {
  PlacesQuestion question = {};
  std::vector<places::FoundPlace> found = {};  // best first
  std::vector<PositionSaid> said = {};
  std::string trouble = {};  // why there are none, if something failed
  bool operator==(const PlacesAnswer&) const = default;
};

// Nothing while no position is shown and no name is typed.
std::optional<PlacesQuestion> places_question(const Model& model);
// Whether the answer to the one serves for the other: all positions are some steps away at most.
bool same_places(const PlacesQuestion& asked, const PlacesQuestion& now);

// The place by which a position is said; null while none is known for it, or only for another more
// than some steps away.
const places::NearPlace* near_place_of(const Model& model, const Position& position);

// What was found for the name on the keypad, or while the worker is at it for its beginning or for
// what it was before a letter was taken off; null where there is no such answer.
const std::vector<places::FoundPlace>* places_found(const Model& model);

}  // namespace mastwise
