#include "app/words/glossary.hpp"

#include "app/words/language.hpp"
#include "core/text/words.hpp"

#include <array>

namespace mastwise::words {
namespace {

constexpr std::array kTerms{
    Term{"bearing", "The direction from here to a place, in degrees clockwise from a north."},
    Term{"heading", "The direction in which the antenna or the rig's nose points, in degrees."},
    Term{"true",
         "Counted from the north pole of the map. A compass does not show it: see magnetic."},
    Term{
        "magnetic",
        "Counted from where a compass needle points. That is up to 20 degrees beside true north in "
        "the United States, and more in the far north."},
    Term{
        "declination",
        "The angle between true north and the needle's north at a place. It changes with the place "
        "and slowly with the years."},
    Term{"grid",
         "Counted from the upright lines printed on a map, which are a little off true north."},
    Term{"nose", "The front of the rig. Angles from the nose run clockwise, seen from above."},
    Term{"tolerance",
         "How far the antenna may be turned to the left and right of the heading while the chance "
         "stays above your floor."},
    Term{"steady", "A chance of 90 % or more of a picture without breaks."},
    Term{"likely", "A chance of 70 % to 90 %."},
    Term{"even odds", "A chance of 40 % to 70 %."},
    Term{"long shot", "A chance of 10 % to 40 %."},
    Term{"out of reach", "A chance under 10 %."},
    Term{"chance",
         "How likely the picture is to be steady on an ordinary evening, from the ground between, "
         "the "
         "antenna, noise and other stations."},
    Term{"dB",
         "Decibels compare strengths. 3 dB is twice the power, 10 dB ten times. A digital picture "
         "is "
         "steady with a few dB to spare and gone with a few too little."},
    Term{"margin",
         "How many dB the signal is above what the TV needs. Below 0 the picture is gone."},
    Term{"ERP",
         "Effective radiated power: how strongly a station sends toward you, with its antenna "
         "counted in."},
    Term{"RF",
         "The channel on which a station really sends. Enter it when you add a channel by hand."},
    Term{"virtual channel",
         "The number that the TV shows, as 6.1. It need not be the channel on which the station "
         "sends."},
    Term{"network", "Whose programs a station carries."},
    Term{"VHF",
         "RF channels 2 to 13 in North America. They need a wide antenna and suffer from noise."},
    Term{"UHF",
         "RF channels 14 and up. They need a small antenna and suffer from hills and trees."},
    Term{"polarization",
         "Whether the waves lie or stand. An antenna that lies hears a standing signal weakly."},
    Term{"beamwidth", "How wide the antenna hears well, between the points at half power."},
    Term{"ridge", "Ground that stands near or above the line from the tower to the antenna."},
    Term{"Earth's curve", "Over a long way the ground itself bulges into the line to the tower."},
    Term{"next channel", "A station on the channel beside, strong enough to disturb."},
    Term{"same channel",
         "Another station far away on the same channel, which disturbs some evenings."},
    Term{"noise", "Hiss from power lines, cars and appliances, strongest on the low channels."},
    Term{"amplifier",
         "It makes up for the cable's loss. Near strong stations it is overdriven and better off."},
    Term{"sweep",
         "Meter readings at several headings. The peak between them shows where to point."},
    Term{"reflection", "The signal off a hill or a building, weaker and from another side."},
    Term{"UTM", "A map grid in meters, printed on many topographic maps."},
    Term{"MGRS", "The same grid, with letters for its squares."},
    Term{"WGS84", "How GPS counts positions. Old maps count otherwise, up to 500 m off."},
};

// A byte of a letter beyond ASCII counts too.
bool letter(char one) {
  return (one >= 'a' && one <= 'z') || (one >= 'A' && one <= 'Z') || (one & 0x80) != 0;
}

bool has_word(std::string_view text, std::string_view word) {
  for (std::size_t at = 0; at + word.size() <= text.size(); ++at) {
    if (!same_word(text.substr(at, word.size()), word)) continue;
    const bool begins = at == 0 || !letter(text[at - 1]);
    const std::size_t end = at + word.size();
    if (begins && (end == text.size() || !letter(text[end]))) return true;
  }
  return false;
}

}  // namespace

std::span<const Term> glossary() {
  return kTerms;
}

std::string term_in(std::string_view text) {
  const char* found = "";
  std::size_t longest = 0;
  for (const Term& term : kTerms) {
    const std::string_view word = say(term.word);
    if (word.size() <= longest || !has_word(text, word)) continue;
    found = term.word;
    longest = word.size();
  }
  return found;
}

}  // namespace mastwise::words
