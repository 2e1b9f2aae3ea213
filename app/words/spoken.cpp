#include "app/words/spoken.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <fmt/format.h>

namespace mastwise::words {

std::string voice() {
  return say("en-us");
}

std::string spoken_turn(Turn turn) {
  const char* phrase =
      turn.clockwise_deg() >= 0.0 ? say("Turn right, {degrees}") : say("Turn left, {degrees}");
  return fill(phrase, {{"degrees", amount_of_degrees(turn.clockwise_deg())}});
}

std::string spoken_degrees(int left_deg) {
  return fmt::format("{}", left_deg);
}

std::string spoken_there() {
  return say("There");
}

std::string spoken_alarm() {
  return say("The antenna is up. Stop.");
}

std::string spoken_moving() {
  return say("The rig seems to move. The antenna is up.");
}

}  // namespace mastwise::words
