#include "app/ui/fonts.hpp"

#include "platform/files.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <imgui.h>
#include <imgui_freetype.h>

namespace mastwise::ui {
namespace {

struct FaceSize {
  bool bold;
  float units;
  const ImWchar* glyphs;
};

// Latin with its accents, the Greek of the formulas, dashes, quotes, primes, arrows, minus.
constexpr ImWchar kText[] = {0x20,   0x7e,   0xa0,   0xff,   0x160,  0x161,  0x3c3,
                             0x3c3,  0x2010, 0x2026, 0x2032, 0x2033, 0x2190, 0x2193,
                             0x2212, 0x2212, 0x2264, 0x2265, 0};
// Large text has only Mastwise's words, not names: English and Spanish.
constexpr ImWchar kPlain[] = {0x20, 0x7e, 0xa1, 0xa1, 0xb0, 0xb0,   0xbf,   0xbf, 0xc1,
                              0xc1, 0xc9, 0xc9, 0xcd, 0xcd, 0xd1,   0xd1,   0xd3, 0xd3,
                              0xda, 0xda, 0xe1, 0xe1, 0xe9, 0xe9,   0xed,   0xed, 0xf1,
                              0xf1, 0xf3, 0xf3, 0xfa, 0xfa, 0x2013, 0x2013, 0};
constexpr ImWchar kFigures[] = {'0', '9', 0xb0, 0xb0, 0x2013, 0x2013, 0};

constexpr std::array<FaceSize, kFaceCount> kSizes{{
    {false, 19.0f, kText},
    {true, 19.0f, kText},
    {false, 25.0f, kText},
    {true, 25.0f, kText},
    {true, 42.0f, kText},
    {true, 240.0f, kFigures},
    {true, 28.0f, kText},
    {true, 34.0f, kText},
    {true, 52.0f, kPlain},
    {true, 66.0f, kPlain},
    {true, 122.0f, kPlain},
}};

// The largest em in pixels at which letters are drawn; larger ones are scaled up from there. The
// builder copies each letter through a buffer of 256 KB, 4 bytes a pixel, and writes beyond it
// without a check (imgui_freetype.cpp of Dear ImGui 1.86).
float most_em_px(const ImWchar* glyphs) {
  return glyphs == kFigures ? 360.0f : 250.0f;
}

}  // namespace

float em_units(Face face, float letters) {
  // Text grows whole up to the first size, and from the second on not at all.
  constexpr float kWhole = 28.0f, kNot = 52.0f;
  const float usual = kSizes[static_cast<std::size_t>(face)].units;
  const float share = std::clamp((kNot - usual) / (kNot - kWhole), 0.0f, 1.0f);
  return usual * (1.0f + (letters - 1.0f) * share);
}

Fonts::Fonts(float letters) : letters_(letters), atlas_(std::make_unique<ImFontAtlas>()) {}
Fonts::~Fonts() = default;

Result<std::shared_ptr<const Fonts>> Fonts::load(const std::string& folder, float px_per_unit,
                                                 float letters) {
  for (const char* file : {"B612-Regular.otf", "B612-Bold.otf"}) {
    const std::string path = folder + "/" + file;
    if (!platform::exists(path)) {
      return Error{.what = "the font file is missing",
                   .where = path,
                   .remedy = "build again, or point MASTWISE_ASSETS at Mastwise's assets"};
    }
  }
  const std::shared_ptr<Fonts> fonts(new Fonts(letters));
  ImFontAtlas& atlas = fonts->atlas();
  // The fonts are OpenType with cubic outlines, which only the FreeType builder reads.
  atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
  for (std::size_t i = 0; i < kFaceCount; ++i) {
    const FaceSize& size = kSizes[i];
    // The builder takes the height of a line, which is 1.215 of the em in this typeface.
    constexpr float kLine = 1.215f;
    const std::string path = folder + (size.bold ? "/B612-Bold.otf" : "/B612-Regular.otf");
    const float wanted_px =
        std::round(kLine * em_units(static_cast<Face>(i), letters) * px_per_unit);
    const float drawn_px = std::min(wanted_px, std::round(kLine * most_em_px(size.glyphs)));
    fonts->faces_[i] = atlas.AddFontFromFileTTF(path.c_str(), drawn_px, nullptr, size.glyphs);
    fonts->faces_[i]->Scale = wanted_px / drawn_px;
  }
  if (!atlas.Build()) return Error{.what = "the fonts cannot be read", .where = folder};
  return std::shared_ptr<const Fonts>(fonts);
}

LoadFonts fonts_of(std::string folder) {
  return [folder = std::move(folder)](float px_per_unit, float letters) {
    return Fonts::load(folder, px_per_unit, letters);
  };
}

}  // namespace mastwise::ui
