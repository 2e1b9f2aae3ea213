#include "app/map/draw_bitmaps.hpp"

#include "app/ui/chance_mark.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace mastwise::ui {
namespace {

// Colors of level ground at the sea and in the mountains, of full shade and of lit slopes.
struct Ground {
  Color low, high, shade, light;
};
constexpr Ground kDay{
    {0xE4, 0xE8, 0xDC}, {0xF0, 0xE6, 0xD6}, {0xB4, 0xAC, 0x9C}, {0xFF, 0xFD, 0xF8}};
constexpr Ground kNight{
    {0x12, 0x19, 0x1A}, {0x1C, 0x1A, 0x18}, {0x04, 0x06, 0x08}, {0x34, 0x39, 0x3A}};
constexpr Ground kRed{{0x10, 0, 0}, {0x18, 0, 0}, {0x04, 0, 0}, {0x30, 0, 0}};

const Ground& ground_of(Look look) {
  return look == Look::Day ? kDay : look == Look::Night ? kNight : kRed;
}

Color mixed(Color from, Color to, double part) {
  const auto one = [part](std::uint8_t a, std::uint8_t b) {
    return static_cast<std::uint8_t>(std::lround(a + part * (b - a)));
  };
  return {one(from.red, to.red), one(from.green, to.green), one(from.blue, to.blue)};
}

std::uint32_t packed(Color color, std::uint8_t opacity = 255) {
  return std::uint32_t{color.red} | std::uint32_t{color.green} << 8 |
         std::uint32_t{color.blue} << 16 | std::uint32_t{opacity} << 24;
}

Color shaded(const Ground& ground, std::uint8_t shade, std::uint8_t band) {
  constexpr double kLevel = 1.0 + 254.0 * 0.70710678;  // see map::Relief::shade
  const double height =
      static_cast<double>(band - 1) / static_cast<double>(map::Relief::kBandsFromM.size());
  const Color level = mixed(ground.low, ground.high, std::clamp(height, 0.0, 1.0));
  if (shade >= kLevel) return mixed(level, ground.light, (shade - kLevel) / (255.0 - kLevel));
  return mixed(ground.shade, level, (shade - 1.0) / (kLevel - 1.0));
}

}  // namespace

ReliefExtremes relief_extremes(Look look) {
  const Ground& ground = ground_of(look);
  return {ground.shade, ground.light};
}

Bitmap relief_bitmap(const map::Relief& relief, Look look) {
  const Ground& ground = ground_of(look);
  const std::uint32_t paper = packed(theme(look).paper);
  Bitmap bitmap{.width = relief.grid.columns, .height = relief.grid.rows};
  bitmap.rgba.reserve(relief.shade.size());
  // A table from two bytes to a color, computed once.
  std::array<std::array<std::uint32_t, 256>, map::Relief::kBandsFromM.size() + 2> colors{};
  for (std::size_t band = 1; band < colors.size(); ++band) {
    for (std::size_t shade = 1; shade < 256; ++shade) {
      colors[band][shade] =
          packed(shaded(ground, static_cast<std::uint8_t>(shade), static_cast<std::uint8_t>(band)));
    }
  }
  for (std::size_t cell = 0; cell < relief.shade.size(); ++cell) {
    const bool known =
        relief.shade[cell] != map::Relief::kUnknown && relief.band[cell] != map::Relief::kUnknown;
    bitmap.rgba.push_back(known ? colors[relief.band[cell]][relief.shade[cell]] : paper);
  }
  return bitmap;
}

Bitmap area_bitmap(const AreaSheet& sheet, Look look) {
  const std::uint8_t opacity = look == Look::Day ? 200 : 90;
  Bitmap bitmap{.width = static_cast<int>(sheet.side), .height = static_cast<int>(sheet.side)};
  bitmap.rgba.reserve(sheet.percent.size());
  for (const std::int8_t percent : sheet.percent) {
    bitmap.rgba.push_back(
        percent == AreaSheet::kUnknown ? 0u : packed(chance_shade(percent, look), opacity));
  }
  return bitmap;
}

}  // namespace mastwise::ui
