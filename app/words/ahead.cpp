#include "app/words/ahead.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <cmath>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

constexpr double kKilometer_to_m = 1000.0;

double in_units(double at_km, bool miles) {
  return kKilometer_to_m * at_km / distance_unit_m(miles);
}

}  // namespace

std::string along(double at_km, bool miles) {
  return fmt::format("{} {:.0f}", distance_unit(miles), in_units(at_km, miles));
}

std::string straight_line(double length_km, bool miles) {
  return fill(say("{distance}, straight line"),
              {{"distance", whole_distance(kKilometer_to_m * length_km, miles)}});
}

std::string all_hold(std::size_t networks, double to_km, double length_km, bool miles) {
  const char* const words = to_km >= length_km ? say("All {number} hold the whole way")
                            : to_km <= 0.0     ? say("Not all {number} hold beyond here")
                                               : say("All {number} hold to {place}");
  return fill(words, {{"number", std::to_string(networks)}, {"place", along(to_km, miles)}});
}

std::string stretch(double from_km, double to_km, bool miles) {
  return fmt::format("{}–{:.0f}", along(from_km, miles), in_units(to_km, miles));
}

std::string no_heights(double from_km, double to_km, bool miles) {
  return fill(say("No heights from {from} to {to}"),
              {{"from", along(from_km, miles)}, {"to", along(to_km, miles)}});
}

std::string floor(double percent) {
  return fill(say("{number} % and up"), {{"number", fmt::format("{:.0f}", percent)}});
}

std::string place_title(const places::NearPlace& near, bool miles) {
  if (near.distance_m < distance_unit_m(miles)) return near.place.name;
  return fill(say("{octant} of {place}"),
              {{"octant", octant(near.bearing)}, {"place", near.place.name}});
}

}  // namespace mastwise::words
