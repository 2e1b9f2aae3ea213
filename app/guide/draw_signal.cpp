#include "app/guide/draw_pictures.hpp"

#include <cmath>
#include <numbers>

// Plan and Path.
namespace mastwise::screens {
namespace {

// What is pinned, a network with its stations, or all.
void what_for(Sketch& s) {
  const auto& t = s.theme();
  const Rect frame{-136.0f, -44.0f, 136.0f, 44.0f};
  s.fill(frame, t.paper, 14.0f);
  s.fill({-131.0f, -39.0f, -48.0f, 39.0f}, t.ink, 10.0f);
  s.outline(frame, t.ink, 4.0f, 14.0f);
  const Point nail{-90.0f, 0.0f};
  s.polygon({{nail.x - 13.0f, nail.y - 24.0f},
             {nail.x + 13.0f, nail.y - 24.0f},
             {nail.x + 8.0f, nail.y - 6.0f},
             {nail.x - 8.0f, nail.y - 6.0f}},
            t.paper);
  s.line({nail.x, nail.y - 8.0f}, {nail.x, nail.y + 24.0f}, t.paper, 4.0f);
  const Point hub{0.0f, 0.0f};
  for (const double degrees : {0.0, 120.0, 240.0}) {
    const Point end = ui::around(hub, 24.0f, degrees);
    s.line(hub, end, t.accent, 4.0f);
    s.disc(end, 8.0f, t.accent);
  }
  s.disc(hub, 9.0f, t.accent);
  for (int row = 0; row < 3; ++row) {
    const float y = -20.0f + 20.0f * static_cast<float>(row);
    s.line({66.0f, y}, {116.0f, y}, t.accent, 7.0f);
  }
  s.line({46.0f, -30.0f}, {46.0f, 30.0f}, t.rule, 3.0f);
  s.hand({4.0f, 36.0f});
}

void column(Sketch& s, float left, double to_deg, const char* degrees, bool chosen,
            std::initializer_list<std::size_t> bars) {
  const auto& t = s.theme();
  const Rect card{left, -114.0f, left + 128.0f, 114.0f};
  s.fill(card, chosen ? t.paper : t.panel, 12.0f);
  s.outline(card, chosen ? t.accent : t.rule, chosen ? 5.0f : 3.0f, 12.0f);
  const Point center{left + 36.0f, -74.0f};
  s.circle(center, 26.0f, t.rule, 3.0f);
  s.line(center, ui::around(center, 24.0f, to_deg), t.ink, 5.0f);
  s.disc(ui::around(center, 24.0f, to_deg), 6.0f, t.accent);
  s.text({left + 118.0f, -62.0f}, degrees, Face::Cardinal, t.ink, Align::Right);
  float y = -18.0f;
  for (const std::size_t filled : bars) {
    s.chance({left + 12.0f, y}, 104.0f, filled);
    y += 36.0f;
  }
}

void columns(Sketch& s) {
  column(s, -136.0f, 60.0, "24°", true, {5, 5, 4, 5});
  column(s, 8.0f, 150.0, "82°", false, {5, 2, 5, 5});
}

// What the second heading would win and give up.
void gained_and_lost(Sketch& s) {
  const auto& t = s.theme();
  column(s, -136.0f, 150.0, "82°", true, {5, 2, 5, 5});
  s.text({34.0f, -38.0f}, "+2", Face::Second, t.accent, Align::Left);
  s.text({34.0f, 26.0f}, "–1", Face::Second, t.ink, Align::Left);
  s.hand({-32.0f, 12.0f});
}

// Keys of a TV's remote control, and a sheet beside a plain compass.
void enter_and_paper(Sketch& s) {
  const auto& t = s.theme();
  s.tv({-136.0f, -108.0f, -10.0f, -20.0f});
  s.text({-73.0f, -48.0f}, "RF 9", Face::Value, t.ink);
  const Rect remote{-104.0f, 18.0f, -42.0f, 114.0f};
  s.fill(remote, t.paper, 12.0f);
  s.outline(remote, t.ink, 4.0f, 12.0f);
  for (int key = 0; key < 9; ++key) {
    s.disc(
        {-88.0f + 15.0f * static_cast<float>(key % 3), 40.0f + 18.0f * static_cast<float>(key / 3)},
        5.0f, key == 8 ? t.accent : t.ink);
  }
  const Rect page{18.0f, -100.0f, 134.0f, 58.0f};
  s.fill(page, t.paper);
  s.outline(page, t.ink, 4.0f);
  const Point center{76.0f, -46.0f};
  s.circle(center, 36.0f, t.ink, 3.0f);
  s.arrow(center, ui::around(center, 34.0f, 40.0), t.ink, 5.0f);
  for (const float y : {14.0f, 32.0f}) s.line({34.0f, y}, {118.0f, y}, t.ink, 4.0f);
  s.disc({112.0f, 78.0f}, 34.0f, t.panel);
  s.circle({112.0f, 78.0f}, 30.0f, t.ink, 4.0f);
  s.kite({112.0f, 78.0f}, 20.0f, false, 24.0);
}

// Ground between the rig and the tower, with a ridge on the way.
constexpr float kGroundLeft = -138.0f, kGroundRight = 138.0f;
float ground_at(float x) {
  const float ridge = 52.0f * std::exp(-std::pow((x + 14.0f) / 26.0f, 2.0f));
  const float slope = 58.0f / (1.0f + std::exp(-(x - 86.0f) / 14.0f));
  return 84.0f - ridge - slope - 5.0f * std::sin(x / 17.0f);
}

void ground(Sketch& s) {
  const auto& t = s.theme();
  std::vector<Point> line;
  for (float x = kGroundLeft; x <= kGroundRight; x += 4.0f) {
    const std::array strip{s.at(x, ground_at(x)), s.at(x + 4.0f, ground_at(x + 4.0f)),
                           s.at(x + 4.0f, 112.0f), s.at(x, 112.0f)};
    s.ui().canvas().solid(strip, t.rule);
    line.push_back({x, ground_at(x)});
  }
  s.curve(line, t.ink, 4.0f);
  s.tower({122.0f, ground_at(122.0f)}, 68.0f);
}

Point rig_end() {
  return {-104.0f, ground_at(-104.0f) - 30.0f};
}
Point tower_end() {
  return {122.0f, ground_at(122.0f) - 68.0f};
}

void little_rig(Sketch& s) {
  const auto& t = s.theme();
  const float floor = ground_at(-112.0f) - 6.0f;
  const Rect body{-136.0f, floor - 24.0f, -92.0f, floor};
  s.fill(body, t.paper, 4.0f);
  s.outline(body, t.ink, 3.5f, 4.0f);
  s.disc({-126.0f, floor + 1.0f}, 6.0f, t.ink);
  s.disc({-102.0f, floor + 1.0f}, 6.0f, t.ink);
}

void left_and_right(Sketch& s) {
  const auto& t = s.theme();
  ground(s);
  little_rig(s);
  s.line(rig_end(), tower_end(), t.accent, 4.0f);
  s.disc(rig_end(), 7.0f, t.accent);
  s.arrow({-56.0f, -6.0f}, {-56.0f, -62.0f}, t.ink, 5.0f);
  s.line({-68.0f, -2.0f}, {-44.0f, -2.0f}, t.ink, 4.0f);
}

// The room of the signal, a long ellipse; the ridge within it.
void lens(Sketch& s) {
  const auto& t = s.theme();
  const Point a = rig_end(), b = tower_end();
  const float length = std::hypot(b.x - a.x, b.y - a.y);
  const Point along{(b.x - a.x) / length, (b.y - a.y) / length}, across{-along.y, along.x};
  std::vector<Point> edge, placed;
  for (int step = 0; step < 48; ++step) {
    const float turn = 2.0f * std::numbers::pi_v<float> * static_cast<float>(step) / 48.0f;
    const float far = 0.5f * length * (1.0f + std::cos(turn)), wide = 27.0f * std::sin(turn);
    edge.push_back({a.x + far * along.x + wide * across.x, a.y + far * along.y + wide * across.y});
    placed.push_back(s.at(edge.back().x, edge.back().y));
  }
  edge.push_back(edge.front());
  s.ui().canvas().polygon(placed, t.lobe);
  ground(s);
  for (float x = -32.0f; x <= 4.0f; x += 3.0f) {
    const float lower = a.y + (x - a.x) * along.y / along.x + 25.0f;
    if (ground_at(x) > lower) continue;
    const std::array strip{s.at(x, ground_at(x)), s.at(x + 3.0f, ground_at(x + 3.0f)),
                           s.at(x + 3.0f, lower), s.at(x, lower)};
    s.ui().canvas().solid(strip, t.warning);
  }
  s.curve(edge, t.accent, 3.5f);
  s.line(a, b, t.accent, 4.0f);
  little_rig(s);
  s.disc(a, 7.0f, t.accent);
}

// Bars that step back, one loss after another.
void losses(Sketch& s) {
  const auto& t = s.theme();
  constexpr float kZero = -92.0f;
  float right = 134.0f, y = -110.0f;
  s.fill({kZero, y, right, y + 26.0f}, t.accent);
  const std::array lost{74.0f, 50.0f, 26.0f, 16.0f};
  for (std::size_t i = 0; i < lost.size(); ++i) {
    y += 37.0f;
    const float left = right - lost[i];
    s.fill({kZero, y, left, y + 26.0f}, t.lobe);
    s.fill({left, y, right, y + 26.0f}, i == 1 ? t.warning : t.ink);
    right = left;
  }
  s.line({kZero, -116.0f}, {kZero, 116.0f}, t.ink, 4.0f);
  y += 40.0f;
  s.fill({kZero, y, right, y + 34.0f}, t.accent);
}

// What is left, with its doubt, over zero.
void left_over(Sketch& s) {
  const auto& t = s.theme();
  s.line({-92.0f, -96.0f}, {-92.0f, 84.0f}, t.ink, 5.0f);
  s.text({-92.0f, 114.0f}, "0 dB", Face::TextBold, t.ink);
  s.fill({-92.0f, -72.0f, 70.0f, -16.0f}, t.accent);
  s.line({28.0f, -44.0f}, {116.0f, -44.0f}, t.ink, 5.0f);
  for (const float x : {28.0f, 116.0f}) s.line({x, -62.0f}, {x, -26.0f}, t.ink, 5.0f);
  s.chance({-72.0f, 42.0f}, 180.0f, 5);
  s.arrow({-72.0f, 4.0f}, {112.0f, 4.0f}, t.ink, 5.0f);
}

}  // namespace

GuidePictures plan_pictures() {
  return {what_for, columns, gained_and_lost, enter_and_paper};
}

GuidePictures path_pictures() {
  return {left_and_right, lens, losses, left_over};
}

}  // namespace mastwise::screens
