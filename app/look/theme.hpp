#pragma once

#include "app/look/look.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace mastwise::ui {

struct Color {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Color&) const = default;
};

// Paper and ink colors: one accent for controls and answers, one warning.
struct Theme {
  Color paper;       // the ground of a screen
  Color panel;       // raised ground: the rail, the dial, keys
  Color ink;         // text and marks
  Color second_ink;  // explanations
  Color rule;        // hairlines; never carries meaning alone
  Color accent;      // controls, and the answer
  Color on_accent;   // text on the accent
  Color lobe;        // the antenna's pattern, the row in use
  Color warning;     // danger, PRACTICE, a missing fix
  Color on_warning;  // text on the warning
};

const Theme& theme(Look look);

// Contrast of two colors, 1 to 21. Source: WCAG 2.2, definitions of relative luminance and of
// contrast ratio.
double contrast_ratio(Color a, Color b);

// A pair of colors that screens put on each other, with the least contrast it must keep: 7 for
// text (WCAG 2.2, 1.4.6), 3 for marks that carry meaning (1.4.11). Pure red on black has 5.3, so
// text in the red look keeps 4.5 (1.4.3).
struct ColorPair {
  std::string name;
  Color mark, ground;
  double minimum;
};
std::vector<ColorPair> color_pairs(Look look);

}  // namespace mastwise::ui
