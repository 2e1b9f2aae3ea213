#include "platform/synthesizer.hpp"

#include "app/service/speech.hpp"
#include "app/words/spoken.hpp"
#include "core/sound/tone.hpp"
#include "core/sound/wav.hpp"
#include "tests/support/spectrum.hpp"

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

double seconds(const sound::Samples& samples) {
  return static_cast<double>(samples.size()) / sound::kRate_hz;
}

}  // namespace

TEST_CASE("without a synthesizer there is an error that says what to install", "[speech]") {
  const auto none = platform::load_synthesizer("libno-such-synthesizer.so.1");
  REQUIRE_FALSE(none);
  CHECK(none.error().message().find("libespeak-ng1") != std::string::npos);
  // A library that is not a synthesizer.
  CHECK_FALSE(platform::load_synthesizer("libm.so.6"));
}

// People speak 150 to 190 words a minute (common practice, no source): four words take 1 to 2.5 s.
TEST_CASE("the synthesizer speaks the turn", "[speech]") {
  Speech speech;
  const auto turn = speech.of(words::spoken_turn(Turn::clockwise_deg(12.0)));
  REQUIRE(turn);
  CHECK(seconds(*turn) > 1.0);
  CHECK(seconds(*turn) < 2.5);
  const auto five = speech.of(words::spoken_degrees(5));
  REQUIRE(five);
  CHECK(seconds(*five) > 0.2);
  CHECK(seconds(*five) < 0.9);
  const auto alarm = speech.of(words::spoken_alarm());
  REQUIRE(alarm);
  CHECK(seconds(*alarm) < 2.5);
  for (const auto* spoken : {&*turn, &*five, &*alarm}) {
    CHECK(sound::peak_dbfs(*spoken) < -1.9);
    CHECK(sound::rms_dbfs(*spoken) > -19.0);
    CHECK(sound::rms_dbfs(*spoken) < -11.0);
    // A voice has its power below 4 kHz.
    CHECK(test::strongest_hz(*spoken, 60.0, 8'000.0) < 4'000.0);
  }
  // Other words sound otherwise.
  CHECK(*turn != *speech.of(words::spoken_turn(Turn::clockwise_deg(-12.0))));
}

TEST_CASE("an unknown voice is an error, and the next words are spoken", "[speech]") {
  const auto synthesizer = platform::load_synthesizer();
  REQUIRE(synthesizer);
  const auto unknown = (*synthesizer)->speak("There", "no-such-voice");
  REQUIRE_FALSE(unknown);
  CHECK(unknown.error().message().find("no-such-voice") != std::string::npos);
  const auto english = (*synthesizer)->speak("There", "en-us");
  const auto spanish = (*synthesizer)->speak("There", "es");
  REQUIRE(english);
  REQUIRE(spanish);
  CHECK(*english != *spanish);
}
