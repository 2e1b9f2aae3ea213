#include "app/words/language.hpp"

#include "tests/app/session/views.hpp"

#include <catch2/catch.hpp>

// The screens follow the language of the settings at once, with the sentences that the model
// keeps; what is not a screen stays English.
using namespace mastwise;

TEST_CASE("the settings say that the last words had no voice, until some have one") {
  test::Stage stage;
  stage.set(act::OpenSheet{Sheet::Settings});
  CHECK(!stage.shows_within("voice"));
  stage.set(act::VoiceAnswered{false});
  CHECK(stage.shows_within("voice"));
  stage.set(act::VoiceAnswered{true});
  CHECK(!stage.shows_within("voice"));
}

TEST_CASE("a chosen language shows at once, also in what the model had said before") {
  {
    test::Stage stage;
    stage.set(act::PinNetwork{"Nowhere TV"});
    stage.set(act::Show{Place::Stations});
    stage.settle();
    REQUIRE(!stage.model().list.wanted.empty());
    CHECK(stage.model().list.wanted.back() == "Nowhere TV: no station here");
    CHECK(stage.shows("Logbook"));

    stage.set(act::OpenSheet{Sheet::Settings});
    stage.tap("language es");
    stage.tap("close sheet");
    CHECK(stage.shows("Bitácora"));
    CHECK(!stage.shows("Logbook"));
    CHECK(stage.model().list.wanted.back() == "Nowhere TV: aquí no hay emisora");

    stage.set(act::ChooseSetting{"language", "en"});
    CHECK(stage.shows("Logbook"));
    CHECK(stage.model().list.wanted.back() == "Nowhere TV: no station here");
    stage.set(act::ChooseSetting{"language", "es"});
  }
  CHECK(words::language() == Language::English);
}
