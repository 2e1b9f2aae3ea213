#include "app/ui/fonts.hpp"

#include "app/service/startup.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <imgui.h>

using namespace mastwise;

// The builder of the letters writes beyond its buffer with a larger one (imgui_freetype.cpp of Dear
// ImGui 1.86: BITMAP_BUFFERS_CHUNK_SIZE, 4 bytes a pixel).
TEST_CASE("no letter is larger than the buffer it is drawn through, and each has its size") {
  constexpr float kBuffer_bytes = 256.0f * 1024.0f, kPixel_bytes = 4.0f;
  // A tablet at the usual size, a large one at the largest, and a screen of 3840 pixels.
  for (const float px_per_unit : {1.0f, 1.9f, 2.34f, 3.7f}) {
    const auto fonts = ui::Fonts::load(service::fonts_folder(), px_per_unit, 1.0f);
    REQUIRE(fonts);
    for (std::size_t i = 0; i < ui::kFaceCount; ++i) {
      const auto face = static_cast<ui::Face>(i);
      const ImFont& font = *(*fonts)->font(face);
      INFO("face " << i << " at " << px_per_unit << " pixels a unit");
      float largest = 0.0f;
      for (const ImFontGlyph& glyph : font.Glyphs) {
        largest = std::max(largest, (glyph.X1 - glyph.X0) * (glyph.Y1 - glyph.Y0));
      }
      CHECK(largest > 0.0f);
      CHECK(largest * kPixel_bytes < kBuffer_bytes);
      // The height of a line is 1.215 of the em in this typeface.
      const float line_px = 1.215f * ui::em_units(face) * px_per_unit;
      CHECK(std::fabs(font.FontSize * font.Scale - line_px) < 0.6f);
    }
  }
}
