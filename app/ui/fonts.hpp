#pragma once

#include "core/result.hpp"

#include <array>
#include <cstddef>
#include <functional>
#include <memory>
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

// The size of the em, in units. `letters`: how many times larger texts are than usual; figures
// that are large anyway grow less.
float em_units(Face face, float letters = 1.0f);

// The open-licensed fonts of assets/fonts at the sizes of a screen, drawn into one picture.
class Fonts {
 public:
  // Draws the letters. Fails if `folder` does not have the font files.
  static Result<std::shared_ptr<const Fonts>> load(const std::string& folder, float px_per_unit,
                                                   float letters);
  ~Fonts();
  Fonts(const Fonts&) = delete;
  Fonts& operator=(const Fonts&) = delete;

  const ImFont* font(Face face) const { return faces_[static_cast<std::size_t>(face)]; }
  float letters() const { return letters_; }  // as loaded
  // What Dear ImGui's context draws with. It notes there where the graphics card has the picture.
  ImFontAtlas& atlas() const { return *atlas_; }

 private:
  explicit Fonts(float letters);
  float letters_;
  std::unique_ptr<ImFontAtlas> atlas_;
  std::array<ImFont*, kFaceCount> faces_{};
};

// Where the letters of a scale come from.
using LoadFonts =
    std::function<Result<std::shared_ptr<const Fonts>>(float px_per_unit, float letters)>;
// Drawn anew each time, from the files of a folder.
LoadFonts fonts_of(std::string folder);

}  // namespace mastwise::ui
