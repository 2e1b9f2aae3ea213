#include "app/ui/rig_side.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace mastwise::ui {
namespace {

// The body's outline as shares of length, from the tail, and of height over its floor.
struct Corner {
  float along, up;
};
constexpr std::array kBody{Corner{0.0f, 0.06f}, Corner{0.0f, 0.92f},  Corner{0.03f, 1.0f},
                           Corner{0.84f, 1.0f}, Corner{0.88f, 0.94f}, Corner{0.97f, 0.42f},
                           Corner{1.0f, 0.2f},  Corner{0.98f, 0.0f},  Corner{0.02f, 0.0f}};
constexpr std::array kWindscreen{Corner{0.81f, 0.74f}, Corner{0.895f, 0.74f}, Corner{0.945f, 0.4f},
                                 Corner{0.81f, 0.4f}};
constexpr float kFloor_m = 0.45f, kWheel_m = 0.42f, kMastAlong = 0.38f, kAntenna_m = 1.6f;

class Drawing {
 public:
  Drawing(Canvas& canvas, const RigProfile& rig) : canvas_(canvas), rig_(rig) {}

  float m(float meters) const { return meters * rig_.units_per_m; }
  float stroke() const { return std::clamp(m(0.11f), 3.0f, 7.0f); }
  // From the rig's middle toward its nose, and over the ground.
  Point at(float ahead_m, float up_m) const {
    const float side = rig_.nose_right ? 1.0f : -1.0f;
    return {rig_.ground.x + side * m(ahead_m), rig_.ground.y - m(up_m)};
  }
  Point on_body(Corner corner) const {
    const float high_m = rig_.roof_m - kFloor_m;
    return at((corner.along - 0.5f) * rig_.length_m, kFloor_m + corner.up * high_m);
  }
  template <class Corners>
  std::vector<Point> shape(const Corners& corners) const {
    std::vector<Point> points;
    for (const Corner& corner : corners) points.push_back(on_body(corner));
    return points;
  }
  Rect box(Corner from, Corner to) const {
    const Point a = on_body(from), b = on_body(to);
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
  }

  void body();
  void wheel(float along);
  void antenna();

 private:
  Canvas& canvas_;
  const RigProfile& rig_;
};

void Drawing::body() {
  const std::vector<Point> outline = shape(kBody);
  canvas_.polygon(outline, rig_.body);
  canvas_.polyline(outline, rig_.ink, stroke(), true);
  const std::vector<Point> glass = shape(kWindscreen);
  canvas_.polygon(glass, rig_.glass);
  canvas_.polyline(glass, rig_.ink, 0.6f * stroke(), true);
  const Rect window = box({0.14f, 0.78f}, {0.34f, 0.48f});
  canvas_.fill(window, rig_.glass, m(0.1f));
  canvas_.outline(window, rig_.ink, 0.6f * stroke(), m(0.1f));
  const Rect door = box({0.52f, 0.78f}, {0.65f, 0.02f});
  canvas_.outline(door, rig_.ink, 0.6f * stroke(), m(0.08f));
}

void Drawing::wheel(float along) {
  const Point hub = at((along - 0.5f) * rig_.length_m, kWheel_m);
  canvas_.disc(hub, m(kWheel_m), rig_.ink);
  canvas_.disc(hub, m(0.4f * kWheel_m), rig_.glass);
}

void Drawing::antenna() {
  const float width = std::max(3.0f, 0.8f * stroke());
  const float mast_m = (kMastAlong - 0.5f) * rig_.length_m;
  const Point foot = at(mast_m, rig_.roof_m);
  const float half_m = 0.5f * kAntenna_m;
  const auto folded = [&] {
    canvas_.line(foot, at(mast_m + 1.0f, rig_.roof_m + 0.16f), rig_.ink, width);
    canvas_.line(at(mast_m + 0.2f, rig_.roof_m + 0.24f), at(mast_m + 1.8f, rig_.roof_m + 0.24f),
                 rig_.ink, 1.6f * width);
  };
  const auto dashes = [&](Point from, Point to, float thick) {
    constexpr int kDashes = 4;
    for (int i = 0; i < kDashes; ++i) {
      const float begin = static_cast<float>(i) / kDashes, end = begin + 0.6f / kDashes;
      canvas_.line(from + (to - from) * begin, from + (to - from) * end, rig_.ink, thick);
    }
  };
  const Point top = at(mast_m, rig_.raised_m);
  const Point left = at(mast_m - half_m, rig_.raised_m), right = at(mast_m + half_m, rig_.raised_m);
  if (rig_.antenna == RigProfile::Antenna::Raised) {
    canvas_.line(foot, top, rig_.ink, width);
    canvas_.line(left, right, rig_.ink, 2.2f * width);
  } else {
    folded();
  }
  if (rig_.antenna == RigProfile::Antenna::ToBeRaised) {
    dashes(foot, top, width);
    dashes(left, right, 2.2f * width);
  }
  canvas_.disc(foot, 1.4f * width, rig_.ink);
}

}  // namespace

float usual_roof_m(double raised_m) {
  constexpr double kUsual_m = 3.3, kLeastMast_m = 0.5, kLowest_m = 2.2;
  return static_cast<float>(std::max(kLowest_m, std::min(kUsual_m, raised_m - kLeastMast_m)));
}

Point rig_mast(const RigProfile& rig) {
  const float side = rig.nose_right ? 1.0f : -1.0f;
  return {rig.ground.x + side * (kMastAlong - 0.5f) * rig.length_m * rig.units_per_m,
          rig.ground.y - rig.roof_m * rig.units_per_m};
}

Point rig_antenna_end(const RigProfile& rig) {
  return {rig_mast(rig).x + 0.5f * kAntenna_m * rig.units_per_m,
          rig.ground.y - rig.raised_m * rig.units_per_m};
}

void draw_rig_side(Canvas& canvas, const RigProfile& rig) {
  Drawing drawing(canvas, rig);
  drawing.antenna();
  drawing.body();
  drawing.wheel(0.22f);
  drawing.wheel(0.8f);
}

}  // namespace mastwise::ui
