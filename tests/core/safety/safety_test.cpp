#include "core/propagation/radio_horizon.hpp"
#include "core/safety/drive_off.hpp"
#include "core/safety/prompts.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::safety;

namespace {

std::string all_words(const Prompt& prompt) {
  std::string words(prompt.title);
  for (const Caution& caution : prompt.cautions) {
    words += "\n" + std::string(caution.text) + "\n" + std::string(caution.source);
  }
  return words + "\n" + std::string(prompt.deference);
}

bool says(const std::string& words, const char* part) {
  return words.find(part) != std::string::npos;
}

}  // namespace

// 29 CFR 1926.1408 table A: 10 ft to 50 kV, 20 ft over 200 to 350 kV; the larger of 10 ft and one
// and a half times the height, and deference: the design.
TEST_CASE("before raising, the published distances are told with their source and who decides") {
  const Prompt& prompt = before_raising();
  const std::string words = all_words(prompt);
  for (const char* part :
       {"10 ft (3 m)", "one and a half times", "20 ft (6 m)", "not known", "29 CFR 1926.1408",
        "Local codes", "owner of the line", "licensed", "cannot tell that a place is safe"}) {
    INFO(part);
    CHECK(says(words, part));
  }
  for (const Caution& caution : prompt.cautions) CHECK_FALSE(caution.source.empty());
  CHECK_FALSE(prompt.accept.empty());
  CHECK_FALSE(prompt.refuse.empty());
  CHECK_FALSE(says(words, "is safe to"));
}

// The design's figures: alarm above 5 km/h, one face above 8 km/h, stopped below 1 km/h.
TEST_CASE("driving off: the alarm and the driving face") {
  CHECK(drive_state(Antenna::Down, std::nullopt, Drive::Parked) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, 8.0, Drive::Parked) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, 8.1, Drive::Parked) == Drive::Underway);
  CHECK(drive_state(Antenna::Down, 7.0, Drive::Underway) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, std::nullopt, Drive::Underway) == Drive::Parked);

  CHECK(drive_state(Antenna::Raised, 5.0, Drive::Parked) == Drive::Parked);
  CHECK(drive_state(Antenna::Raised, 5.1, Drive::Parked) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, 90.0, Drive::Underway) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, 3.0, Drive::Alarm) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, std::nullopt, Drive::Alarm) == Drive::Alarm);
  CHECK(drive_state(Antenna::Raised, 0.9, Drive::Alarm) == Drive::Parked);
  CHECK(drive_state(Antenna::Raised, std::nullopt, Drive::Parked) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, 3.0, Drive::Alarm) == Drive::Parked);
  CHECK(drive_state(Antenna::Down, 20.0, Drive::Alarm) == Drive::Underway);
}

// Published with the rule 4.12 (sqrt h1 + sqrt h2) km: 300 and 4 m 79.6 km, 150 and 4 m 58.7 km,
// 600 and 4 m 109.2 km.
TEST_CASE("the radio horizon over smooth earth") {
  CHECK(radio_horizon_m(300.0, 4.0) == Approx(79'600.0).margin(50.0));
  CHECK(radio_horizon_m(150.0, 4.0) == Approx(58'700.0).margin(50.0));
  CHECK(radio_horizon_m(600.0, 4.0) == Approx(109'200.0).margin(50.0));
  CHECK(radio_horizon_m(4.0, 300.0) == radio_horizon_m(300.0, 4.0));
  CHECK(radio_horizon_m(-20.0, 4.0) == radio_horizon_m(0.0, 4.0));
}
