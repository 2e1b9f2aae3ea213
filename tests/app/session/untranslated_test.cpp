#include "app/words/phrases.hpp"
#include "app/words/spanish_screens.hpp"
#include "app/words/times.hpp"
#include "tests/app/session/views.hpp"
#include "tests/support/sanitized.hpp"

#include <array>
#include <bit>
#include <cctype>
#include <set>
#include <string>

#include <catch2/catch.hpp>

// Every view is drawn in both languages. A word that the English one shows, that no Spanish text
// has, and that the Spanish one shows all the same, has bypassed the table.
using namespace mastwise;
using test::Stage;

namespace {

using Words = std::set<std::string>;

// Of three letters and more, in lower case; letters beyond ASCII belong to their word.
void add_words(std::string_view text, Words& words) {
  std::string word;
  const auto end = [&] {
    if (word.size() >= 3) words.insert(word);
    word.clear();
  };
  for (const char letter : text) {
    const auto code = static_cast<unsigned char>(letter);
    if (code >= 0x80 || std::isalpha(code) != 0) {
      word += static_cast<char>(std::tolower(code));
    } else {
      end();
    }
  }
  end();
}

Words spanish_words() {
  Words words;
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
Words names(const Stage& stage) {
  Words words;
  add_words(
      "Mastwise English Español GeoNames geonames org Natural Earth ATSC DVB ISDB ITU GPS NMEA UTM "
      "MGRS WGS NAD UTC CSV GPX hPa MHz km mi ABC DEL ITM IEEE practice_stations",
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

std::string shown(const Words& words) {
  std::string text;
  for (const std::string& word : words) text += word + " ";
  return text;
}

}  // namespace

TEST_CASE("no English word is left on a Spanish screen") {
  const Words spanish = spanish_words();
  std::size_t number = 0;
  for (const test::View& view : test::views()) {
    if (test::kSanitized && number++ % 20 != 0) continue;
    Words english, known;
    {
      Stage stage;
      view.reach(stage);
      for (const ui::DrawnText& text : stage.drawn()) add_words(text.text, english);
      known = names(stage);
    }
    Stage stage;
    stage.set(act::ChooseSetting{"language", "es"});
    view.reach(stage);
    for (const ui::DrawnText& text : stage.drawn()) {
      Words left;
      Words here;
      add_words(text.text, here);
      for (const std::string& word : here) {
        if (english.contains(word) && !spanish.contains(word) && !known.contains(word)) {
          left.insert(word);
        }
      }
      INFO(view.name << ": \"" << text.text << "\"");
      CHECK(shown(left) == "");
    }
  }
}
