#pragma once

#include "core/geo/position.hpp"
#include "core/places/gazetteer.hpp"

#include <optional>
#include <string>
#include <vector>

// Places by name, and near towns for positions, from the gazetteer.
namespace mastwise {

// The question to the gazetteer's worker.
struct PlacesQuestion {
  std::string typed = {};             // the start of a name; empty: no search
  std::optional<Position> near = {};  // places near it come first
  std::vector<Position> shown = {};   // positions to name by a near place
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
  std::string trouble = {};  // why the search failed
  bool operator==(const PlacesAnswer&) const = default;
};

// Whether the answer to one question serves the other: all positions are at most some steps away.
bool same_places(const PlacesQuestion& asked, const PlacesQuestion& now);

}  // namespace mastwise
