#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace mastwise::ui {

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Colour&) const = default;
};

// Paper and ink: one accent for what can be touched or is the answer, one warning.
struct Theme {
  Colour paper;       // the ground of a screen
  Colour panel;       // raised ground: the rail, the dial, keys
  Colour ink;         // text and marks
  Colour second_ink;  // text that explains
  Colour rule;        // hairlines; never carries meaning alone
  Colour accent;      // what can be touched, and the answer
  Colour on_accent;   // text on the accent
  Colour lobe;        // the antenna's pattern, the row in use
  Colour warning;     // danger, PRACTICE, a fix that is none
  Colour on_warning;  // text on the warning
};

const Theme& theme(bool night);

// Contrast of two colours, 1 to 21. Source: WCAG 2.2, definitions of relative luminance and of
// contrast ratio.
double contrast_ratio(Colour a, Colour b);

// A pair of colours that screens put on each other, with the least contrast it must keep: 7 for
// text (WCAG 2.2, 1.4.6), 3 for marks that carry meaning (1.4.11).
struct ColourPair {
  std::string name;
  Colour mark, ground;
  double minimum;
};
std::vector<ColourPair> colour_pairs(const Theme& theme);

}  // namespace mastwise::ui
