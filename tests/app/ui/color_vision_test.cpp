#include "app/look/color_vision.hpp"

#include "app/look/chance_colors.hpp"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise::ui;

namespace {

struct Cones {
  double l, m, s;
};

double light(std::uint8_t channel) {
  const double share = channel / 255.0;
  return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

// The cones' answer to the light of a screen: the matrix of Viénot, Brettel and Mollon 1999, whose
// figures are as open implementations of the paper quote them.
Cones cones(Color color) {
  const double r = light(color.red), g = light(color.green), b = light(color.blue);
  return {17.8824 * r + 43.5161 * g + 4.11935 * b, 3.45565 * r + 27.1554 * g + 3.86714 * b,
          0.0299566 * r + 0.184309 * g + 1.46709 * b};
}

constexpr Color kSome[]{{90, 120, 140},  {140, 120, 90}, {120, 130, 110}, {100, 100, 150},
                        {150, 140, 120}, {90, 130, 120}, {128, 128, 128}, {200, 190, 180}};

}  // namespace

// What defines a dichromat's color: the two kinds of cones that are left answer the same.
TEST_CASE("the cones that are left see the same light") {
  for (const Color color : kSome) {
    const Cones before = cones(color);
    INFO(int(color.red) << " " << int(color.green) << " " << int(color.blue));
    const Cones protan = cones(as_seen(color, Eyes::Protanopia));
    CHECK(protan.m == Approx(before.m).epsilon(0.01));
    CHECK(protan.s == Approx(before.s).epsilon(0.02));
    const Cones deutan = cones(as_seen(color, Eyes::Deuteranopia));
    CHECK(deutan.l == Approx(before.l).epsilon(0.01));
    CHECK(deutan.s == Approx(before.s).epsilon(0.02));
    const Cones tritan = cones(as_seen(color, Eyes::Tritanopia));
    CHECK(tritan.l == Approx(before.l).epsilon(0.02));
    CHECK(tritan.m == Approx(before.m).epsilon(0.02));
  }
}

TEST_CASE("grays stay gray to all eyes, and usual eyes see what is there") {
  for (int gray = 0; gray <= 255; gray += 15) {
    const auto level = static_cast<std::uint8_t>(gray);
    for (const Eyes eyes : kEyes) {
      const Color seen = as_seen({level, level, level}, eyes);
      CHECK(std::abs(seen.red - gray) <= 1);
      CHECK(std::abs(seen.green - gray) <= 1);
      CHECK(std::abs(seen.blue - gray) <= 1);
    }
  }
  CHECK(as_seen({1, 200, 77}, Eyes::Usual) == Color{1, 200, 77});
}

// A red and a green of one lightness to the eye that lacks the middle cones.
TEST_CASE("red and green are told apart by usual eyes and not by a deuteranope's") {
  const Color red{192, 60, 40}, green{113, 114, 40};
  const auto apart = [&](Eyes eyes) {
    return color_difference(lab_of(as_seen(red, eyes)), lab_of(as_seen(green, eyes)));
  };
  CHECK(apart(Eyes::Usual) > 30.0);
  CHECK(apart(Eyes::Deuteranopia) < 8.0);
}

TEST_CASE("CIELAB of sRGB matches published colors") {
  // From memory of tables for D65: white, pure red, green and blue of sRGB.
  const Lab white = lab_of({255, 255, 255}), red = lab_of({255, 0, 0});
  CHECK(white.l == Approx(100.0).margin(0.01));
  CHECK(std::hypot(white.a, white.b) < 0.02);
  CHECK(red.l == Approx(53.24).margin(0.02));
  CHECK(red.a == Approx(80.09).margin(0.03));
  CHECK(red.b == Approx(67.20).margin(0.03));
}

// Sharma, Wu and Dalal 2005, table 1, pairs 1 to 5, 7, 11, 13, 16, 17, 19, 20, 25, 31, 33 and 34.
TEST_CASE("color differences match the published pairs of CIEDE2000") {
  struct Published {
    Lab one, other;
    double difference;
  };
  constexpr Published kTable[]{{{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
                               {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
                               {{50, 2.8361, -74.0200}, {50, 0, -82.7485}, 3.4412},
                               {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
                               {{50, -1.1848, -84.8006}, {50, 0, -82.7485}, 1.0000},
                               {{50, 0, 0}, {50, -1, 2}, 2.3669},
                               {{50, 2.4900, -0.0010}, {50, -2.4900, 0.0011}, 7.2195},
                               {{50, -0.0010, 2.4900}, {50, 0.0009, -2.4900}, 4.8045},
                               {{50, 2.5, 0}, {50, 0, -2.5}, 4.3065},
                               {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
                               {{50, 2.5, 0}, {56, -27, -3}, 31.9030},
                               {{50, 2.5, 0}, {58, 24, 15}, 19.4535},
                               {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
                               {{22.7233, 20.0904, -46.6940}, {23.0331, 14.9730, -42.5619}, 2.0373},
                               {{90.8027, -2.0831, 1.4410}, {91.1528, -1.6435, 0.0447}, 1.4441},
                               {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082}};
  for (const Published& pair : kTable) {
    INFO(pair.difference);
    CHECK(color_difference(pair.one, pair.other) == Approx(pair.difference).margin(0.00006));
    CHECK(color_difference(pair.other, pair.one) == Approx(pair.difference).margin(0.00006));
  }
}

namespace {

// Colors that tell states apart differ by five times the least that eyes notice side by side, to
// all eyes (our choice; CIEDE2000 is made so that 1 is about that least).
constexpr double kApart = 5.0;

double least_apart(Color one, Color other) {
  double least = 1000.0;
  for (const Eyes eyes : kEyes) {
    const Lab a = lab_of(as_seen(one, eyes)), b = lab_of(as_seen(other, eyes));
    least = std::min(least, color_difference(a, b));
  }
  return least;
}

}  // namespace

TEST_CASE("the classes of a chance stay apart to all eyes in every look") {
  for (const Look look : {Look::Day, Look::Night, Look::Red}) {
    for (std::size_t i = 0; i < kChanceSegments; ++i) {
      for (std::size_t j = i + 1; j < kChanceSegments; ++j) {
        INFO(i << " and " << j << " in look " << static_cast<int>(look));
        CHECK(least_apart(chance_color(i, look), chance_color(j, look)) >= kApart);
      }
    }
  }
}

TEST_CASE("the shades of the map order chances to all eyes") {
  for (const Look look : {Look::Day, Look::Red}) {
    for (const Eyes eyes : kEyes) {
      double before = -1.0;
      for (int percent = 0; percent <= 100; percent += 25) {
        const double l = lab_of(as_seen(chance_shade(percent, look), eyes)).l;
        INFO(percent << " % in look " << static_cast<int>(look));
        CHECK(l > before + kApart);
        before = l;
      }
    }
  }
}

// In the red look warning and ink are one color: there words, hatching and bold type tell alone.
TEST_CASE("warnings, controls and rows in use stay apart to all eyes by day and night") {
  for (const Look look : {Look::Day, Look::Night}) {
    const Theme& t = theme(look);
    INFO("look " << static_cast<int>(look));
    CHECK(least_apart(t.warning, t.ink) >= kApart);
    CHECK(least_apart(t.warning, t.accent) >= kApart);
    CHECK(least_apart(t.warning, t.second_ink) >= kApart);
    CHECK(least_apart(t.accent, t.ink) >= kApart);
    CHECK(least_apart(t.lobe, t.panel) >= kApart);
    CHECK(least_apart(t.lobe, t.paper) >= kApart);
    CHECK(least_apart(t.rule, t.panel) >= kApart);
  }
  CHECK(theme(Look::Red).warning == theme(Look::Red).ink);
}

// The focus ring's band of ink lies between two of paper.
TEST_CASE("the edges of the focus ring have a contrast of 3:1 at least in every look") {
  for (const Look look : {Look::Day, Look::Night, Look::Red}) {
    CHECK(contrast_ratio(theme(look).ink, theme(look).paper) >= 3.0);
  }
}
