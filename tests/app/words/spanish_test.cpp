#include "app/words/chances.hpp"
#include "app/words/glossary.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "app/words/spanish_screens.hpp"
#include "app/words/times.hpp"
#include "core/gear/gear.hpp"
#include "core/gear/noise.hpp"
#include "core/headings/heading_error.hpp"
#include "core/reception/chance.hpp"
#include "core/reception/surroundings.hpp"
#include "core/rig/rig_heading.hpp"
#include "tests/support/folders.hpp"
#include "tests/support/source_texts.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cctype>
#include <cstring>
#include <map>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

// Spanish is whole: every phrase, every text that a source passes to say(), every word of the
// glossary. A missing one fails by its English name.
using namespace mastwise;

namespace {

using Names = std::set<std::string>;

// The names in braces.
Names blanks(std::string_view phrase) {
  Names names;
  for (std::size_t at = phrase.find('{'); at != std::string_view::npos;
       at = phrase.find('{', at + 1)) {
    const std::size_t end = phrase.find('}', at);
    names.emplace(phrase.substr(at + 1, end - at - 1));
  }
  return names;
}

// A table has nothing but phrases.
constexpr std::size_t kPhrases = sizeof(words::Phrases) / sizeof(words::Phrase);
std::array<words::Phrase, kPhrases> all_of(const words::Phrases& table) {
  return std::bit_cast<std::array<words::Phrase, kPhrases>>(table);
}

std::map<std::string, std::string> translations() {
  std::map<std::string, std::string> all;
  for (const auto& part : words::spanish_screens()) {
    for (const words::Translation& one : part) all.emplace(one.english, one.spanish);
  }
  return all;
}

struct InSpanish {
  InSpanish() { words::use_language(Language::Spanish); }
  ~InSpanish() { words::use_language(Language::English); }
};

}  // namespace

TEST_CASE("the tables of phrases have every phrase, with the same blanks in both languages") {
  const auto english = all_of(words::kEnglish);
  const auto spanish = all_of(words::kSpanish);
  for (std::size_t i = 0; i < kPhrases; ++i) {
    REQUIRE(english[i] != nullptr);
    INFO(english[i]);
    REQUIRE(spanish[i] != nullptr);
    CHECK((std::strlen(english[i]) == 0) == (std::strlen(spanish[i]) == 0));
    CHECK(blanks(english[i]) == blanks(spanish[i]));
  }
}

TEST_CASE("the Spanish of a screen's text has its blanks, and each text is there once") {
  Names seen;
  for (const auto& part : words::spanish_screens()) {
    for (const words::Translation& one : part) {
      INFO(one.english);
      CHECK(std::strlen(one.spanish) > 0);
      CHECK(blanks(one.english) == blanks(one.spanish));
      CHECK(seen.insert(one.english).second);
    }
  }
}

TEST_CASE("every text that a source passes to say() has its Spanish") {
  const auto spanish = translations();
  const auto said = test::said_texts(test::source_folder() + "/app");
  CHECK(said.size() > 100);  // the scan sees the sources
  for (const test::SourceText& one : said) {
    if (spanish.contains(one.text)) continue;
    FAIL_CHECK(one.file << ":" << one.line << ": no Spanish for \"" << one.text << "\"");
  }
}

// A text that begins like a sentence or has blanks for words. Targets, files and stored names begin
// in lower case.
bool for_the_screen(const std::string& text) {
  std::string letters = text;
  for (std::size_t at = letters.find('{'); at != std::string::npos; at = letters.find('{')) {
    letters.erase(at, letters.find('}', at) - at + 1);
  }
  std::size_t longest = 0, length = 0;
  for (const char letter : letters) {
    length = std::isalpha(static_cast<unsigned char>(letter)) != 0 ? length + 1 : 0;
    longest = std::max(longest, length);
  }
  const bool capital = std::isupper(static_cast<unsigned char>(text.front())) != 0;
  return longest >= 3 && (capital || text.find('{') != std::string::npos);
}

TEST_CASE("a feature writes no text for the screen that has no Spanish") {
  // Names, units, and one target that has a number in it.
  const Names same{"Mastwise", "English",       "Español",          "ITM",
                   "QBPA",     "ABC",           ", HDOP {:.1f}",    "{:.0f} MHz",
                   "place {}", "B612-Bold.otf", "B612-Regular.otf", "Scattered trees"};
  const auto spanish = translations();
  std::size_t seen = 0;
  for (const char* folder :
       {"here", "stations", "map", "path", "aim", "plan", "peak", "logbook", "ahead", "parking",
        "data", "keypad", "safety", "settings", "guide", "session", "shared", "ui"}) {
    for (const test::SourceText& one : test::texts_in(test::source_folder() + "/app/" + folder)) {
      // Headers and JSON have the names of actions; "Scattered trees" is the name of a target.
      if (!one.file.ends_with(".cpp") || one.file.ends_with("json.cpp") || one.text.empty() ||
          !for_the_screen(one.text))
        continue;
      ++seen;
      if (spanish.contains(one.text) || same.contains(one.text)) continue;
      FAIL_CHECK(one.file << ":" << one.line << ": no Spanish for \"" << one.text << "\"");
    }
  }
  CHECK(seen > 400);  // the scan sees the sources
  CHECK(for_the_screen("Only with it: {names}"));
  CHECK(for_the_screen("{count} of {all} others"));
  CHECK(!for_the_screen("see stations"));
  CHECK(!for_the_screen("{count} / {all}"));
}

TEST_CASE("every Spanish text belongs to a text in the sources") {
  Names written;
  for (const char* folder : {"/app", "/core"}) {
    for (const test::SourceText& one : test::texts_in(test::source_folder() + folder)) {
      if (one.file.find("words/spanish_") == std::string::npos) written.insert(one.text);
    }
  }
  for (const auto& [english, spanish] : translations()) {
    if (!written.contains(english)) FAIL_CHECK("no source has \"" << english << "\"");
  }
}

TEST_CASE("the scan joins texts that are broken over lines, and knows say() from other names") {
  const auto texts =
      test::said_in("x.cpp",
                    "#include \"app/words/language.hpp\"\na = say(\"one \"\n  \"two\"); // "
                    "say(\"no\")\n  essay(\"three\");\n"
                    "b = words::say(cond ? \"four\" : \"five \\\"six\\\"\"); say(label);\n");
  REQUIRE(texts.size() == 3);
  CHECK(test::said_in("x.cpp", "say(\"another function\");").empty());
  CHECK(texts[0].text == "one two");
  CHECK(texts[0].line == 2);
  CHECK(texts[1].text == "four");
  CHECK(texts[1].line == 5);
  CHECK(texts[2].text == "five \"six\"");
}

TEST_CASE("the glossary is in Spanish, and a long press finds its words there") {
  const auto spanish = translations();
  for (const words::Term& term : words::glossary()) {
    INFO(term.word);
    CHECK(spanish.contains(term.word));
    CHECK(spanish.contains(term.meaning));
  }
  const InSpanish in_spanish;
  CHECK(words::term_in("14° de declinación este") == "declination");
  CHECK(words::term_in("Rumbo magnético 208") == "magnetic");
  CHECK(words::term_in("Canal vecino, QBPA") == "next channel");
  CHECK(words::term_in("ninguno") == "");  // "UNO" is no word of it
  CHECK(words::term_in("firmes") == "");
}

TEST_CASE("core's names of things are in Spanish") {
  const auto spanish = translations();
  const auto has = [&](std::string_view name) {
    INFO(name);
    CHECK(spanish.contains(std::string(name)));
  };
  for (const double percent : {95.0, 80.0, 50.0, 20.0, 5.0}) {
    has(to_text(reception::chance_word(percent)));
  }
  for (const auto one : {Band::low_vhf, Band::high_vhf, Band::uhf}) has(to_text(one));
  for (int i = 0; !to_text(static_cast<ErrorKind>(i)).empty(); ++i) {
    has(to_text(static_cast<ErrorKind>(i)));
  }
  for (int i = 0; !to_text(static_cast<reception::Surroundings>(i)).empty(); ++i) {
    has(to_text(static_cast<reception::Surroundings>(i)));
  }
  using reception::SideKind;
  for (const SideKind kind : {SideKind::open, SideKind::trees, SideKind::hill, SideKind::rig}) {
    has(to_text(kind));
  }
  for (int i = 0; !to_text(static_cast<gear::NoiseEnvironment>(i)).empty(); ++i) {
    has(to_text(static_cast<gear::NoiseEnvironment>(i)));
  }
  for (int i = 0; !to_text(static_cast<RigHeadingSource>(i)).empty(); ++i) {
    has(to_text(static_cast<RigHeadingSource>(i)));
  }
  for (const gear::Gear& preset : gear::presets()) has(preset.name);
}

TEST_CASE("sentences are of the language in use") {
  using namespace std::chrono;
  const local_days day(year(2026) / 7 / 2);
  const reception::Reason trees{5.0, reception::fact::Leaves{20.0}};
  CHECK(words::language() == Language::English);
  CHECK(words::say("Stations") == std::string("Stations"));
  {
    const InSpanish in_spanish;
    CHECK(words::say("Stations") == std::string("Emisoras"));
    CHECK(words::say("no text of a screen") == std::string("no text of a screen"));
    CHECK(words::date(day) == "2 de julio de 2026");
    CHECK(words::reason(trees, false) == "20 m de hojas frente a la antena: -5 dB");
    CHECK(words::sentence("árboles") == "Árboles");
    const words::InEnglish in_english;
    CHECK(words::date(day) == "2 July 2026");
  }
  CHECK(words::language() == Language::English);
  CHECK(words::date(day) == "2 July 2026");
}
