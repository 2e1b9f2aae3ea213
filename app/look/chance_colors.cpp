#include "app/look/chance_colors.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::ui {
namespace {

constexpr std::array<Color, kChanceSegments> kRamp{{{0x00, 0x22, 0x4E},
                                                    {0x43, 0x4E, 0x6C},
                                                    {0x7D, 0x7C, 0x78},
                                                    {0xBC, 0xAF, 0x6F},
                                                    {0xFE, 0xE8, 0x38}}};
// On the night background the dark end would vanish, so it is lifted in the same order.
constexpr std::array<Color, kChanceSegments> kNightRamp{{{0x5A, 0x7A, 0xB4},
                                                         {0x7D, 0x87, 0xA6},
                                                         {0x9F, 0xA0, 0x9C},
                                                         {0xC6, 0xBB, 0x80},
                                                         {0xFE, 0xE8, 0x38}}};

constexpr std::array<Color, kChanceSegments> kRedRamp{{{0x60, 0x00, 0x00},
                                                       {0x88, 0x00, 0x00},
                                                       {0xB0, 0x00, 0x00},
                                                       {0xD8, 0x00, 0x00},
                                                       {0xFF, 0x00, 0x00}}};

}  // namespace

Color chance_color(std::size_t segment, Look look) {
  const auto& ramp = look == Look::Day ? kRamp : look == Look::Night ? kNightRamp : kRedRamp;
  return ramp[segment < kChanceSegments ? segment : kChanceSegments - 1];
}

Color chance_shade(double percent, Look look) {
  const auto& ramp = look == Look::Red ? kRedRamp : kRamp;
  const double at = std::clamp(percent / 100.0, 0.0, 1.0) * (kChanceSegments - 1);
  const auto below = std::min(static_cast<std::size_t>(at), kChanceSegments - 2);
  const auto mixed = [part = at - static_cast<double>(below)](std::uint8_t from, std::uint8_t to) {
    return static_cast<std::uint8_t>(std::lround(from + part * (to - from)));
  };
  const Color &from = ramp[below], &to = ramp[below + 1];
  return {mixed(from.red, to.red), mixed(from.green, to.green), mixed(from.blue, to.blue)};
}

}  // namespace mastwise::ui
