#include "app/words/suspicions.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

namespace mastwise::words {
namespace {

const char* why(Suspicion::Kind kind) {
  switch (kind) {
    case Suspicion::Kind::unreadable:
      return "Most rows have no possible position.";
    case Suspicion::Kind::no_land:
      return "Most of these stations are far from any town, or at sea.";
    case Suspicion::Kind::other_country:
      break;
  }
  return "Most of these stations are in another country than their call signs.";
}

}  // namespace

std::string coordinate_reading(CoordinateReading reading) {
  switch (reading) {
    case CoordinateReading::latitude_turned:
      return say("Latitude with the other sign");
    case CoordinateReading::longitude_turned:
      return say("Longitude with the other sign");
    case CoordinateReading::both_turned:
      return say("Both with the other sign");
    case CoordinateReading::swapped:
      return say("Latitude and longitude swapped");
    case CoordinateReading::swapped_longitude_turned:
      return say("Swapped, and longitude with the other sign");
    case CoordinateReading::as_mapped:
      break;
  }
  return say("As read");
}

std::string suspicion(const Suspicion& suspicion) {
  std::string words = say(why(suspicion.kind));
  if (!suspicion.other) return words + " " + say("Check the columns.");
  return words + " " +
         fill(say("Another reading puts them near towns: {reading}."),
              {{"reading", coordinate_reading(*suspicion.other)}});
}

}  // namespace mastwise::words
