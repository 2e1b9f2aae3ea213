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

class Reader {
 public:
  void read(const ImDrawList& list, const ImDrawCmd& command);
  std::vector<PictureText> take() { return std::move(texts_); }

 private:
  std::optional<Letter> letter(const ImDrawVert* corner, const ImDrawIdx* index) const;
  void add(const Letter& letter, const ImDrawVert& upper_left, const ImDrawVert& lower_right,
           const ImVec4& clip);

  std::map<Corners, Letter> letters_ = letters();
  std::vector<PictureText> texts_;
  const ImFont* font_ = nullptr;  // of the text being read
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
    }
    i += found ? 6 : 3;
  }
}

void Reader::add(const Letter& letter, const ImDrawVert& upper_left, const ImDrawVert& lower_right,
                 const ImVec4& clip) {
  constexpr float kRoundingPx = 0.05f;
  const ImFontGlyph& glyph = *letter.glyph;
  const float x = upper_left.pos.x - glyph.X0, y = upper_left.pos.y - glyph.Y0;
  const float space = letter.font->GetCharAdvance(' ');
  const float gap = x - next_x_;
  const bool follows = font_ == letter.font && std::fabs(y - y_) < kRoundingPx;
  const bool beside = follows && std::fabs(gap) < kRoundingPx;
  const bool spaced = follows && std::fabs(gap - space) < kRoundingPx;
  if (!beside && !spaced) {
    texts_.push_back({{},
                      {upper_left.pos.x, upper_left.pos.y, lower_right.pos.x, lower_right.pos.y},
                      {clip.x, clip.y, clip.z, clip.w}});
  }
  PictureText& text = texts_.back();
  if (spaced) text.text += ' ';
  text.text += utf8(glyph.Codepoint);
  text.rect_px.right = lower_right.pos.x;
  text.rect_px.top = std::min(text.rect_px.top, upper_left.pos.y);
  text.rect_px.bottom = std::max(text.rect_px.bottom, lower_right.pos.y);
  font_ = letter.font;
  next_x_ = x + glyph.AdvanceX;
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
