#pragma once

#include "core/geo/geodesic.hpp"
#include "core/geo/position.hpp"
#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::places {

// A town, village or other populated place.
struct Place {
  std::string name;                         // UTF-8
  std::string country;                      // ISO 3166 alpha-2, "US"
  std::string country_name;                 // "United States"
  std::string admin;                        // GeoNames' code of the first-order division
  std::string region;                       // its postal abbreviation; empty if not known
  std::optional<std::uint32_t> population;  // nothing where the source says none
  Position position;                        // of its center, to 1e-4 degree
  bool operator==(const Place&) const = default;
};

// A place that a search found, and the way to it from where the search was made, if that was told.
struct FoundPlace {
  Place place;
  std::optional<PathBetween> way = {};
  bool operator==(const FoundPlace&) const = default;
};

// "12 mi NE of Bend": the place, and where the position lies as seen from it.
struct NearPlace {
  Place place;
  double distance_m;
  Bearing<True> bearing;  // at the place, toward the position; means nothing at distance 0
  bool operator==(const NearPlace&) const = default;
};

struct PlaceTable;

// The populated places of the earth. A copy shares the data, and any number of threads may read it.
class Gazetteer {
 public:
  // Reads the bytes of places.bin (layout: assets/places/README); they need not outlive the call.
  // Errors: other bytes, or fewer or more of them than their header says.
  static Result<Gazetteer> load(std::span<const std::byte> bytes);

  std::size_t size() const;
  // `index` below size().
  Place place(std::size_t index) const;

  // The places whose name begins with what was typed, best first, at most `most`. Letter case,
  // diacritics and punctuation do not count; St, Mt, Ft stand for Saint, Mount, Fort and the other
  // way round. From 4 letters on one letter may be wrong, missing, too many or changed with its
  // neighbor, from 8 on two. A later word of a name is found too, without slack. Behind the name a
  // country or a state (of the USA, Canada or Australia) may follow, as its code, or as its name
  // or the beginning of that: "Bend OR", "Paris, FR", "Paris Texas".
  //
  // The order is that of a sum: log10 of the population, 2.5 for the whole name instead of its
  // beginning, -3 for each wrong letter, -1.5 for a later word, -1 for a part of a town or a place
  // given up, and, where `near` is known, -log10(1 + distance / 30 km): own choice, no source.
  std::vector<FoundPlace> search(std::string_view typed, std::size_t most,
                                 std::optional<Position> near = std::nullopt) const;

  // The place by which a person would say where a position is: the one with the least
  // (distance + 2 km) / cube root of the population, which counts as 100 at least and 200,000 at
  // most. So a city is named from eight times as far as a village of a 500th of its people. Parts
  // of towns and places given up are passed over. Own choice, no source. Nothing where the
  // gazetteer holds no place.
  std::optional<NearPlace> nearest_place(Position position) const;

 private:
  explicit Gazetteer(std::shared_ptr<const PlaceTable> table) : table_(std::move(table)) {}
  std::shared_ptr<const PlaceTable> table_;
};

}  // namespace mastwise::places
