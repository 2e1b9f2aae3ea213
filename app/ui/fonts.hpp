#pragma once

#include "core/result.hpp"

#include <array>
#include <cstddef>
#include <string>

struct ImFont;
struct ImFontAtlas;

namespace mastwise::ui {

// The faces that screens use, with the size of the em in units; capitals and figures are three
// quarters of it. Text is 12 arc minutes high at 700 mm, Matter 21, Answer 60; Fine 16 at 400 mm.
enum class Face {
  Fine,      // 19: sources and credits, read in the hand
  FineBold,  // 19
  Text,      // 25: the least on the dash
  TextBold,  // 25
  Matter,    // 42 bold: what matters
  Roof,      // 240 bold, figures only: read at arm's length in the sun
  Value,     // 28 bold
  Cardinal,  // 34 bold
  Second,    // 52 bold: second figures
  Big,       // 66 bold
  Answer,    // 122 bold, figures and short words
};
constexpr std::size_t kFaceCount = 11;

// The size of the em, in units.
float em_units(Face face);

// The open-licensed fonts of assets/fonts at the sizes of this screen.
class Fonts {
 public:
  // Adds every face to the atlas. Fails if `folder` does not have the font files.
  static Result<Fonts> load(ImFontAtlas& atlas, const std::string& folder, float px_per_unit);

  const ImFont* font(Face face) const { return faces_[static_cast<std::size_t>(face)]; }

 private:
  std::array<ImFont*, kFaceCount> faces_{};
};

}  // namespace mastwise::ui
