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

// A town, village or other populated place, as GeoNames calls it.
struct PopulatedPlace {
  std::string name;                         // UTF-8
  std::string country;                      // ISO 3166 alpha-2, "US"
  std::string country_name;                 // "United States"
  std::string admin;                        // GeoNames' code of the first-order division
  std::string region;                       // postal abbreviation; empty if unknown
  std::optional<std::uint32_t> population;  // std::nullopt if the source has none
  Position position;                        // of its center, to 1e-4 degree
  bool operator==(const PopulatedPlace&) const = default;
};

// A place found by a search, and the path to it from the search position, if that was given.
struct FoundPlace {
  PopulatedPlace place;
  std::optional<PathBetween> way = {};
  bool operator==(const FoundPlace&) const = default;
};

// "12 mi NE of Bend": the place, and the position's direction as seen from it.
struct NearPlace {
  PopulatedPlace place;
  double distance_m;
  Bearing<True> bearing;  // at the place, toward the position; meaningless at distance 0
  bool operator==(const NearPlace&) const = default;
};

struct PlaceTable;

// The populated places of the earth. A copy shares the data; any number of threads may read it.
class Gazetteer {
 public:
  // Reads the bytes of places.bin (layout: assets/places/README); they need not outlive the call.
  // Errors: another file type, or fewer or more bytes than its header says.
  static Result<Gazetteer> load(std::span<const std::byte> bytes);

  std::size_t size() const;
  // `index` below size().
  PopulatedPlace place(std::size_t index) const;

  // The places whose name begins with the typed text, best first, at most `most`. Letter case,
  // diacritics and punctuation do not count; St, Mt, Ft match Saint, Mount, Fort and the reverse.
  // From 4 letters on one letter may be wrong, missing, extra or swapped with its neighbor, from 8
  // on two. A later word of a name also matches, but only exactly. After the name a country or a
  // state (of the USA, Canada or Australia) may follow, as its code, its name or the beginning of
  // its name: "Bend OR", "Paris, FR", "Paris Texas".
  //
  // The rank is a sum: log10 of the population, 2.5 for the whole name instead of its beginning, -3
  // for each wrong letter, -1.5 for a later word, -1 for a part of a town or an abandoned place,
  // and, if `near` is given, -log10(1 + distance / 30 km): a free choice, no source.
  std::vector<FoundPlace> search(std::string_view typed, std::size_t most,
                                 std::optional<Position> near = std::nullopt) const;

  // The place that a person would name to describe a position: the one with the least (distance + 2
  // km) / cube root of the population, clamped to 100 to 200,000. So a city is named from eight
  // times as far as a village with a 500th of its people. Parts of towns and abandoned places are
  // skipped. A free choice, no source. std::nullopt if the gazetteer is empty.
  std::optional<NearPlace> nearest_place(Position position) const;

  // The places within `radius_m` (0 to 20,100,000 m) of the center, to 1 %, the most populous
  // first, at most `most`. Parts of towns and abandoned places are skipped.
  std::vector<PopulatedPlace> largest_within(Position center, double radius_m,
                                             std::size_t most) const;

  // The name of a place's first-order division, "Oregon"; empty if unknown.
  std::string region_name(const PopulatedPlace& place) const;

 private:
  explicit Gazetteer(std::shared_ptr<const PlaceTable> table) : table_(std::move(table)) {}
  std::shared_ptr<const PlaceTable> table_;
};

}  // namespace mastwise::places
