#include "app/guide/guides.hpp"

#include "app/words/language.hpp"

#include <algorithm>
#include <string_view>

namespace mastwise {
namespace {

constexpr std::array kPages{
    GuidePage{
        Guide::Here,
        "Here",
        {GuideStep{"Let a GPS find you, or touch {a}.", {"Type position"}},
         GuideStep{"Say which way the rig's nose points."},
         GuideStep{"Choose your antenna by its picture."},
         GuideStep{"Wipe the sides where {a}, a {b} or a {c} stands.", {"Trees", "Hill", "Rig"}}}},
    GuidePage{Guide::Stations,
              "Stations",
              {GuideStep{"One heading brings in all the rows beside its dial."},
               GuideStep{"Five bars are {a}. Fewer bars are less sure.", {"steady"}},
               GuideStep{"Touch a row to aim at it, or its nail to pin it."},
               GuideStep{"{a} searches the list. {b} imports more stations.", {"Find", "Data"}}}},
    GuidePage{Guide::Map,
              "Map",
              {GuideStep{"Each ring is a station. The fuller the ring, the better."},
               GuideStep{"The heavy arc is the {a}. Hatched ground is behind a ridge.",
                         {"aiming tolerance"}},
               GuideStep{"Hold a finger on a place to move the stop there or compare it."},
               GuideStep{"{a} looks for better ground near you.", {"Best spot"}}}},
    GuidePage{Guide::Aim,
              "Aim",
              {GuideStep{"Choose what you point by: compass, shadow, rig, landmark or handle."},
               GuideStep{"Turn the antenna to the large number."},
               GuideStep{"Anywhere within the heavy arc is good enough."},
               GuideStep{"Look up for power lines, then touch {a}.", {"Raise"}}}},
    GuidePage{
        Guide::Plan,
        "Plan",
        {GuideStep{"Choose what the plan is for: {a}, {b} or {c}.", {"Pinned", "Networks", "All"}},
         GuideStep{"Each column is a heading, with what it brings in."},
         GuideStep{"Touch the next column to see what turning there would change."},
         GuideStep{"{a} lists what to enter in the TV. {b} needs no power.",
                   {"Channels to scan", "Paper card"}}}},
    GuidePage{Guide::Path,
              "Path",
              {GuideStep{"You are on the left, the tower is on the right. Heights are stretched."},
               GuideStep{"The lens is the {a}. Ground inside it weakens the signal.",
                         {"room the signal needs"}},
               GuideStep{"Each bar below the picture is a loss on the way."},
               GuideStep{"What is left must stay above zero. More is surer."}}},
    GuidePage{
        Guide::Peak,
        "Peak",
        {GuideStep{"Choose {a} or {b}, and what the TV's meter shows.", {"Compass", "Handle"}},
         GuideStep{"Turn, wait 5 seconds, set what the meter shows, touch {a}.", {"Read it"}},
         GuideStep{"The curve is your antenna's. Its top is the best heading."},
         GuideStep{"With {a}, mark where the picture fails on each side.", {"No meter"}}}},
    GuidePage{Guide::Logbook,
              "Logbook",
              {GuideStep{"Touch {a}, {b} or {c} for each station you tried.",
                         {"Steady", "Breaks up", "Nothing"}},
               GuideStep{"Failures teach too: later forecasts follow what you saw."},
               GuideStep{"Park here again, and the headings that worked are listed."},
               GuideStep{"{a} makes copies for a map or another tablet.", {"Export or import"}}}},
    GuidePage{Guide::Ahead,
              "Ahead",
              {GuideStep{"{a} asks for a town or a position on your way.", {"Add place"}},
               GuideStep{"Each column is a place, with what comes in there."},
               GuideStep{"The bars show how far each network holds."},
               GuideStep{"Touch a column, then {a}.", {"Set as next stop"}}}},
    GuidePage{Guide::Data,
              "Data",
              {GuideStep{"Bring station tables and heights on a stick or card."},
               GuideStep{"Touch {a} and choose the file.", {"Import"}},
               GuideStep{"Compare the first rows with stations you know."},
               GuideStep{"Hatched squares have no heights yet: import those next."}}},
    GuidePage{Guide::Roof,
              "Roof",
              {GuideStep{"No compass up here: count the degrees from the rig's nose."},
               GuideStep{"With a heading sensor, the arrow says how far to turn."},
               GuideStep{"Stop when the page says {a}.", {"Hold there"}},
               GuideStep{"{a} beeps faster the closer you are.", {"Tone"}}}}};

}  // namespace

std::span<const GuidePage> guide_pages() {
  return kPages;
}

const GuidePage& guide_page(Guide guide) {
  const auto found = std::find_if(kPages.begin(), kPages.end(),
                                  [&](const GuidePage& page) { return page.guide == guide; });
  return found == kPages.end() ? kPages.front() : *found;
}

Guide guide_of(Place place) {
  switch (place) {
    case Place::Here:
      return Guide::Here;
    case Place::Stations:
      return Guide::Stations;
    case Place::Map:
      return Guide::Map;
    case Place::Aim:
      return Guide::Aim;
    case Place::Peak:
      return Guide::Peak;
    case Place::Logbook:
      return Guide::Logbook;
    case Place::Ahead:
      return Guide::Ahead;
  }
  return Guide::None;
}

std::vector<std::vector<GuidePiece>> guide_words(const GuideStep& step) {
  std::vector<std::vector<GuidePiece>> words(1);
  const auto add = [&](std::string_view text, bool label) {
    for (std::size_t begin = 0; begin <= text.size();) {
      const std::size_t end = std::min(text.find(' ', begin), text.size());
      if (end > begin)
        words.back().push_back({std::string(text.substr(begin, end - begin)), label});
      if (end < text.size()) words.emplace_back();
      begin = end + 1;
    }
  };
  const std::string_view sentence = words::say(step.sentence);
  std::size_t at = 0;
  while (at < sentence.size()) {
    const std::size_t open = std::min(sentence.find('{', at), sentence.size());
    add(sentence.substr(at, open - at), false);
    if (open == sentence.size()) break;
    const auto index = static_cast<std::size_t>(sentence[open + 1] - 'a');
    add(words::say(step.labels.at(index)), true);
    at = sentence.find('}', open) + 1;
  }
  return words;
}

}  // namespace mastwise
