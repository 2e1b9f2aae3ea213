#include "app/safety/draw_marks.hpp"

#include <array>
#include <cmath>
#include <vector>

// Each mark is drawn on a square of 88 units and scaled to the given one.
namespace mastwise {
namespace {

using ui::Color;
using ui::Point;

class MarkDrawing {
 public:
  MarkDrawing(ui::Ui& ui, ui::Rect square)
      : canvas_(ui.canvas()),
        ink_(ui.theme().ink),
        alarm_(ui.theme().warning),
        corner_{square.left, square.top},
        scale_(square.width() / 88.0f) {}

  void draw(safety::CautionMark mark);

 private:
  Point at(float x, float y) const { return {corner_.x + scale_ * x, corner_.y + scale_ * y}; }
  void line(float x1, float y1, float x2, float y2, Color color, float width = 5.0f) {
    canvas_.line(at(x1, y1), at(x2, y2), color, scale_ * width);
  }
  void lines(const std::vector<Point>& points, Color color, float width = 5.0f,
             bool closed = false) {
    std::vector<Point> placed;
    for (const Point& point : points) placed.push_back(at(point.x, point.y));
    canvas_.polyline(placed, color, scale_ * width, closed);
  }
  void shape(const std::vector<Point>& points, Color color) {
    std::vector<Point> placed;
    for (const Point& point : points) placed.push_back(at(point.x, point.y));
    canvas_.polygon(placed, color);
  }
  void disc(float x, float y, float radius, Color color) {
    canvas_.disc(at(x, y), scale_ * radius, color);
  }
  void ring(float x, float y, float radius, Color color, float width = 5.0f) {
    canvas_.circle(at(x, y), scale_ * radius, color, scale_ * width);
  }
  void arc(float x, float y, float radius, float from_deg, float to_deg, Color color,
           float width = 5.0f) {
    canvas_.arc(at(x, y), scale_ * radius, from_deg, to_deg, color, scale_ * width);
  }

  void eye();
  void sparks();
  void flag(float x, float y, float size);
  void bolt(float x, float y, float size);
  void cloud(float y);
  void ladder(float lean);
  void person(float x, float y);
  void falling();
  void wheel();
  void two_files();
  void half_hour();
  void antenna_down();
  void seats();

  ui::Canvas& canvas_;
  Color ink_, alarm_;
  Point corner_;
  float scale_;
};

void MarkDrawing::eye() {
  lines({{12, 20}, {30, 26}, {58, 26}, {76, 20}}, ink_, 4.0f);
  std::vector<Point> lid;
  constexpr int kSteps = 12;
  for (int i = 0; i <= 2 * kSteps; ++i) {
    const float turn = 3.14159f * static_cast<float>(i) / kSteps;
    const float up = std::sin(turn);
    lid.push_back({44.0f - 26.0f * std::cos(turn), 58.0f - 16.0f * up});
  }
  lines(lid, ink_, 4.5f, true);
  disc(44, 56, 9, ink_);
}

void MarkDrawing::sparks() {
  disc(44, 44, 9, ink_);
  for (int i = 0; i < 8; ++i) {
    const float turn_deg = 45.0f * static_cast<float>(i);
    const auto ray = [&](float radius, float aside) {
      return ui::around({44, 44}, radius, turn_deg + aside);
    };
    lines({ray(17, 0), ray(24, 14), ray(26, -8), ray(36, 2)}, alarm_, 3.5f);
  }
}

void MarkDrawing::flag(float x, float y, float size) {
  line(x, y, x, y + 2.6f * size, ink_);
  shape({{x, y},
         {x + 1.9f * size, y + 0.3f * size},
         {x + 1.9f * size, y + 0.75f * size},
         {x, y + 1.1f * size}},
        ink_);
}

void MarkDrawing::bolt(float x, float y, float size) {
  shape({{x + 0.5f * size, y},
         {x + 0.9f * size, y},
         {x + 0.45f * size, y + 0.6f * size},
         {x, y + 0.6f * size}},
        alarm_);
  shape({{x + 0.35f * size, y + 0.45f * size},
         {x + 0.85f * size, y + 0.45f * size},
         {x + 0.1f * size, y + 1.2f * size}},
        alarm_);
}

void MarkDrawing::cloud(float y) {
  disc(30, y, 13, ink_);
  disc(46, y - 8, 16, ink_);
  disc(61, y + 1, 11, ink_);
  shape({{28, y + 13}, {28, y}, {62, y}, {62, y + 12}}, ink_);
}

void MarkDrawing::ladder(float lean) {
  const auto rail = [&](float offset) {
    line(20 + offset, 76, 20 + offset + lean, 12, ink_, 4.5f);
  };
  rail(0);
  rail(18);
  for (const float up : {0.15f, 0.38f, 0.61f, 0.84f}) {
    line(20 + lean * up, 76 - 64 * up, 38 + lean * up, 76 - 64 * up, ink_, 4.0f);
  }
}

void MarkDrawing::person(float x, float y) {
  disc(x, y, 6.5f, alarm_);
  line(x, y + 8, x, y + 26, alarm_);
  line(x - 9, y + 16, x + 9, y + 16, alarm_, 4.5f);
  line(x, y + 26, x - 7, y + 40, alarm_);
  line(x, y + 26, x + 7, y + 40, alarm_);
}

void MarkDrawing::falling() {
  line(8, 78, 80, 78, ink_, 4.0f);
  line(40, 76, 66, 32, ink_, 6.5f);
  line(52, 22, 80, 42, ink_, 6.5f);
  for (const float turn : {-4.0f, 14.0f, 32.0f}) arc(40, 78, 60, turn - 16, turn - 6, ink_, 3.5f);
  person(18, 36);
}

void MarkDrawing::wheel() {
  ring(40, 50, 26, ink_, 6.0f);
  disc(40, 50, 7, ink_);
  line(40, 50, 16, 46, ink_);
  line(40, 50, 64, 46, ink_);
  line(40, 50, 40, 74, ink_);
  line(58, 30, 66, 18, alarm_, 3.5f);
  shape({{58, 10}, {78, 10}, {78, 38}, {58, 38}}, alarm_);
}

void MarkDrawing::two_files() {
  lines({{14, 16}, {46, 16}, {46, 58}, {14, 58}}, ink_, 4.5f, true);
  shape({{36, 30}, {72, 30}, {72, 76}, {36, 76}}, ink_);
}

void MarkDrawing::half_hour() {
  ring(44, 44, 30, ink_);
  canvas_.sector(at(44, 44), scale_ * 24, 0.0f, 180.0f, alarm_, 1.0f);
  line(44, 44, 44, 20, ink_);
  line(44, 44, 44, 62, ink_);
}

void MarkDrawing::antenna_down() {
  lines({{8, 56}, {80, 56}}, ink_, 6.0f);
  line(24, 52, 56, 44, ink_);
  line(34, 40, 74, 40, ink_, 7.0f);
  line(50, 10, 50, 24, alarm_);
  shape({{40, 20}, {60, 20}, {50, 34}}, alarm_);
  line(20, 64, 68, 64, ink_, 3.0f);
}

void MarkDrawing::seats() {
  disc(28, 28, 9, ink_);
  shape({{16, 42}, {40, 42}, {40, 74}, {16, 74}}, ink_);
  disc(60, 28, 9, alarm_);
  shape({{48, 42}, {72, 42}, {72, 74}, {48, 74}}, alarm_);
}

void MarkDrawing::draw(safety::CautionMark mark) {
  using Mark = safety::CautionMark;
  switch (mark) {
    case Mark::LookUp:
      return eye();
    case Mark::LiveLine:
      return sparks();
    case Mark::WindAndBolt:
      flag(18, 16, 22);
      return bolt(46, 46, 26);
    case Mark::Falling:
      return falling();
    case Mark::Rain:
      cloud(32);
      for (const float x : {28.0f, 44.0f, 60.0f}) line(x, 54, x - 8, 74, alarm_);
      return;
    case Mark::Ladder:
      return ladder(16);
    case Mark::ThreePoints:
      ladder(8);
      for (const Point& hold : {Point{26, 32}, Point{46, 32}, Point{26, 62}}) {
        disc(hold.x, hold.y, 8, alarm_);
      }
      return;
    case Mark::Wind:
      return flag(20, 14, 26);
    case Mark::Storm:
      cloud(36);
      line(18, 66, 60, 66, alarm_);
      return shape({{56, 54}, {56, 78}, {74, 66}}, alarm_);
    case Mark::Thunder:
      cloud(30);
      return bolt(34, 48, 28);
    case Mark::HalfHour:
      return half_hour();
    case Mark::Down:
      return antenna_down();
    case Mark::Tag:
      return wheel();
    case Mark::Stowed:
      line(12, 30, 76, 30, ink_);
      line(12, 54, 76, 54, ink_);
      for (const float x : {22.0f, 37.0f, 52.0f, 67.0f}) line(x, 30, x, 54, ink_, 4.0f);
      return;
    case Mark::Passenger:
      return seats();
    case Mark::Files:
      return two_files();
  }
}

}  // namespace

void draw_caution_mark(ui::Ui& ui, ui::Rect square, safety::CautionMark mark) {
  constexpr float kRadius = 12.0f, kEdge = 3.0f;
  ui.canvas().fill(square, ui.theme().panel, kRadius);
  ui.canvas().outline(square.inset(kEdge / 2.0f), ui.theme().ink, kEdge, kRadius);
  MarkDrawing(ui, square).draw(mark);
}

}  // namespace mastwise
