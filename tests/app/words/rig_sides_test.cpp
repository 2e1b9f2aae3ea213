#include "app/words/headings.hpp"

#include <array>
#include <set>
#include <string>
#include <utility>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

std::string said(double degrees) {
  return words::rig_sides(RigAngle::clockwise_deg(degrees));
}

bool says(const std::string& text, const std::string& word) {
  return text.find(word) != std::string::npos;
}

}  // namespace

TEST_CASE("rig sides have words at every 15 degrees") {
  const std::array<std::string, 24> expected = {
      "twelve o'clock, off the nose",
      "half past twelve, just right of the nose",
      "one o'clock, between the nose and the right front corner",
      "half past one, off the right front corner",
      "two o'clock, right side, toward the nose",
      "half past two, right side, a little ahead of square",
      "three o'clock, square off the right side",
      "half past three, right side, a little behind square",
      "four o'clock, right side, toward the tail",
      "half past four, off the right rear corner",
      "five o'clock, between the tail and the right rear corner",
      "half past five, just right of the tail",
      "six o'clock, off the tail",
      "half past six, just left of the tail",
      "seven o'clock, between the tail and the left rear corner",
      "half past seven, off the left rear corner",
      "eight o'clock, left side, toward the tail",
      "half past eight, left side, a little behind square",
      "nine o'clock, square off the left side",
      "half past nine, left side, a little ahead of square",
      "ten o'clock, left side, toward the nose",
      "half past ten, off the left front corner",
      "eleven o'clock, between the nose and the left front corner",
      "half past eleven, just left of the nose"};
  std::set<std::string> different;
  for (std::size_t step = 0; step < expected.size(); ++step) {
    CHECK(said(15.0 * static_cast<double>(step)) == expected[step]);
    different.insert(expected[step]);
  }
  CHECK(different.size() == expected.size());
}

TEST_CASE("every direction has words with the right side and end") {
  for (int tenth = 0; tenth < 3600; ++tenth) {
    const double degrees = tenth / 10.0;
    const std::string text = said(degrees);
    INFO(degrees << ": " << text);
    CHECK(says(text, ", "));
    if (says(text, "right")) CHECK((degrees > 0.0 && degrees < 180.0));
    if (says(text, "left")) CHECK((degrees > 180.0 && degrees < 360.0));
    if (degrees >= 7.5 && degrees < 172.5) CHECK(says(text, "right"));
    if (degrees >= 187.5 && degrees < 352.5) CHECK(says(text, "left"));
    const bool ahead = degrees < 90.0 || degrees > 270.0;
    if (says(text, "nose") || says(text, "front") || says(text, "ahead")) CHECK(ahead);
    if (says(text, "tail") || says(text, "rear") || says(text, "behind")) CHECK_FALSE(ahead);
  }
}

TEST_CASE("the words change halfway between two steps and wrap at the nose") {
  CHECK(said(7.49) == "twelve o'clock, off the nose");
  CHECK(said(7.5) == "half past twelve, just right of the nose");
  CHECK(said(352.49) == "half past eleven, just left of the nose");
  CHECK(said(352.5) == "twelve o'clock, off the nose");
  CHECK(said(359.999) == "twelve o'clock, off the nose");
}
