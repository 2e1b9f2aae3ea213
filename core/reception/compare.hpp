#pragma once

#include "core/reception/prospect.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace mastwise::reception {

// What a traveler wants to watch at any stop. Whole texts match, ignoring case.
struct Wish {
  enum class Kind : std::uint8_t {
    call_sign,
    network,  // of the station or of one of its programs
    program,  // its name or its virtual channel
  };
  Kind kind = Kind::call_sign;
  std::string text = {};
  bool operator==(const Wish&) const = default;
};

// Whether a station brings it.
bool grants(const Station& station, const Wish& wish);

// The best station for a wish at a place.
struct Offer {
  std::size_t prospect = 0;  // its index in the place's prospects
  double chance_percent = 0.0;
  double distance_m = 0.0;
  Bearing<True> bearing;  // from the place to the station
  bool operator==(const Offer&) const = default;
};

// One row of the comparison.
struct PlaceOffers {
  std::size_t place = 0;                          // its index in the given places
  std::vector<std::optional<Offer>> offers = {};  // one for each wish; std::nullopt: no station
                                                  // there that brings it has a known chance
  std::size_t granted = 0;                        // wishes with an offer
  double weakest_percent = 0.0;  // the least chance of the offers; 0 if a wish has none
  double mean_percent = 0.0;     // over all wishes; one without an offer counts as 0
  bool operator==(const PlaceOffers&) const = default;
};

// A comparison of places: `places` contains the survey of each, `wishes` at least one wish. Rows by
// falling weakest chance, then by falling mean chance, then in the given order: first the place
// with the best chance for its worst wish.
std::vector<PlaceOffers> compare_places(std::span<const std::vector<Prospect>> places,
                                        std::span<const Wish> wishes);

}  // namespace mastwise::reception
