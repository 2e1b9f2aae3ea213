#include "app/words/places.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

namespace mastwise::words {

std::string place(const places::PopulatedPlace& place) {
  return place.name + ", " + (place.region.empty() ? place.country_name : place.region);
}

namespace {

// "12 mi NE of Bend, OR" with this as the place.
std::string near_named(const places::NearPlace& near, const std::string& name, bool miles) {
  const double value = near.distance_m / distance_unit_m(miles);
  if (value < 1.0) return fill(phrases().places.near, {{"place", name}});
  // A town is not a point: beyond a few miles, tenths would claim too much.
  constexpr double kTenthsBelow = 9.95;
  const std::string away = value < kTenthsBelow ? distance(near.distance_m, miles)
                                                : whole_distance(near.distance_m, miles);
  return fill(phrases().places.away,
              {{"distance", away}, {"octant", octant(near.bearing)}, {"place", name}});
}

}  // namespace

std::string near_place(const places::NearPlace& near, bool miles) {
  return near_named(near, place(near.place), miles);
}

std::string near_what(const places::NearPlace& near, bool miles) {
  std::string words = near_named(near, {}, miles);
  while (!words.empty() && words.back() == ' ') words.pop_back();
  return sentence(std::move(words));
}

std::string notation(Notation notation) {
  return named(phrases().places.notations, notation);
}

const char* places_source() {
  return say("Place names: GeoNames (geonames.org), CC BY 4.0");
}

const char* map_sources() {
  return say(
      "Map: Natural Earth, US Census Bureau; lakes: GSHHG, LGPL 3. Time zones: OpenStreetMap "
      "contributors, ODbL 1.0");
}

}  // namespace mastwise::words
