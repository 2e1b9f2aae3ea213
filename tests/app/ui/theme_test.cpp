#include "app/look/theme.hpp"

#include "app/look/chance_colors.hpp"

#include <set>

#include <catch2/catch.hpp>

using namespace mastwise::ui;

// WCAG 2.2: black on white is the greatest contrast, 21:1. #767676 on white is widely published as
// the lightest gray that reaches 4.5:1, with 4.54; #949494 as that of 3:1, with 3.03; #595959 as
// that of 7:1, with 7.0 (from memory of such tables).
TEST_CASE("contrast ratios match the published ones") {
  constexpr Color kWhite{255, 255, 255}, kBlack{0, 0, 0};
  CHECK(contrast_ratio(kBlack, kWhite) == Approx(21.0).margin(1e-9));
  CHECK(contrast_ratio(kWhite, kBlack) == Approx(21.0).margin(1e-9));
  CHECK(contrast_ratio(kWhite, kWhite) == Approx(1.0).margin(1e-12));
  CHECK(contrast_ratio({0x76, 0x76, 0x76}, kWhite) == Approx(4.54).margin(0.005));
  CHECK(contrast_ratio({0x94, 0x94, 0x94}, kWhite) == Approx(3.03).margin(0.005));
  CHECK(contrast_ratio({0x59, 0x59, 0x59}, kWhite) == Approx(7.0).margin(0.01));
  // Pure red has relative luminance 0.2126 by definition: 1.05 / 0.2626.
  CHECK(contrast_ratio({255, 0, 0}, kWhite) == Approx(1.05 / 0.2626).margin(1e-6));
}

TEST_CASE("every pair of colors on a screen keeps its contrast in every look") {
  for (const Look look : {Look::Day, Look::Night, Look::Red}) {
    std::set<std::string> names;
    for (const ColorPair& pair : color_pairs(look)) {
      INFO(pair.name << " in look " << static_cast<int>(look));
      CHECK(contrast_ratio(pair.mark, pair.ground) >= pair.minimum);
      CHECK(pair.minimum >= 3.0);
      // Pairs without "mark" in the name are text.
      if (pair.name.find("mark") == std::string::npos) {
        CHECK(pair.minimum == (look == Look::Red ? 4.5 : 7.0));
      }
      names.insert(pair.name);
    }
    CHECK(names.size() >= 12);
  }
}

// The design: dim night colors without a white flash.
TEST_CASE("large areas are dark at night and in red") {
  constexpr Color kBlack{0, 0, 0};
  for (const Look look : {Look::Night, Look::Red}) {
    const Theme& dark = theme(look);
    for (const Color ground : {dark.paper, dark.panel, dark.lobe}) {
      CHECK(contrast_ratio(ground, kBlack) < 1.7);
    }
  }
}

// Red above 600 nm leaves the eye used to the dark (common practice, no source): the red primary of
// sRGB lies at 612 nm (IEC 61966-2-1, from memory), so nothing may have green or blue.
TEST_CASE("the red look has nothing but red") {
  const Theme& red = theme(Look::Red);
  for (const Color color : {red.paper, red.panel, red.ink, red.second_ink, red.rule, red.accent,
                            red.on_accent, red.lobe, red.warning, red.on_warning}) {
    CHECK(color.green == 0);
    CHECK(color.blue == 0);
  }
  for (std::size_t segment = 0; segment < kChanceSegments; ++segment) {
    const Color color = chance_color(segment, Look::Red);
    CHECK((color.green == 0 && color.blue == 0));
  }
}
