#include "app/ahead/way.hpp"

#include "app/shared/stop.hpp"

#include <algorithm>
#include <optional>

namespace mastwise {
namespace {

std::optional<std::size_t> index_in_file(const AheadState& state, const Position& place) {
  for (std::size_t i = 0; i < state.from_file.size(); ++i) {
    if (same_stop(state.from_file[i].position, place)) return i;
  }
  return std::nullopt;
}

}  // namespace

WayAhead way_ahead(const AheadState& state, const Position& here) {
  WayAhead way{.points = {here}};
  std::optional<std::size_t> last = index_in_file(state, here);
  for (std::size_t i = 0; i < state.places.size(); ++i) {
    const auto index = index_in_file(state, state.places[i]);
    // The first stop of a file begins where the file does; later ones need the stop before.
    const bool onward = index && (last ? *last < *index : i == 0 && *index == 0);
    const std::size_t first = onward ? (last ? *last + 1 : 0) : 0;
    for (std::size_t k = first; onward && k <= *index; ++k) {
      const AheadStop& stop = state.from_file[k];
      way.points.insert(way.points.end(), stop.via.begin(), stop.via.end());
      if (k < *index) way.points.push_back(stop.position);
    }
    way.places.push_back(way.points.size());
    way.points.push_back(state.places[i]);
    last = index;
  }
  return way;
}

std::string name_from_file(const AheadState& state, const Position& place) {
  const auto index = index_in_file(state, place);
  return index ? state.from_file[*index].name : std::string();
}

}  // namespace mastwise
