#include "tests/support/picture_text.hpp"

#include <cmath>
#include <map>
#include <optional>
#include <tuple>

#include <imgui.h>
#include <imgui_internal.h>

namespace mastwise::test {
namespace {

struct Letter {
  const ImFont* font;
  const ImFontGlyph* glyph;
};
using Corners = std::tuple<float, float, float, float>;  // of a letter in the font's texture

std::map<Corners, Letter> letters() {
  std::map<Corners, Letter> result;
  for (const ImFont* font : ImGui::GetIO().Fonts->Fonts) {
    for (const ImFontGlyph& glyph : font->Glyphs) {
      if (glyph.Visible) result[{glyph.U0, glyph.V0, glyph.U1, glyph.V1}] = {font, &glyph};
    }
  }
  return result;
}

std::string utf8(unsigned character) {
  char bytes[5];
  return ImTextCharToUtf8(bytes, character);
}

ui::Color color_of(ImU32 packed) {
  const auto channel = [&](int shift) { return static_cast<std::uint8_t>(packed >> shift); };
  return {channel(IM_COL32_R_SHIFT), channel(IM_COL32_G_SHIFT), channel(IM_COL32_B_SHIFT)};
}

// A triangle that is opaque, translucent or cut from an image.
struct Triangle {
  ImVec2 corners[3];
  ImVec4 clip;
  ui::Color color;
  bool plain;  // opaque and of one color

  bool covers(ImVec2 point) const {
    return point.x >= clip.x && point.x < clip.z && point.y >= clip.y && point.y < clip.w &&
           ImTriangleContainsPoint(corners[0], corners[1], corners[2], point);
  }
};

class Reader {
 public:
  void read(const ImDrawList& list, const ImDrawCmd& command);
  std::vector<PictureText> take();

 private:
  std::optional<Letter> letter(const ImDrawVert* corner, const ImDrawIdx* index) const;
  void add_triangle(const ImDrawVert& a, const ImDrawVert& b, const ImDrawVert& c,
                    const ImDrawCmd& command);
  void add(const Letter& letter, const ImDrawVert& upper_left, const ImDrawVert& lower_right,
           const ImVec4& clip);

  std::map<Corners, Letter> letters_ = letters();
  std::vector<PictureText> texts_;
  std::vector<Triangle> triangles_;
  std::vector<std::size_t> below_;  // for each text, how many triangles were drawn before it
  const ImFont* font_ = nullptr;    // of the text being read
  float next_x_ = 0.0f, y_ = 0.0f;
};

// A letter is two triangles over four corners.
std::optional<Letter> Reader::letter(const ImDrawVert* corner, const ImDrawIdx* index) const {
  const unsigned first = index[0];
  const bool quad = index[1] == first + 1 && index[2] == first + 2 && index[3] == first &&
                    index[4] == first + 2 && index[5] == first + 3;
  if (!quad) return std::nullopt;
  const ImVec2 from = corner[first].uv, to = corner[first + 2].uv;
  const auto found = letters_.find({from.x, from.y, to.x, to.y});
  return found == letters_.end() ? std::nullopt : std::optional(found->second);
}

void Reader::read(const ImDrawList& list, const ImDrawCmd& command) {
  const ImDrawIdx* index = list.IdxBuffer.Data + command.IdxOffset;
  const ImDrawVert* corner = list.VtxBuffer.Data + command.VtxOffset;
  font_ = nullptr;
  for (unsigned i = 0; i < command.ElemCount;) {
    const auto found = i + 6 <= command.ElemCount ? letter(corner, index + i) : std::nullopt;
    if (found) {
      add(*found, corner[index[i]], corner[index[i + 2]], command.ClipRect);
    } else {
      font_ = nullptr;
      add_triangle(corner[index[i]], corner[index[i + 1]], corner[index[i + 2]], command);
    }
    i += found ? 6 : 3;
  }
}

// Skips soft edges and lines, whose corners differ in opacity or texture.
void Reader::add_triangle(const ImDrawVert& a, const ImDrawVert& b, const ImDrawVert& c,
                          const ImDrawCmd& command) {
  const ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
  const bool image = command.GetTexID() != atlas.TexID;
  const auto filled = [&](const ImDrawVert& corner) {
    return corner.col == a.col && corner.uv.x == atlas.TexUvWhitePixel.x &&
           corner.uv.y == atlas.TexUvWhitePixel.y;
  };
  if (!image && !(filled(a) && filled(b) && filled(c))) return;
  const bool opaque = a.col >> IM_COL32_A_SHIFT == 0xFF;
  triangles_.push_back(
      {{a.pos, b.pos, c.pos}, command.ClipRect, color_of(a.col), !image && opaque});
}

std::vector<PictureText> Reader::take() {
  for (std::size_t i = 0; i < texts_.size(); ++i) {
    PictureText& text = texts_[i];
    const touch::Point middle = text.rect_px.center();
    for (std::size_t j = below_[i]; j-- > 0;) {
      if (!triangles_[j].covers({middle.x, middle.y})) continue;
      text.over_picture = !triangles_[j].plain;
      if (triangles_[j].plain) text.ground = triangles_[j].color;
      break;
    }
  }
  return std::move(texts_);
}

void Reader::add(const Letter& letter, const ImDrawVert& upper_left, const ImDrawVert& lower_right,
                 const ImVec4& clip) {
  constexpr float kRoundingPx = 0.05f;
  const ImFontGlyph& glyph = *letter.glyph;
  // Some texts are drawn smaller than their font.
  const float size = (lower_right.pos.x - upper_left.pos.x) / (glyph.X1 - glyph.X0);
  const float x = upper_left.pos.x - size * glyph.X0, y = upper_left.pos.y - size * glyph.Y0;
  const float space = size * letter.font->GetCharAdvance(' ');
  const float gap = x - next_x_;
  const bool follows = font_ == letter.font && std::fabs(y - y_) < kRoundingPx;
  const bool beside = follows && std::fabs(gap) < kRoundingPx;
  const bool spaced = follows && std::fabs(gap - space) < kRoundingPx;
  if (!beside && !spaced) {
    texts_.push_back({{},
                      {upper_left.pos.x, upper_left.pos.y, lower_right.pos.x, lower_right.pos.y},
                      {clip.x, clip.y, clip.z, clip.w},
                      color_of(upper_left.col)});
    below_.push_back(triangles_.size());
  }
  PictureText& text = texts_.back();
  if (spaced) text.text += ' ';
  text.text += utf8(glyph.Codepoint);
  text.rect_px.right = lower_right.pos.x;
  text.rect_px.top = std::min(text.rect_px.top, upper_left.pos.y);
  text.rect_px.bottom = std::max(text.rect_px.bottom, lower_right.pos.y);
  font_ = letter.font;
  next_x_ = x + size * glyph.AdvanceX;
  y_ = y;
}

}  // namespace

std::vector<PictureText> texts_of(const ImDrawData& picture) {
  Reader reader;
  for (int i = 0; i < picture.CmdListsCount; ++i) {
    const ImDrawList& list = *picture.CmdLists[i];
    for (const ImDrawCmd& command : list.CmdBuffer) reader.read(list, command);
  }
  return reader.take();
}

}  // namespace mastwise::test
