#include "app/path/draw_picture.hpp"

#include "app/path/draw_frame.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/signals.hpp"
#include "app/words/units.hpp"
#include "core/reception/obstacles.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using reception::PathPicture;
using reception::PicturePoint;
using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;

class PathDrawing {
 public:
  PathDrawing(ui::Ui& ui, Rect area, const PathView& view)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        frame_(area, view.picture),
        plot_(frame_.plot()),
        view_(view),
        picture_(view.picture) {}
  void draw();

 private:
  Point at(double distance_m, double height_m) const { return frame_.at(distance_m, height_m); }
  double bulge_at(double distance_m) const {
    return reception::bulge_m(distance_m, picture_.distance_m - distance_m);
  }
  void levels();
  void zone();
  void ground();
  void hatch(Rect stretch);
  void intrusion(const reception::PictureObstacle& obstacle);
  void ray();
  void ends();
  void obstacles();
  void zone_words();
  void distances();

  ui::Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  PathFrame frame_;
  Rect plot_;
  const PathView& view_;
  const PathPicture& picture_;
  std::vector<Rect> words_ = {};  // where the obstacles' are
};

// Lines of one height above the sea: they bend with the earth.
void PathDrawing::levels() {
  const double unit_m = view_.miles ? words::kFoot_m : 1.0;
  const double least = frame_.lowest_m() / unit_m, range = frame_.range_m() / unit_m;
  const double step = nice_step(range, 3.0);
  const double most = least + 1.2 * range;
  float last = area_.bottom;
  for (double level = std::ceil(least / step) * step; level < most; level += step) {
    std::vector<Point> line;
    for (int i = 0; i <= 24; ++i) {
      const double along_m = picture_.distance_m * i / 24.0;
      line.push_back(at(along_m, level * unit_m + bulge_at(along_m)));
    }
    line.insert(line.begin(), {area_.left + kHeightsAxis, line.front().y});
    canvas_.polyline(line, theme_.rule, 2.0f);
    canvas_.text({area_.left + kHeightsAxis - 8.0f, line.front().y + 9.0f}, grouped(level),
                 Face::Text, theme_.second_ink, Align::Right);
    last = line.front().y;
  }
  const float unit_line = std::max(area_.top + 30.0f, last - 24.0f);
  if (unit_line < last - 20.0f) {
    canvas_.text({area_.left + kHeightsAxis - 8.0f, unit_line},
                 view_.miles ? words::say("feet") : words::say("meters"), Face::Text,
                 theme_.second_ink, Align::Right);
  }
}

void PathDrawing::zone() {
  std::vector<Point> upper, lower;
  for (const PicturePoint& point : picture_.points) {
    if (!point.line_m || !point.fresnel_m) continue;
    upper.push_back(at(point.distance_m, 2.0 * *point.line_m - *point.fresnel_m));
    lower.push_back(at(point.distance_m, *point.fresnel_m));
  }
  for (std::size_t i = 1; i < upper.size(); ++i) {
    const std::array strip{upper[i - 1], upper[i], lower[i], lower[i - 1]};
    canvas_.solid(strip, theme_.lobe);
  }
  if (upper.empty()) return;
  canvas_.polyline(upper, theme_.accent, 2.0f);
  canvas_.polyline(lower, theme_.accent, 2.0f);
}

void PathDrawing::hatch(Rect stretch) {
  constexpr float kApart = 12.0f;
  canvas_.push_clip(stretch);
  const float rise = stretch.height();
  for (float x = stretch.left - rise; x < stretch.right; x += kApart) {
    canvas_.line({x, stretch.bottom}, {x + rise, stretch.top}, theme_.ink, 2.0f);
  }
  canvas_.pop_clip();
}

void PathDrawing::ground() {
  const auto& points = picture_.points;
  std::optional<double> last_known_m;
  for (const PicturePoint& point : points) {
    if (point.ground_m && !last_known_m) last_known_m = point.ground_m;
  }
  std::vector<Point> skyline;
  const auto finish = [&] {
    if (skyline.size() > 1) canvas_.polyline(skyline, theme_.ink, 3.0f);
    skyline.clear();
  };
  std::optional<Rect> gap;
  const auto finish_gap = [&] {
    if (gap) hatch(*gap);
    gap.reset();
  };
  for (std::size_t i = 1; i < points.size(); ++i) {
    const PicturePoint &a = points[i - 1], &b = points[i];
    if (a.ground_m) last_known_m = a.ground_m;
    if (a.ground_m && b.ground_m) {
      finish_gap();
      const Point from = at(a.distance_m, *a.ground_m), to = at(b.distance_m, *b.ground_m);
      const std::array stretch{from, to, Point{to.x, plot_.bottom}, Point{from.x, plot_.bottom}};
      canvas_.solid(stretch, theme_.rule);
      if (skyline.empty()) skyline.push_back(from);
      skyline.push_back(to);
      continue;
    }
    finish();
    const Point from = at(a.distance_m, last_known_m.value_or(picture_.stop_antenna_m));
    const float right = at(b.distance_m, 0.0).x;
    if (!gap) gap = Rect{from.x, from.y, right, plot_.bottom};
    gap->right = right;
  }
  finish();
  finish_gap();
}

// The ground that reaches into the zone around an obstacle.
void PathDrawing::intrusion(const reception::PictureObstacle& obstacle) {
  const auto& points = picture_.points;
  const auto inside = [&](const PicturePoint& point) {
    return point.ground_m && point.fresnel_m && *point.ground_m > *point.fresnel_m;
  };
  std::size_t middle = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const auto off_m = [&](std::size_t k) {
      return std::fabs(points[k].distance_m - obstacle.obstacle.distance_m);
    };
    if (off_m(i) < off_m(middle)) middle = i;
  }
  // Down either side to the next dip, or to where little of it reaches into the zone.
  const auto into_m = [&](std::size_t i) { return *points[i].ground_m - *points[i].fresnel_m; };
  if (!inside(points[middle])) return;
  const double dip_m = 0.05 * frame_.range_m(), least_m = 0.25 * into_m(middle);
  const auto foot = [&](int step) {
    double lowest_m = *points[middle].ground_m;
    std::size_t at = middle;
    for (std::size_t next = middle + static_cast<std::size_t>(step);
         next < points.size() && inside(points[next]) && into_m(next) > least_m;
         next += static_cast<std::size_t>(step)) {
      if (*points[next].ground_m > lowest_m + dip_m) break;
      lowest_m = std::min(lowest_m, *points[next].ground_m);
      at = next;
    }
    return at;
  };
  const std::size_t first = foot(-1), last = foot(1);
  for (std::size_t i = first + 1; i <= last; ++i) {
    const PicturePoint &a = points[i - 1], &b = points[i];
    if (!inside(a) || !inside(b)) continue;
    const std::array stretch{at(a.distance_m, *a.ground_m), at(b.distance_m, *b.ground_m),
                             at(b.distance_m, *b.fresnel_m), at(a.distance_m, *a.fresnel_m)};
    canvas_.solid(stretch, theme_.warning);
  }
}

void PathDrawing::ray() {
  if (!picture_.station_antenna_m) return;
  const Point from = at(0.0, picture_.stop_antenna_m);
  const Point to = at(picture_.distance_m, *picture_.station_antenna_m);
  canvas_.line(from, to, theme_.accent, 4.0f);
  canvas_.disc(from, 7.0f, theme_.accent);
  canvas_.disc(to, 7.0f, theme_.accent);
}

// The rig from the side at the near end, a tower at the far one; not to scale.
void PathDrawing::ends() {
  const auto& first = picture_.points.front().ground_m;
  const auto& last = picture_.points.back().ground_m;
  if (first) {
    const Point foot = at(0.0, *first);
    const std::array block{Point{foot.x - kPathRigRoom, foot.y}, Point{foot.x, foot.y},
                           Point{foot.x, plot_.bottom}, Point{foot.x - kPathRigRoom, plot_.bottom}};
    canvas_.solid(block, theme_.rule);
    canvas_.line(block[0], block[1], theme_.ink, 3.0f);
    const float left = foot.x - 62.0f, right = foot.x - 6.0f, top = foot.y - 30.0f;
    const std::array body{Point{left, top}, Point{right - 10.0f, top}, Point{right, top + 12.0f},
                          Point{right, foot.y - 7.0f}, Point{left, foot.y - 7.0f}};
    canvas_.polygon(body, theme_.panel);
    canvas_.polyline(body, theme_.ink, 3.0f, true);
    for (const float along : {0.25f, 0.72f}) {
      const Point wheel{left + along * (right - left), foot.y - 6.0f};
      canvas_.disc(wheel, 5.5f, theme_.ink);
    }
    canvas_.line({foot.x, foot.y}, at(0.0, picture_.stop_antenna_m), theme_.ink, 3.0f);
  }
  if (last && picture_.station_antenna_m) {
    const Point foot = at(picture_.distance_m, *last);
    const Point top = at(picture_.distance_m, *picture_.station_antenna_m);
    const std::array block{foot, Point{area_.right - 8.0f, foot.y},
                           Point{area_.right - 8.0f, plot_.bottom}, Point{foot.x, plot_.bottom}};
    canvas_.solid(block, theme_.rule);
    canvas_.line(block[0], block[1], theme_.ink, 3.0f);
    canvas_.line({foot.x - 7.0f, foot.y}, top, theme_.ink, 3.0f);
    canvas_.line({foot.x + 7.0f, foot.y}, top, theme_.ink, 3.0f);
  }
}

// The obstacle that costs most in large letters, the others on lower rows where there is room.
void PathDrawing::obstacles() {
  constexpr float kApart = 200.0f, kLine = 30.0f;
  std::vector<float> named;
  float row = area_.top + 40.0f;
  for (std::size_t i = 0; i < picture_.obstacles.size(); ++i) {
    const reception::PictureObstacle& obstacle = picture_.obstacles[i];
    intrusion(obstacle);
    const Point top = at(obstacle.obstacle.distance_m, obstacle.ground_m);
    canvas_.disc(top, 8.0f, theme_.warning);
    const WaterfallRow* step = nullptr;
    for (const WaterfallRow& each : view_.steps) {
      const bool in_the_way = each.step && (each.step->what == reception::SignalLoss::ridge ||
                                            each.step->what == reception::SignalLoss::earth_curve);
      if (in_the_way && each.step->distance_m == obstacle.obstacle.distance_m) step = &each;
    }
    if (step == nullptr) continue;
    const bool crowded = std::any_of(named.begin(), named.end(),
                                     [&](float x) { return std::fabs(x - top.x) < kApart; });
    if (crowded || row + kLine > top.y - 12.0f) continue;
    named.push_back(top.x);
    const bool to_left = top.x > plot_.center().x;
    const float x = top.x + (to_left ? -12.0f : 12.0f);
    const Align align = to_left ? Align::Right : Align::Left;
    canvas_.line(top, {top.x, row - 28.0f}, theme_.warning, 3.0f);
    const std::string cost = words::signed_db(-step->shown_db()) + " dB";
    const auto write = [&](float baseline, const std::string& text, Face face) {
      canvas_.text({x, baseline}, text, face, theme_.warning, align);
      const float width = canvas_.text_width(text, face) + 24.0f;
      words_.push_back({to_left ? top.x - width : top.x, row - 40.0f,
                        to_left ? top.x + 4.0f : top.x + width, baseline + 8.0f});
    };
    if (named.size() > 1) {
      write(row - 6.0f, cost, Face::TextBold);
      continue;
    }
    write(row, cost, Face::Matter);
    const std::string what =
        obstacle.obstacle.earth_curve
            ? std::string(words::say("earth's curve"))
            : words::fill(
                  words::say("ridge, {distance}"),
                  {{"distance", words::distance(obstacle.obstacle.distance_m, view_.miles)}});
    if (row + kLine < top.y - 12.0f) write(row + kLine, what, Face::Text);
  }
}

// With a leader to the zone's upper edge, where there is room for both.
void PathDrawing::zone_words() {
  if (!picture_.station_antenna_m) return;
  const std::string words = words::say("room the signal needs");
  const float width = canvas_.text_width(words, Face::Text);
  const float baseline = area_.top + 34.0f;
  for (const double share : {0.62, 0.7, 0.52, 0.4, 0.3, 0.2}) {
    const double along_m = share * picture_.distance_m;
    double edge_m = 0.0;
    bool hidden = false;
    for (const PicturePoint& point : picture_.points) {
      if (point.distance_m <= along_m && point.line_m && point.fresnel_m) {
        edge_m = 2.0 * *point.line_m - *point.fresnel_m;
        hidden = point.ground_m.value_or(edge_m - 1.0) >= edge_m;
      }
    }
    const Point edge = at(along_m, edge_m);
    const float left = std::clamp(edge.x - width / 2.0f, plot_.left, plot_.right - width);
    const bool taken = std::any_of(words_.begin(), words_.end(), [&](const Rect& other) {
      return left < other.right + 16.0f && left + width > other.left - 16.0f;
    });
    if (taken || hidden || edge.y < baseline + 24.0f) continue;
    canvas_.text({left, baseline}, words, Face::Text, theme_.accent);
    canvas_.line({edge.x, baseline + 8.0f}, {edge.x, edge.y + 6.0f}, theme_.accent, 2.5f);
    return;
  }
}

void PathDrawing::distances() {
  const float baseline = area_.bottom - 12.0f;
  canvas_.line({area_.left + kHeightsAxis, plot_.bottom}, {area_.right - 8.0f, plot_.bottom},
               theme_.ink, 3.0f);
  const auto tick = [&](float x) {
    canvas_.line({x, plot_.bottom}, {x, plot_.bottom + 8.0f}, theme_.ink, 3.0f);
  };
  tick(plot_.left);
  tick(plot_.right);
  const std::string here = words::say("here");
  const std::string tower =
      words::fill(words::say("tower, {distance}"),
                  {{"distance", words::distance(picture_.distance_m, view_.miles)}});
  canvas_.text({plot_.left, baseline}, here, Face::TextBold, theme_.ink, Align::Center);
  canvas_.text({area_.right - 8.0f, baseline}, tower, Face::TextBold, theme_.ink, Align::Right);
  const float first = plot_.left + canvas_.text_width(here, Face::TextBold) / 2.0f + 24.0f;
  const float last = area_.right - 32.0f - canvas_.text_width(tower, Face::TextBold);
  const double unit_m = words::distance_unit_m(view_.miles);
  const double step_m = nice_step(picture_.distance_m / unit_m, 4.0) * unit_m;
  for (double along_m = step_m; along_m < picture_.distance_m; along_m += step_m) {
    const std::string words = words::whole_distance(along_m, view_.miles);
    const float half = canvas_.text_width(words, Face::Text) / 2.0f;
    const float x = at(along_m, 0.0).x;
    if (x - half < first || x + half > last) continue;
    tick(x);
    canvas_.text({x, baseline}, words, Face::Text, theme_.ink, Align::Center);
  }
}

void PathDrawing::draw() {
  canvas_.fill(area_, theme_.panel, 12.0f);
  levels();
  zone();
  ground();
  ends();
  ray();
  obstacles();
  zone_words();
  distances();
}

}  // namespace

void draw_path_picture(ui::Ui& ui, Rect area, const PathView& view) {
  PathDrawing(ui, area, view).draw();
}

void draw_unknown_path(ui::Ui& ui, Rect area, const std::string& words) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  canvas.fill(area, theme.panel, 12.0f);
  const Rect plot = path_plot(area);
  const Point from{plot.left, plot.bottom - 12.0f}, to{plot.right, plot.top + 24.0f};
  constexpr int kDots = 48;
  for (int i = 1; i < kDots; ++i) {
    const float along = static_cast<float>(i) / kDots;
    const float bow = 0.22f * plot.height() * std::sqrt(along * (1.0f - along));
    const float x = from.x + along * (to.x - from.x), y = from.y + along * (to.y - from.y);
    canvas.disc({x, y - bow}, 2.5f, theme.accent);
    canvas.disc({x, y + bow}, 2.5f, theme.accent);
  }
  canvas.disc(from, 8.0f, theme.accent);
  canvas.circle(to, 8.0f, theme.accent, 3.0f);
  ui.paragraph({area.left + 24.0f, area.top + 44.0f}, 0.6f * area.width(), 34.0f, words,
               Face::Value, theme.ink);
}

double height_exaggeration(Rect area, const PathPicture& picture) {
  return PathFrame(area, picture).exaggeration();
}

}  // namespace mastwise::screens
