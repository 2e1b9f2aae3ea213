#include "core/safety/drive_off.hpp"
#include "core/safety/keep_out.hpp"
#include "core/safety/prompts.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::safety;

namespace {

std::string all_words(const Prompt& prompt) {
  std::string words(prompt.title);
  for (const Caution& caution : prompt.cautions) {
    words += "\n" + std::string(caution.head) + "\n" + std::string(caution.text) + "\n" +
             std::string(caution.source);
  }
  return words + "\n" + std::string(prompt.deference);
}

bool says(const std::string& words, const char* part) {
  return words.find(part) != std::string::npos;
}

}  // namespace

// 29 CFR 1926.1408 table A: 10 ft to 50 kV, 20 ft over 200 to 350 kV; the larger of 10 ft and one
// and a half times the height, and deference: the design.
TEST_CASE(
    "before raising, the prompt shows the published distances, their source and who decides") {
  const Prompt& prompt = before_raising();
  const std::string words = all_words(prompt);
  for (const char* part :
       {"10 ft (3 m)", "one and a half times", "20 ft (6 m)", "not known", "insulated",
        "30 minutes after the last", "Let go", "call the utility", "29 CFR 1926.1408",
        "Local codes", "owner of the line", "licensed", "cannot tell that a place is safe"}) {
    INFO(part);
    CHECK(says(words, part));
  }
  for (const Caution& caution : prompt.cautions) CHECK_FALSE(caution.source.empty());
  CHECK_FALSE(prompt.accept.empty());
  CHECK_FALSE(prompt.refuse.empty());
  CHECK_FALSE(says(words, "is safe to"));
}

// A screen of 800 x 480 has room for four cautions of about 110 characters.
TEST_CASE("every prompt is short, has its sources and certifies nothing", "[ways]") {
  for (const Prompt* prompt : {&before_raising(), &before_roof(), &weather(), &before_driving(),
                               &after_alarm(), &undo_raising(), &still_up(), &seems_to_move()}) {
    INFO(prompt->title);
    CHECK(prompt->cautions.size() <= 4);
    for (const Caution& caution : prompt->cautions) {
      INFO(caution.text);
      CHECK(caution.head.size() <= 34);
      CHECK_FALSE(caution.head.empty());
      CHECK_FALSE(says(std::string(caution.head), "safe"));
      CHECK(caution.text.size() <= 110);
      CHECK_FALSE(caution.text.empty());
      CHECK_FALSE(caution.source.empty());
      CHECK(caution.source.size() <= 90);  // one line of small print
      CHECK_FALSE(says(std::string(caution.text), "safe"));
    }
    CHECK_FALSE(prompt->accept.empty());
    CHECK_FALSE(prompt->refuse.empty());
    CHECK_FALSE(says(std::string(prompt->accept), "safe"));
    const std::string deference(prompt->deference);
    CHECK(says(deference, "decide"));
    const auto safe = deference.find("safe");
    CHECK(deference.find("cannot tell that") < safe);
    CHECK(deference.find("safe", safe + 1) == std::string::npos);
  }
}

// By hand: 1.5 times 4.5 m are 6.75 m, more than 20 ft (6.096 m); 1.5 times 3.5 m are 5.25 m, less;
// 1.5 times 1.5 m are less than 10 ft (3.048 m).
TEST_CASE("the distance to keep is the larger of 10 ft and 1.5 times the height, unknown 20 ft") {
  CHECK(keep_out(4.5).least_m == Approx(6.75));
  CHECK(keep_out(4.5).unknown_m == Approx(6.75));
  CHECK(keep_out(3.5).least_m == Approx(5.25));
  CHECK(keep_out(3.5).unknown_m == Approx(6.096));
  CHECK(keep_out(1.5).least_m == Approx(3.048));
  CHECK(keep_out(1.5).unknown_m == Approx(6.096));
  CHECK(keep_out(10.0).unknown_m == Approx(15.0));
}

// 29 CFR 1926.1053(b)(1): side rails at least 3 feet above the upper landing; (b)(5)(i): the foot
// out by about one quarter of the working length.
TEST_CASE("before the roof, the prompt shows the ladder's figures and what never to do", "[ways]") {
  const std::string words = all_words(before_roof());
  for (const char* part : {"3 ft (0.9 m) above the landing", "1926.1053(b)(1)", "a quarter of its",
                           "wet, icy, windy or dark, or alone", "Three points of contact",
                           "Hands free", "overhead lines"}) {
    INFO(part);
    CHECK(says(words, part));
  }
}

// Thunder: US National Weather Service, 30 minutes after the last. Beaufort 6, strong breeze: 22 to
// 27 knots [WMO Beaufort scale].
TEST_CASE("the wind, thunder and driving prompts show their figures", "[ways]") {
  const std::string sky = all_words(weather());
  for (const char* part :
       {"maker or owner", "strong breeze", "before any storm", "Thunder heard: stop",
        "30 minutes after the last", "US National Weather Service"}) {
    INFO(part);
    CHECK(says(sky, part));
  }
  const std::string drive = all_words(before_driving());
  for (const char* part :
       {"antenna is down", "stow direction", "tag on the wheel", "78 FR 24817"}) {
    INFO(part);
    CHECK(says(drive, part));
  }
}

// The design's figures: alarm above 5 km/h, driving screen above 8 km/h; the rig is stopped below
// 1 km/h and a receiver is silent too long after 120 s (our choices).
TEST_CASE("driving off raises the alarm and the driving screen") {
  const auto moving = [](double speed_kmh) { return Motion{.speed_kmh = speed_kmh}; };
  const auto silent = [](double seconds) { return Motion{.silent_s = seconds}; };
  CHECK(drive_state(Antenna::Down, silent(0.0), Drive::Parked) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, moving(8.0), Drive::Parked) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, moving(8.1), Drive::Parked) == Drive::Underway);
  CHECK(drive_state(Antenna::Down, moving(7.0), Drive::Underway) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, silent(1.0), Drive::Underway) == Drive::Parked);

  CHECK(drive_state(Antenna::Raised, moving(5.0), Drive::Parked) == Drive::Parked);
  CHECK(drive_state(Antenna::Raised, moving(5.1), Drive::Parked) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, moving(90.0), Drive::Underway) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, moving(3.0), Drive::Alarm) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, moving(1.0), Drive::Alarm) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, moving(0.9), Drive::Alarm) == Drive::Parked);
  CHECK(drive_state(Antenna::Raised, silent(119.0), Drive::Alarm) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, silent(120.0), Drive::Alarm) == Drive::Parked);
  CHECK(drive_state(Antenna::Raised, silent(1.0), Drive::Parked) == Drive::Parked);

  CHECK(moving(1.0).moves());
  CHECK_FALSE(moving(0.9).moves());
  CHECK_FALSE(silent(0.0).moves());
}
