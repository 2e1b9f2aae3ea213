#include "app/guide/draw_pictures.hpp"
#include "app/look/chance_colors.hpp"
#include "app/ui/side_marks.hpp"
#include "app/ui/texture.hpp"

#include <algorithm>
#include <cmath>

// Here, Stations and Map.
namespace mastwise::screens {
namespace {

// A satellite, its waves, and the stake where the rig stands.
void satellite(Sketch& s) {
  const auto& t = s.theme();
  const Point body{-70.0f, -74.0f};
  for (const float side : {-1.0f, 1.0f}) {
    const Point hinge{body.x + side * 18.0f, body.y - side * 12.0f};
    const Point end{body.x + side * 54.0f, body.y - side * 36.0f};
    s.line(hinge, end, t.ink, 26.0f);
    s.line({hinge.x + side * 8.0f, hinge.y - side * 5.0f},
           {end.x - side * 4.0f, end.y + side * 2.5f}, t.lobe, 18.0f);
  }
  s.disc(body, 17.0f, t.ink);
  s.disc(body, 11.0f, t.paper);
  for (const float radius : {38.0f, 58.0f, 78.0f}) {
    s.arc({body.x + 8.0f, body.y + 8.0f}, radius, 112.0f, 158.0f, t.accent, 5.0f);
  }
  const Point pin{38.0f, 34.0f};
  s.disc(pin, 17.0f, t.accent);
  s.line(pin, {pin.x, pin.y + 46.0f}, t.ink, 5.0f);
  s.disc(pin, 6.0f, t.on_accent);
  s.slip({-136.0f, 64.0f, -8.0f, 114.0f}, "42.5° N");
  s.line({6.0f, 82.0f}, {112.0f, 82.0f}, t.ink, 4.0f);
}

// The nose on a compass.
void nose(Sketch& s) {
  const auto& t = s.theme();
  const Point center{-8.0f, 8.0f};
  s.dial(center, 100.0f);
  s.kite({center.x, center.y - 70.0f}, 13.0f, false);
  s.rig(center, 58.0, 112.0f);
  s.turn(center, 82.0f, 4.0f, 56.0f, t.accent);
  s.text({106.0f, -66.0f}, "58°", Face::Cardinal, t.accent);
}

// Two patterns to choose from: both ways, and one way.
void patterns(Sketch& s) {
  const auto& t = s.theme();
  const Rect first{-136.0f, -112.0f, 136.0f, -8.0f}, second{-136.0f, 8.0f, 136.0f, 112.0f};
  s.fill(first, t.ink, 14.0f);
  s.outline(second, t.rule, 3.0f, 14.0f);
  const auto lobe = [&](Point base, float length, bool right, Color fill, Color edge) {
    const float side = right ? 1.0f : -1.0f;
    const Point middle{base.x + side * 0.5f * length, base.y};
    s.disc(middle, 0.5f * length, fill);
    s.circle(middle, 0.5f * length, edge, 3.0f);
  };
  const Point both{-52.0f, -60.0f}, one{-82.0f, 60.0f};
  lobe(both, 54.0f, false, t.lobe, t.accent);
  lobe(both, 54.0f, true, t.lobe, t.accent);
  s.fill({both.x - 4.0f, both.y - 34.0f, both.x + 4.0f, both.y + 34.0f}, t.paper, 3.0f);
  lobe(one, 78.0f, true, t.lobe, t.accent);
  lobe(one, 18.0f, false, t.lobe, t.accent);
  s.fill({one.x - 4.0f, one.y - 34.0f, one.x + 4.0f, one.y + 34.0f}, t.ink, 3.0f);
  s.hand({62.0f, 28.0f});
}

// The ring of sides, one of them wiped.
void sides(Sketch& s) {
  const auto& t = s.theme();
  const Point center{-16.0f, -2.0f};
  for (int side = 0; side < 8; ++side) {
    const float from = 45.0f * static_cast<float>(side) - 22.5f;
    if (side == 2) continue;
    for (float part = 0.0f; part < 41.0f; part += 6.0f) {
      s.arc(center, 104.0f, from + part + 2.0f, from + part + 4.0f, t.ink, 4.0f);
    }
  }
  const auto tree = [&](float degrees, float radius) {
    const Point place = ui::around(center, radius, degrees);
    ui::draw_tree(s.ui().canvas(), s.at(place.x, place.y), s.size(19.0f), t.ink, t.panel);
  };
  s.arc(center, 104.0f, 67.5f, 112.5f, t.ink, 7.0f);
  tree(74.0f, 80.0f);
  tree(106.0f, 80.0f);
  const Point hill = ui::around(center, 76.0f, 225.0);
  ui::draw_hill(s.ui().canvas(), s.at(hill.x, hill.y), s.size(21.0f), t.ink);
  s.rig(ui::around(center, 78.0f, 315.0), 0.0, 52.0f);
  s.rig(center, 0.0, 84.0f);
  s.turn(center, 124.0f, 62.0f, 108.0f, t.accent);
  s.hand({62.0f, 16.0f});
}

// A dial with the rows that its heading brings in.
void rows(Sketch& s) {
  const auto& t = s.theme();
  s.outline({-138.0f, -112.0f, 138.0f, 112.0f}, t.rule, 3.0f, 14.0f);
  s.line({-26.0f, -112.0f}, {-26.0f, 112.0f}, t.rule, 3.0f);
  const Point center{-82.0f, -40.0f};
  s.dial(center, 44.0f);
  s.rig(center, 0.0, 44.0f);
  s.line(center, ui::around(center, 36.0f, 52.0), t.ink, 5.0f);
  s.disc(ui::around(center, 40.0f, 52.0), 8.0f, t.accent);
  s.arc(center, 52.0f, 24.0f, 82.0f, t.accent, 7.0f);
  s.button({-128.0f, 34.0f, -36.0f, 84.0f}, "24°", true);
  const std::array lengths{74.0f, 58.0f, 84.0f, 66.0f};
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    const float y = -84.0f + 56.0f * static_cast<float>(i);
    s.line({-10.0f, y - 10.0f}, {-10.0f + lengths[i], y - 10.0f}, t.ink, 6.0f);
    s.chance({-10.0f, y + 10.0f}, 110.0f, 5);
    if (i < 3) s.line({-12.0f, y + 28.0f}, {124.0f, y + 28.0f}, t.rule, 2.0f);
  }
}

// From a full row of bars to an empty one, with the picture that it means.
void bars(Sketch& s) {
  const auto& t = s.theme();
  const std::array filled{5, 3, 1};
  for (std::size_t i = 0; i < filled.size(); ++i) {
    const float y = -80.0f + 80.0f * static_cast<float>(i);
    s.chance({-134.0f, y}, 150.0f, static_cast<std::size_t>(filled[i]));
    const Rect screen{46.0f, y - 28.0f, 128.0f, y + 22.0f};
    s.outline(screen, t.ink, 4.0f, 6.0f);
    s.line({87.0f, screen.bottom}, {87.0f, screen.bottom + 8.0f}, t.ink, 4.0f);
    if (i == 0) {  // a hill under a sun
      s.disc({108.0f, y - 14.0f}, 7.0f, t.accent);
      s.polygon({{54.0f, y + 16.0f}, {78.0f, y - 14.0f}, {104.0f, y + 16.0f}}, t.ink);
    } else if (i == 1) {  // the same, torn
      s.polygon({{54.0f, y + 16.0f}, {66.0f, y + 1.0f}, {74.0f, y + 1.0f}, {72.0f, y + 16.0f}},
                t.ink);
      s.polygon({{88.0f, y + 16.0f}, {84.0f, y - 6.0f}, {104.0f, y + 16.0f}}, t.ink);
      s.disc({112.0f, y - 14.0f}, 5.0f, t.accent);
    } else {
      s.line({74.0f, y - 15.0f}, {100.0f, y + 9.0f}, t.ink, 4.0f);
      s.line({74.0f, y + 9.0f}, {100.0f, y - 15.0f}, t.ink, 4.0f);
    }
  }
}

// A row, and a second one whose nail is down.
void row_and_nail(Sketch& s) {
  const auto& t = s.theme();
  const auto nail = [&](Point at, bool down) {
    const float y = down ? at.y + 8.0f : at.y;
    s.polygon({{at.x - 12.0f, y - 24.0f},
               {at.x + 12.0f, y - 24.0f},
               {at.x + 8.0f, y - 8.0f},
               {at.x - 8.0f, y - 8.0f}},
              down ? t.accent : t.paper);
    s.lines({{at.x - 12.0f, y - 24.0f},
             {at.x + 12.0f, y - 24.0f},
             {at.x + 8.0f, y - 8.0f},
             {at.x - 8.0f, y - 8.0f}},
            t.accent, 3.0f, true);
    s.line({at.x, y - 8.0f}, {at.x, at.y + 18.0f}, t.accent, 3.0f);
    s.line({at.x - 22.0f, at.y + 16.0f}, {at.x - 8.0f, at.y + 16.0f}, t.accent, 3.0f);
    s.line({at.x + 8.0f, at.y + 16.0f}, {at.x + 22.0f, at.y + 16.0f}, t.accent, 3.0f);
  };
  s.fill({-138.0f, -108.0f, 138.0f, -18.0f}, t.lobe, 12.0f);
  for (const float y : {-63.0f, 27.0f}) {
    s.line({-122.0f, y - 14.0f}, {-44.0f, y - 14.0f}, t.ink, 7.0f);
    s.chance({-122.0f, y + 14.0f}, 110.0f, 5);
  }
  s.line({-138.0f, 72.0f}, {138.0f, 72.0f}, t.rule, 2.0f);
  nail({104.0f, -66.0f}, false);
  nail({104.0f, 26.0f}, true);
  s.hand({-8.0f, -58.0f});
}

// A search, and a table from a stick.
void find_and_data(Sketch& s) {
  const auto& t = s.theme();
  s.circle({-68.0f, -62.0f}, 34.0f, t.ink, 7.0f);
  s.line({-44.0f, -38.0f}, {-20.0f, -14.0f}, t.ink, 11.0f);
  s.text({-68.0f, -53.0f}, "6.1", Face::TextBold, t.ink);
  s.stick({-128.0f, 44.0f, -44.0f, 88.0f});
  s.arrow({-6.0f, 66.0f}, {40.0f, 66.0f}, t.accent, 7.0f);
  const Rect page{54.0f, -26.0f, 134.0f, 112.0f};
  s.fill(page, t.paper, 6.0f);
  s.outline(page, t.ink, 4.0f, 6.0f);
  for (int row = 0; row < 5; ++row) {
    const float y = -4.0f + 24.0f * static_cast<float>(row);
    s.line({66.0f, y}, {92.0f, y}, t.ink, row == 0 ? 7.0f : 4.0f);
    s.line({100.0f, y}, {122.0f, y}, t.ink, row == 0 ? 7.0f : 4.0f);
  }
}

// Stations around the rig, fuller and emptier rings.
void rings(Sketch& s) {
  const auto& t = s.theme();
  const Point rig{-20.0f, 22.0f};
  s.circle(rig, 52.0f, t.rule, 2.5f);
  s.rig(rig, 300.0, 62.0f);
  const auto station = [&](Point at, double percent, const char* degrees, Align align) {
    s.ring(at, percent);
    const bool left = align == Align::Right;
    s.text({at.x + (left ? -24.0f : 24.0f), at.y + 9.0f}, degrees, Face::TextBold, t.ink, align);
  };
  station({28.0f, -76.0f}, 97.0, "24°", Align::Left);
  station({-106.0f, -42.0f}, 76.0, "304°", Align::Left);
  station({84.0f, 34.0f}, 25.0, "", Align::Left);
  station({-110.0f, 82.0f}, 50.0, "", Align::Left);
  s.arrow({1.0f, -18.0f}, {17.0f, -52.0f}, t.ink, 7.0f);
}

// The arc outside, and hatching behind a ridge.
void arc_and_hatch(Sketch& s) {
  const auto& t = s.theme();
  const Point center{-40.0f, 26.0f};
  const Rect behind{84.0f, -76.0f, 138.0f, 112.0f};
  ui::hatch(s.ui().canvas(), s.at(behind), t.ink, 11.0f, 2.0f);
  s.lines({{80.0f, 114.0f}, {76.0f, 70.0f}, {86.0f, 26.0f}, {76.0f, -22.0f}, {84.0f, -78.0f}},
          t.ink, 7.0f);
  s.circle(center, 92.0f, t.ink, 3.0f);
  s.arc(center, 104.0f, -34.0f, 44.0f, t.accent, 14.0f);
  s.rig(center, 300.0, 60.0f);
  s.arrow({-34.0f, -8.0f}, {-24.0f, -62.0f}, t.ink, 7.0f);
}

// A finger that stays, and the card that it opens.
void hold_place(Sketch& s) {
  const auto& t = s.theme();
  ui::draw_hill(s.ui().canvas(), s.at(-92.0f, -66.0f), s.size(42.0f), t.rule);
  ui::draw_hill(s.ui().canvas(), s.at(96.0f, -84.0f), s.size(26.0f), t.rule);
  s.hand({-16.0f, -58.0f}, true);
  const Rect card{-136.0f, 48.0f, 136.0f, 114.0f};
  s.fill(card, t.paper, 12.0f);
  s.outline(card, t.ink, 3.0f, 12.0f);
  s.line({-120.0f, 70.0f}, {-40.0f, 70.0f}, t.ink, 7.0f);
  s.line({-120.0f, 92.0f}, {-60.0f, 92.0f}, t.ink, 4.0f);
  s.button({0.0f, 60.0f, 58.0f, 102.0f}, "");
  s.button({68.0f, 60.0f, 126.0f, 102.0f}, "", true);
}

// Ground shaded by chance, and the better place on it.
void best_spot(Sketch& s) {
  const auto& t = s.theme();
  constexpr int kCells = 6;
  constexpr float kCell = 36.0f;
  for (int row = 0; row < kCells; ++row) {
    for (int column = 0; column < kCells; ++column) {
      const float far =
          std::hypot(static_cast<float>(column) - 4.0f, static_cast<float>(row) - 1.0f);
      const Color shade = ui::chance_shade(std::max(4.0, 96.0 - 19.0 * far), s.ui().look());
      const float x = -108.0f + kCell * static_cast<float>(column);
      const float y = -108.0f + kCell * static_cast<float>(row);
      s.fill({x, y, x + kCell + 0.5f, y + kCell + 0.5f}, shade);
    }
  }
  const Point from{-66.0f, 66.0f}, to{54.0f, -54.0f};
  s.disc(from, 40.0f, t.paper);
  s.rig(from, 40.0, 64.0f);
  s.disc(to, 30.0f, t.paper);
  s.disc(to, 15.0f, t.accent);
  s.line({from.x + 32.0f, from.y - 32.0f}, {to.x - 22.0f, to.y + 22.0f}, t.paper, 16.0f);
  s.arrow({from.x + 30.0f, from.y - 30.0f}, {to.x - 20.0f, to.y + 20.0f}, t.ink, 7.0f);
}

}  // namespace

GuidePictures here_pictures() {
  return {satellite, nose, patterns, sides};
}

GuidePictures stations_pictures() {
  return {rows, bars, row_and_nail, find_and_data};
}

GuidePictures map_pictures() {
  return {rings, arc_and_hatch, hold_place, best_spot};
}

}  // namespace mastwise::screens
