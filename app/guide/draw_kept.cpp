#include "app/guide/draw_pictures.hpp"
#include "app/ui/texture.hpp"

// Logbook, Ahead and Data.
namespace mastwise::screens {
namespace {

// The three outcomes: full, half, empty.
void outcome(Sketch& s, Point center, int kind, Color color) {
  constexpr float kRadius = 15.0f;
  s.circle(center, kRadius, color, 4.0f);
  if (kind == 0) s.disc(center, kRadius, color);
  if (kind == 1) {
    s.ui().canvas().sector(s.at(center.x, center.y), s.size(kRadius), 180.0f, 360.0f, color, 1.0f);
  }
}

void what_came_in(Sketch& s) {
  const auto& t = s.theme();
  for (int row = 0; row < 2; ++row) {
    const float y = -62.0f + 100.0f * static_cast<float>(row);
    const Rect frame{-136.0f, y - 38.0f, 136.0f, y + 38.0f};
    s.fill(frame, t.paper, 14.0f);
    const int chosen = row == 0 ? 0 : -1;
    for (int kind = 0; kind < 3; ++kind) {
      const float left = frame.left + 90.67f * static_cast<float>(kind);
      if (kind == chosen) {
        s.fill({left + 5.0f, frame.top + 5.0f, left + 86.0f, frame.bottom - 5.0f}, t.ink, 10.0f);
      }
      outcome(s, {left + 45.0f, y}, kind, kind == chosen ? t.paper : t.accent);
    }
    s.outline(frame, t.ink, 4.0f, 14.0f);
  }
  s.hand({4.0f, 32.0f});
}

// What came in against what was forecast: the line bends to the dots.
void teaches(Sketch& s) {
  const auto& t = s.theme();
  s.line({-124.0f, -108.0f}, {-124.0f, 92.0f}, t.ink, 4.0f);
  s.line({-124.0f, 92.0f}, {132.0f, 92.0f}, t.ink, 4.0f);
  for (float x = -118.0f; x < 116.0f; x += 16.0f)
    s.disc({x, 84.0f - 0.76f * (x + 118.0f)}, 3.0f, t.ink);
  const std::array dots{Point{-84.0f, 82.0f}, Point{-34.0f, 58.0f}, Point{18.0f, 40.0f},
                        Point{64.0f, -8.0f}, Point{108.0f, -62.0f}};
  s.curve(dots, t.accent, 5.0f);
  for (const Point dot : dots) s.disc(dot, 9.0f, t.accent);
  s.arrow({0.0f, -20.0f}, {8.0f, 22.0f}, t.ink, 5.0f);
}

// Nights with their headings, and the dial that they agree on.
void nights(Sketch& s) {
  const auto& t = s.theme();
  const Point center{-76.0f, -52.0f};
  s.dial(center, 54.0f);
  s.rig(center, 0.0, 52.0f);
  s.antenna(center, 98.0, 50.0f);
  s.text({66.0f, -36.0f}, "24°", Face::Second, t.ink);
  for (int night = 0; night < 3; ++night) {
    const float y = 34.0f + 36.0f * static_cast<float>(night);
    s.line({-132.0f, y}, {-76.0f, y}, t.ink, 5.0f);
    s.line({-56.0f, y}, {-26.0f, y}, t.ink, 8.0f);
    for (int dot = 0; dot < 5; ++dot) {
      const Point at{10.0f + 29.0f * static_cast<float>(dot), y};
      s.circle(at, 10.0f, t.ink, 3.0f);
      if (dot + night < 5) s.disc(at, 10.0f, t.ink);
    }
  }
}

// The book, a stick, another tablet.
void copies(Sketch& s) {
  const auto& t = s.theme();
  const Rect book{-132.0f, -84.0f, -52.0f, 22.0f};
  s.fill(book, t.paper, 6.0f);
  s.outline(book, t.ink, 5.0f, 6.0f);
  for (const float y : {-54.0f, -30.0f, -6.0f}) s.line({-114.0f, y}, {-70.0f, y}, t.ink, 5.0f);
  s.arrow({-38.0f, -30.0f}, {6.0f, -30.0f}, t.accent, 7.0f);
  s.stick({18.0f, -54.0f, 92.0f, -10.0f});
  s.arrow({66.0f, 4.0f}, {66.0f, 34.0f}, t.accent, 7.0f);
  const Rect tablet{4.0f, 42.0f, 134.0f, 114.0f};
  s.fill(tablet, t.paper, 10.0f);
  s.outline(tablet, t.ink, 5.0f, 10.0f);
  s.circle({44.0f, 78.0f}, 21.0f, t.ink, 3.5f);
  s.arrow({44.0f, 78.0f}, {56.0f, 62.0f}, t.ink, 4.0f);
  for (const float y : {66.0f, 82.0f, 98.0f}) s.line({80.0f, y}, {120.0f, y}, t.ink, 4.0f);
}

constexpr std::array kWay{Point{-112.0f, 72.0f}, Point{-34.0f, 6.0f}, Point{52.0f, 24.0f},
                          Point{106.0f, -78.0f}};

// The way, with one more place.
void add_place(Sketch& s) {
  const auto& t = s.theme();
  s.curve(std::span(kWay).first(3), t.ink, 6.0f);
  for (float part = 0.1f; part < 0.9f; part += 0.14f) {
    s.disc({kWay[2].x + part * (kWay[3].x - kWay[2].x), kWay[2].y + part * (kWay[3].y - kWay[2].y)},
           4.0f, t.ink);
  }
  s.rig(kWay[0], 50.0, 62.0f);
  for (const Point place : {kWay[1], kWay[2]}) {
    s.disc(place, 13.0f, t.paper);
    s.circle(place, 13.0f, t.ink, 5.0f);
  }
  s.disc(kWay[3], 26.0f, t.accent);
  s.line({kWay[3].x - 12.0f, kWay[3].y}, {kWay[3].x + 12.0f, kWay[3].y}, t.on_accent, 6.0f);
  s.line({kWay[3].x, kWay[3].y - 12.0f}, {kWay[3].x, kWay[3].y + 12.0f}, t.on_accent, 6.0f);
  s.slip({-132.0f, -100.0f, 34.0f, -48.0f}, "43.1° N");
}

// Columns of places with the bars of their networks; `chosen` is the framed one.
void place_columns(Sketch& s, int chosen) {
  const auto& t = s.theme();
  const std::array filled{std::array{5, 5, 5}, std::array{5, 4, 2}, std::array{5, 1, 4}};
  for (int place = 0; place < 3; ++place) {
    const float left = -138.0f + 94.0f * static_cast<float>(place);
    const Rect card{left, -114.0f, left + 88.0f, 114.0f};
    s.fill(card, place == chosen ? t.paper : t.panel, 10.0f);
    s.outline(card, place == chosen ? t.accent : t.rule, place == chosen ? 5.0f : 3.0f, 10.0f);
    const Point mark{left + 44.0f, -78.0f};
    if (place == 0) {
      s.rig(mark, 90.0, 48.0f);
    } else {
      s.disc(mark, 12.0f, t.paper);
      s.circle(mark, 12.0f, t.ink, 5.0f);
    }
    for (int row = 0; row < 3; ++row) {
      const auto bars = filled[static_cast<std::size_t>(place)][static_cast<std::size_t>(row)];
      s.chance({left + 8.0f, -24.0f + 46.0f * static_cast<float>(row)}, 72.0f,
               static_cast<std::size_t>(bars));
    }
  }
}

void places(Sketch& s) {
  place_columns(s, -1);
}

// A road with its places, and how far along it each network goes.
void how_far(Sketch& s) {
  const auto& t = s.theme();
  s.line({-132.0f, -82.0f}, {132.0f, -82.0f}, t.ink, 5.0f);
  for (float x = -132.0f; x < 133.0f; x += 33.0f) s.line({x, -82.0f}, {x, -70.0f}, t.ink, 3.0f);
  s.rig({-122.0f, -82.0f}, 90.0, 46.0f);
  for (const float x : {-12.0f, 106.0f}) {
    s.disc({x, -82.0f}, 13.0f, t.paper);
    s.circle({x, -82.0f}, 13.0f, t.ink, 5.0f);
  }
  struct Bar {
    float y, from, to;
  };
  for (const float y : {-26.0f, 24.0f, 74.0f}) s.line({-132.0f, y}, {132.0f, y}, t.rule, 3.0f);
  for (const Bar bar : {Bar{-26.0f, -132.0f, 132.0f}, Bar{24.0f, -132.0f, 4.0f},
                        Bar{24.0f, 60.0f, 96.0f}, Bar{74.0f, -132.0f, -58.0f}}) {
    s.fill({bar.from, bar.y - 10.0f, bar.to, bar.y + 10.0f}, t.ink);
  }
}

void next_stop(Sketch& s) {
  place_columns(s, 1);
  s.hand({2.0f, 22.0f});
}

// A stick with tables, a card with heights.
void bring(Sketch& s) {
  const auto& t = s.theme();
  s.stick({-124.0f, -96.0f, -4.0f, -34.0f});
  s.line({-102.0f, -76.0f}, {-50.0f, -76.0f}, t.ink, 5.0f);
  s.line({-102.0f, -58.0f}, {-66.0f, -58.0f}, t.ink, 5.0f);
  s.lines({{-104.0f, 14.0f}, {-44.0f, 14.0f}, {-22.0f, 36.0f}, {-22.0f, 112.0f}, {-104.0f, 112.0f}},
          t.ink, 5.0f, true);
  s.lines({{-92.0f, 92.0f}, {-74.0f, 60.0f}, {-64.0f, 76.0f}, {-54.0f, 64.0f}, {-36.0f, 92.0f}},
          t.ink, 4.0f);
  s.arrow({44.0f, -64.0f}, {74.0f, -38.0f}, t.accent, 7.0f);
  s.arrow({4.0f, 64.0f}, {56.0f, 38.0f}, t.accent, 7.0f);
  const Rect tablet{66.0f, -34.0f, 136.0f, 62.0f};
  s.fill(tablet, t.paper, 10.0f);
  s.outline(tablet, t.ink, 5.0f, 10.0f);
  for (const float y : {-8.0f, 14.0f, 36.0f}) s.line({82.0f, y}, {120.0f, y}, t.ink, 5.0f);
}

// The files of a folder, one touched.
void choose_file(Sketch& s) {
  const auto& t = s.theme();
  s.fill({-138.0f, -34.0f, 138.0f, 34.0f}, t.lobe, 10.0f);
  for (int row = 0; row < 3; ++row) {
    const float y = -72.0f + 72.0f * static_cast<float>(row);
    s.outline({-120.0f, y - 22.0f, -86.0f, y + 22.0f}, t.ink, 4.0f, 4.0f);
    s.line({-112.0f, y - 6.0f}, {-94.0f, y - 6.0f}, t.ink, 3.0f);
    s.line({-112.0f, y + 6.0f}, {-94.0f, y + 6.0f}, t.ink, 3.0f);
    s.line({-66.0f, y - 8.0f}, {40.0f - 22.0f * static_cast<float>(row), y - 8.0f}, t.ink, 7.0f);
    s.line({-66.0f, y + 12.0f}, {-20.0f, y + 12.0f}, t.second_ink, 4.0f);
    s.lines({{112.0f, y - 13.0f}, {124.0f, y}, {112.0f, y + 13.0f}}, t.accent, 4.0f);
    if (row < 2) s.line({-138.0f, y + 37.0f}, {138.0f, y + 37.0f}, t.rule, 2.0f);
  }
  s.hand({58.0f, 2.0f});
}

// The first rows under a lens.
void check_rows(Sketch& s) {
  const auto& t = s.theme();
  const Rect page{-134.0f, -108.0f, 134.0f, 92.0f};
  s.fill(page, t.paper, 8.0f);
  s.outline(page, t.ink, 4.0f, 8.0f);
  s.fill({page.left, page.top, page.right, page.top + 38.0f}, t.ink, 8.0f);
  for (int row = 0; row < 4; ++row) {
    const float y = -46.0f + 40.0f * static_cast<float>(row);
    s.line({-116.0f, y}, {-66.0f, y}, t.ink, 5.0f);
    s.line({-40.0f, y}, {0.0f, y}, t.ink, 5.0f);
    s.line({24.0f, y}, {112.0f, y}, t.ink, 5.0f);
  }
  const Point lens{-34.0f, -8.0f};
  s.disc(lens, 52.0f, t.paper);
  s.circle(lens, 52.0f, t.ink, 6.0f);
  s.line({lens.x + 38.0f, lens.y + 38.0f}, {lens.x + 92.0f, lens.y + 92.0f}, t.ink, 14.0f);
  s.text({lens.x, lens.y + 10.0f}, "QBPA", Face::Value, t.ink);
}

// Squares of ground along the way, some of them missing.
void squares(Sketch& s) {
  const auto& t = s.theme();
  constexpr float kSide = 66.0f;
  const auto square = [&](int column, int row) {
    const float left = -132.0f + kSide * static_cast<float>(column);
    const float top = -99.0f + kSide * static_cast<float>(row);
    return Rect{left, top, left + kSide, top + kSide};
  };
  for (int row = 0; row < 3; ++row) {
    for (int column = 0; column < 4; ++column) {
      const Rect one = square(column, row);
      const bool missing = column == 3 || (column == 2 && row == 0);
      s.fill(one, missing ? t.paper : t.lobe);
      if (missing) ui::hatch(s.ui().canvas(), s.at(one), t.ink, 11.0f, 2.0f);
      s.outline(one, t.ink, 2.5f);
    }
  }
  s.lines({{-96.0f, 62.0f}, {-28.0f, 10.0f}, {44.0f, 22.0f}, {98.0f, -44.0f}}, t.paper, 14.0f);
  s.lines({{-96.0f, 62.0f}, {-28.0f, 10.0f}, {44.0f, 22.0f}, {98.0f, -44.0f}}, t.ink, 6.0f);
  s.rig({-96.0f, 62.0f}, 50.0, 52.0f);
  s.disc({98.0f, -44.0f}, 14.0f, t.paper);
  s.circle({98.0f, -44.0f}, 14.0f, t.ink, 5.0f);
}

}  // namespace

GuidePictures logbook_pictures() {
  return {what_came_in, teaches, nights, copies};
}

GuidePictures ahead_pictures() {
  return {add_place, places, how_far, next_stop};
}

GuidePictures data_pictures() {
  return {bring, choose_file, check_rows, squares};
}

}  // namespace mastwise::screens
