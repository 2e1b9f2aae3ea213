#include "app/words/phrases.hpp"
#include "app/words/spanish_screens.hpp"
#include "app/words/times.hpp"
#include "tests/app/session/view_faults.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cctype>

namespace mastwise::test {
namespace {

// Of three letters of ASCII and more, in lower case; other letters belong to their word.
void add_words(std::string_view text, WordSet& words) {
  std::string word;
  int letters = 0;
  const auto end = [&] {
    if (letters >= 3) words.insert(word);
    word.clear();
    letters = 0;
  };
  for (const char letter : text) {
    const auto code = static_cast<unsigned char>(letter);
    const bool plain = std::isalpha(code) != 0;
    if (code >= 0x80 || plain) {
      word += static_cast<char>(std::tolower(code));
      if (plain) ++letters;
    } else {
      end();
    }
  }
  end();
}

WordSet spanish_words() {
  WordSet words;
  for (const auto& part : words::spanish_screens()) {
    for (const words::Translation& one : part) add_words(one.spanish, words);
  }
  constexpr std::size_t kPhrases = sizeof(words::Phrases) / sizeof(words::Phrase);
  for (const words::Phrase phrase :
       std::bit_cast<std::array<words::Phrase, kPhrases>>(words::kSpanish)) {
    add_words(phrase, words);
  }
  return words;
}

// What is the same in every language: the app, sources, standards, units, place names, the names of
// files, and the folders and clock of this system.
WordSet names(const Stage& stage) {
  WordSet words;
  add_words(
      "Mastwise English Español GeoNames geonames org Natural Earth ATSC DVB ISDB ITU GPS NMEA UTM "
      "MGRS WGS NAD UTC CSV GPX hPa MHz km mi ABC DEL ITM IEEE practice_stations PDT PST TLH "
      "Boise Caldwell Lakeview Nampa Baker City Cape Town South Africa Pasco Altamont Burns "
      "Prosser San Fernando del Valle Catamarca QNLA QLSB Pub",
      words);
  const Findings& found = stage.model().findings;
  add_words(words::zone_name(*found.zone.clocks, found.date), words);
  if (!stage.model().stations) return words;
  for (const auto& row : stage.model().stations->rows) {
    const Station& station = row.station;
    for (const std::string& name :
         {station.call_sign, station.city, station.state, station.network, station.name}) {
      add_words(name, words);
    }
  }
  return words;
}

// WordSet that a person or a file gave, and what core says of a fault, which stays English.
bool may_be_english(const std::string& view, const std::string& text) {
  constexpr std::array kViews{"data, a table",
                              "data, which column",
                              "data, taken in",
                              "data, an update taken in",
                              "data, an offer of squares",
                              "data, an offer in a browser",
                              "data, a fetch that failed",
                              "data, the ways in a file",
                              "ways of saying it",
                              "keypad, position, an error",
                              "keypad, position, a town's name",
                              "keypad, a place ahead, a name of no town",
                              "data, a folder that is gone"};
  constexpr std::array kGiven{"mastwise-",
                              "/tmp",
                              "a table with a long na",
                              "card-",
                              "Lakes",
                              "lakes.mwpack",
                              "INVENTED",
                              "WorldCover",
                              "CFR",
                              "CPSC",
                              "NHTSA",
                              "ommon practice",
                              "National Weather",
                              "Copernicus",
                              "a table with",
                              "a table of another",
                              "(LMS)",
                              "(c) DLR",
                              "invented heights",
                              "free for all"};
  const auto begins = [&](const char* one) { return view.starts_with(one); };
  const auto has = [&](const char* one) { return text.find(one) != std::string::npos; };
  return std::any_of(kViews.begin(), kViews.end(), begins) ||
         std::any_of(kGiven.begin(), kGiven.end(), has);
}

std::string shown(const WordSet& words) {
  std::string text;
  for (const std::string& word : words) text += word + " ";
  return text;
}

}  // namespace

WordSet drawn_words(const Stage& stage) {
  WordSet words;
  for (const ui::DrawnText& text : stage.drawn()) add_words(text.text, words);
  return words;
}

std::string untranslated(const Stage& stage, const char* view, const WordSet& english) {
  static const WordSet spanish = spanish_words();
  const WordSet known = names(stage);
  std::string found;
  for (const ui::DrawnText& text : stage.drawn()) {
    if (may_be_english(view, text.text)) continue;
    WordSet left, here;
    add_words(text.text, here);
    for (const std::string& word : here) {
      if (english.contains(word) && !spanish.contains(word) && !known.contains(word)) {
        left.insert(word);
      }
    }
    if (!left.empty()) found += "  \"" + text.text + "\": " + shown(left) + "\n";
  }
  return found;
}

}  // namespace mastwise::test
