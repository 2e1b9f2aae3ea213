#pragma once

#include "app/look/theme.hpp"

#include <array>
#include <string_view>

namespace mastwise::ui {

// Eyes to which one kind of cone is missing: the long, the middle or the short one.
enum class Eyes { Usual, Protanopia, Deuteranopia, Tritanopia };
inline constexpr std::array kEyes{Eyes::Usual, Eyes::Protanopia, Eyes::Deuteranopia,
                                  Eyes::Tritanopia};
// As the command line names them, in the order of kEyes.
inline constexpr std::array<std::string_view, 4> kEyeNames{"usual", "protanopia", "deuteranopia",
                                                           "tritanopia"};

// How usual eyes must see a color to see what those eyes see, for sRGB. Sources: protanopia and
// deuteranopia: Viénot, Brettel and Mollon 1999, "Digital video colourmaps for checking the
// legibility of displays by dichromats", Color Research and Application 24; tritanopia: Brettel,
// Viénot and Mollon 1997, J. Opt. Soc. Am. A 14, 2647, with its hues of 485 and 660 nm. The
// matrices of linear sRGB are those of open implementations of the two papers, not computed anew.
Color as_seen(Color color, Eyes eyes);

// A color in CIELAB under D65 (CIE 15:2004; sRGB by IEC 61966-2-1).
struct Lab {
  double l = 0.0, a = 0.0, b = 0.0;
};
Lab lab_of(Color color);

// The difference of two colors by CIEDE2000: about 1 is the least that eyes notice side by side.
// Source: Sharma, Wu and Dalal 2005, Color Research and Application 30, 21.
double color_difference(const Lab& one, const Lab& other);

}  // namespace mastwise::ui
