#include "app/guide/guides.hpp"

#include "app/words/language.hpp"
#include "app/words/spanish_screens.hpp"
#include "tests/app/session/views.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>

#include <catch2/catch.hpp>

// The drawn guides: they name what their place shows, and open and close by one touch.
using namespace mastwise;
using test::press;
using test::Stage;

namespace {

// Views of a guide's place which together show its labels.
const std::map<Guide, std::vector<std::string>>& guide_places() {
  static const std::map<Guide, std::vector<std::string>> all{
      {Guide::Here, {"Here in practice", "Here with nothing known"}},
      {Guide::Stations, {"Stations in practice"}},
      {Guide::Map, {"map"}},
      {Guide::Aim, {"Aim in practice"}},
      {Guide::Plan, {"plan for networks"}},
      {Guide::Path, {"path"}},
      {Guide::Peak, {"Peak before a sweep", "Peak with readings"}},
      {Guide::Logbook, {"Logbook"}},
      {Guide::Ahead, {"Ahead"}},
      {Guide::Data, {"data"}},
      {Guide::Roof, {"roof, good"}}};
  return all;
}

// Drawn texts, and those that a narrow button breaks over lines.
std::set<std::string> shown_by(const Stage& stage) {
  std::set<std::string> shown;
  const auto& drawn = stage.drawn();
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    std::string joined;
    for (std::size_t j = i; j < std::min(i + 3, drawn.size()); ++j) {
      joined += (joined.empty() ? "" : " ") + drawn[j].text;
      shown.insert(joined);
    }
  }
  return shown;
}

const test::View& view_named(const std::string& name) {
  const auto& views = test::views();
  const auto found = std::find_if(views.begin(), views.end(),
                                  [&](const test::View& view) { return view.name == name; });
  INFO(name);
  REQUIRE(found != views.end());
  return *found;
}

std::string spanish(const std::string& english) {
  for (const auto& part : words::spanish_screens()) {
    for (const words::Translation& one : part) {
      if (one.english == english) return one.spanish;
    }
  }
  return english;
}

std::set<char> blanks(std::string_view sentence) {
  std::set<char> found;
  for (std::size_t at = sentence.find('{'); at != std::string_view::npos;
       at = sentence.find('{', at + 1)) {
    found.insert(sentence[at + 1]);
  }
  return found;
}

}  // namespace

TEST_CASE("labels that a guide names are on its place, in both languages") {
  for (const std::string language : {"en", "es"}) {
    for (const GuidePage& page : guide_pages()) {
      std::set<std::string> shown;
      for (const std::string& name : guide_places().at(page.guide)) {
        Stage stage;
        stage.set(act::ChooseSetting{"language", language});
        view_named(name).reach(stage);
        shown.merge(shown_by(stage));
      }
      for (const GuideStep& step : page.steps) {
        for (const char* label : step.labels) {
          if (label == nullptr) continue;
          const std::string words = language == "es" ? spanish(label) : label;
          INFO(page.title << " in " << language << ": " << words);
          CHECK(shown.contains(words));
        }
      }
    }
  }
}

TEST_CASE("a guide's sentence has a blank for each label, and four take half a minute") {
  for (const GuidePage& page : guide_pages()) {
    std::size_t words = 0;
    for (const GuideStep& step : page.steps) {
      INFO(step.sentence);
      std::set<char> labels;
      for (std::size_t i = 0; i < step.labels.size(); ++i) {
        if (step.labels[i] != nullptr) labels.insert(static_cast<char>('a' + i));
      }
      CHECK(blanks(step.sentence) == labels);
      const auto broken = guide_words(step);
      CHECK(broken.size() <= 16);
      for (const auto& word : broken) CHECK(!word.empty());
      words += broken.size();
    }
    // 120 words a minute leave time for the pictures: silent readers do about 240 (M. Brysbaert,
    // "How many words do we read per minute?", 2019, from memory).
    INFO(page.title << ": " << words);
    CHECK(words <= 60);
  }
}

TEST_CASE("labels are set apart from the words and the marks around them") {
  const GuideStep step{"Touch {a}, then {b}.", {"Set as stop", "Aim"}};
  const auto words = guide_words(step);
  REQUIRE(words.size() == 6);
  CHECK(words[0] == std::vector<GuidePiece>{{"Touch", false}});
  CHECK(words[1] == std::vector<GuidePiece>{{"Set", true}});
  CHECK(words[3] == std::vector<GuidePiece>{{"stop", true}, {",", false}});
  CHECK(words[5] == std::vector<GuidePiece>{{"Aim", true}, {".", false}});
}

TEST_CASE("a touch on the present place opens its guide, and Done closes it") {
  Stage stage;
  for (const std::string place : {"Stations", "Map", "Aim", "Peak", "Logbook", "Ahead", "Here"}) {
    stage.tap("place " + place);
    CHECK(stage.model().guide == Guide::None);
    CHECK(stage.shows("?"));
    stage.tap("place " + place);
    INFO(place);
    CHECK(stage.model().guide == guide_of(stage.model().place));
    CHECK(stage.targets().all().size() == 1);  // nothing below can be touched
    stage.tap("close guide");
    CHECK(stage.model().guide == Guide::None);
  }
}

TEST_CASE("sheets and the roof open their guides by the mark in their head") {
  Stage stage;
  const auto opens = [&](const std::string& target, Guide guide) {
    stage.tap(target);
    CHECK(stage.model().guide == guide);
    stage.tap("close guide");
  };
  press(stage, act::OpenSheet{Sheet::Plan});
  opens("guide plan", Guide::Plan);
  press(stage, act::OpenSheet{Sheet::Path});
  opens("guide path", Guide::Path);
  press(stage, act::OpenSheet{Sheet::Import});
  opens("guide data", Guide::Data);
  press(stage, act::OpenSheet{Sheet::None});
  press(stage, act::Show{Place::Aim});
  press(stage, act::GoToRoof{});
  press(stage, act::ConfirmAsked{});
  REQUIRE(stage.model().safety.roof);
  opens("guide roof", Guide::Roof);
  CHECK(stage.model().safety.roof);
}

// The legibility tests check the same in English.
TEST_CASE("no text of a guide covers another in Spanish, on any screen") {
  for (const test::Screen& screen :
       {test::kHeadUnit, test::kTablet, test::kLargeTablet, test::kUpright}) {
    Stage stage(screen);
    stage.set(act::ChooseSetting{"language", "es"});
    for (const GuidePage& page : guide_pages()) {
      press(stage, act::OpenGuide{page.guide});
      const auto& drawn = stage.drawn();
      for (std::size_t i = 0; i < drawn.size(); ++i) {
        for (std::size_t j = i + 1; j < drawn.size(); ++j) {
          // Without the room above capitals and below the baseline.
          const touch::Rect a = drawn[i].rect.inset(4.0f), b = drawn[j].rect.inset(4.0f);
          INFO(page.title << " on " << screen.name << ": \"" << drawn[i].text << "\" and \""
                          << drawn[j].text << "\"");
          CHECK_FALSE(a.overlaps(b));
        }
      }
    }
  }
}
