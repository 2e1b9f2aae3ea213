#include "app/words/on_board.hpp"

#include "app/words/language.hpp"

namespace mastwise::words {

std::string grouped(std::size_t number) {
  std::string digits = std::to_string(number);
  for (std::size_t at = digits.size(); at > 3;) {
    at -= 3;
    digits.insert(at, ",");
  }
  return digits;
}

std::string no_networks_named() {
  return say("These tables name no networks. Import a table of programs: it names them.");
}

}  // namespace mastwise::words
