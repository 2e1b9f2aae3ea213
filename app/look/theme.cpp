#include "app/look/theme.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::ui {
namespace {

constexpr Theme kDayTheme{
    .paper = {0xF4, 0xEF, 0xE4},
    .panel = {0xFB, 0xF8, 0xF1},
    .ink = {0x12, 0x17, 0x1B},
    .second_ink = {0x4A, 0x4F, 0x52},
    .rule = {0xB9, 0xB2, 0xA2},
    .accent = {0x00, 0x4E, 0x57},
    .on_accent = {0xFF, 0xFF, 0xFF},
    .lobe = {0xCF, 0xE0, 0xDC},
    .warning = {0x8A, 0x1F, 0x00},
    .on_warning = {0xFF, 0xFF, 0xFF},
};

constexpr Theme kNightTheme{
    .paper = {0x0A, 0x0D, 0x0F},
    .panel = {0x12, 0x17, 0x1A},
    .ink = {0xE9, 0xDC, 0xC0},
    .second_ink = {0xB3, 0xA8, 0x8F},
    .rule = {0x3A, 0x3F, 0x41},
    .accent = {0x8F, 0xD3, 0xC8},
    .on_accent = {0x0A, 0x0D, 0x0F},
    .lobe = {0x16, 0x31, 0x2F},
    .warning = {0xFF, 0x9A, 0x73},
    .on_warning = {0x0A, 0x0D, 0x0F},
};

// Nothing but the red of the screen, whose light lies above 600 nm, in strengths of its own.
constexpr Theme kRedTheme{
    .paper = {0x00, 0x00, 0x00},
    .panel = {0x0E, 0x00, 0x00},
    .ink = {0xFF, 0x00, 0x00},
    .second_ink = {0xF0, 0x00, 0x00},
    .rule = {0x58, 0x00, 0x00},
    .accent = {0xFF, 0x00, 0x00},
    .on_accent = {0x00, 0x00, 0x00},
    .lobe = {0x34, 0x00, 0x00},
    .warning = {0xFF, 0x00, 0x00},
    .on_warning = {0x00, 0x00, 0x00},
};

double linear(std::uint8_t channel) {
  const double share = channel / 255.0;
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double relative_luminance(Color color) {
  return 0.2126 * linear(color.red) + 0.7152 * linear(color.green) + 0.0722 * linear(color.blue);
}

}  // namespace

const Theme& theme(Look look) {
  return look == Look::Day ? kDayTheme : look == Look::Night ? kNightTheme : kRedTheme;
}

double contrast_ratio(Color a, Color b) {
  const auto [darker, lighter] = std::minmax({relative_luminance(a), relative_luminance(b)});
  return (lighter + 0.05) / (darker + 0.05);
}

std::vector<ColorPair> color_pairs(Look look) {
  const Theme& t = theme(look);
  const double text = look == Look::Red ? 4.5 : 7.0;
  constexpr double kMark = 3.0;
  return {
      {"ink on paper", t.ink, t.paper, text},
      {"ink on panel", t.ink, t.panel, text},
      {"ink on lobe", t.ink, t.lobe, text},
      {"second ink on paper", t.second_ink, t.paper, text},
      {"second ink on panel", t.second_ink, t.panel, text},
      {"paper on ink", t.paper, t.ink, text},
      {"panel on ink", t.panel, t.ink, text},
      {"accent on paper", t.accent, t.paper, text},
      {"accent on panel", t.accent, t.panel, text},
      {"text on accent", t.on_accent, t.accent, text},
      {"warning on paper", t.warning, t.paper, text},
      {"warning on panel", t.warning, t.panel, text},
      {"text on warning", t.on_warning, t.warning, text},
      {"warning on its text", t.warning, t.on_warning, text},
      {"accent mark on lobe", t.accent, t.lobe, kMark},
      {"second ink mark on lobe", t.second_ink, t.lobe, kMark},
      {"warning mark on lobe", t.warning, t.lobe, kMark},
  };
}

}  // namespace mastwise::ui
