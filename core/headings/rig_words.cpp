#include "core/headings/rig_words.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <string_view>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr double kStepDeg = 15.0;
constexpr int kSteps = 24;

constexpr std::array<std::string_view, 12> kHours = {"twelve", "one",  "two", "three",
                                                     "four",   "five", "six", "seven",
                                                     "eight",  "nine", "ten", "eleven"};

// From the nose to the tail in steps of 15 degrees; {} is the side.
constexpr std::array<const char*, kSteps / 2 + 1> kPlaces = {
    "off the nose",
    "just {} of the nose",
    "between the nose and the {} front corner",
    "off the {} front corner",
    "{} side, toward the nose",
    "{} side, a little ahead of square",
    "square off the {} side",
    "{} side, a little behind square",
    "{} side, toward the tail",
    "off the {} rear corner",
    "between the tail and the {} rear corner",
    "just {} of the tail",
    "off the tail"};

}  // namespace

std::string rig_words(RigAngle angle) {
  const int step = static_cast<int>(std::lround(angle.clockwise_deg() / kStepDeg)) % kSteps;
  const std::string_view hour = kHours[static_cast<std::size_t>(step / 2)];
  const std::string clock =
      step % 2 == 0 ? fmt::format("{} o'clock", hour) : fmt::format("half past {}", hour);
  const bool right = step < kSteps / 2;
  const int from_nose = right ? step : kSteps - step;
  const char* place = kPlaces[static_cast<std::size_t>(from_nose)];
  return clock + ", " + fmt::format(fmt::runtime(place), right ? "right" : "left");
}

}  // namespace mastwise
