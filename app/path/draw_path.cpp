#include "app/path/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/layout.hpp"
#include "app/words/chances.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// The path from the stop to the station: the ground on an earth of 4/3 radius, the ray, the part
// of the first Fresnel zone that should be clear, and the obstacles.
namespace mastwise::screens {
namespace {

using reception::PathPicture;
using reception::PicturePoint;
using ui::Align;
using ui::Face;

class PathDrawing {
 public:
  PathDrawing(Ui& ui, Rect area, const PathPicture& picture, bool miles)
      : ui_(ui), canvas_(ui.canvas()), area_(area), picture_(picture), miles_(miles) {
    find_heights();
  }
  void draw();

 private:
  void find_heights();
  Point at(double distance_m, double height_m) const {
    const double along = distance_m / picture_.distance_m;
    const double up = (height_m - lowest_m_) / (highest_m_ - lowest_m_);
    return {area_.left + static_cast<float>(along) * area_.width(),
            area_.bottom - static_cast<float>(up) * area_.height()};
  }
  void ground();
  void ray();
  void obstacles();
  void scale();

  Ui& ui_;
  ui::Canvas& canvas_;
  Rect area_;
  const PathPicture& picture_;
  bool miles_;
  double lowest_m_ = 1e9, highest_m_ = -1e9;
};

void PathDrawing::find_heights() {
  for (const PicturePoint& point : picture_.points) {
    for (const auto& height_m : {point.ground_m, point.line_m}) {
      lowest_m_ = std::min(lowest_m_, height_m.value_or(lowest_m_));
      highest_m_ = std::max(highest_m_, height_m.value_or(highest_m_));
    }
  }
  const double margin_m = std::max(20.0, 0.12 * (highest_m_ - lowest_m_));
  lowest_m_ -= margin_m;
  highest_m_ += margin_m;
}

void PathDrawing::ground() {
  const ui::Theme& theme = ui_.theme();
  const auto& points = picture_.points;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const PicturePoint &a = points[i - 1], &b = points[i];
    const Point left = at(a.distance_m, lowest_m_), right = at(b.distance_m, lowest_m_);
    if (a.ground_m && b.ground_m) {
      const std::array stretch{at(a.distance_m, *a.ground_m), at(b.distance_m, *b.ground_m), right,
                               left};
      canvas_.solid(stretch, theme.lobe);
      canvas_.line(stretch[0], stretch[1], theme.ink, 2.5f);
    } else {
      canvas_.line({left.x, left.y - 3.0f}, {right.x, right.y - 3.0f}, theme.warning, 6.0f);
    }
  }
}

void PathDrawing::ray() {
  const ui::Theme& theme = ui_.theme();
  std::vector<Point> fresnel, line;
  for (const PicturePoint& point : picture_.points) {
    if (!point.line_m || !point.fresnel_m) continue;
    fresnel.push_back(at(point.distance_m, *point.fresnel_m));
    line.push_back(at(point.distance_m, *point.line_m));
  }
  if (line.empty()) return;
  for (std::size_t i = 0; i + 1 < fresnel.size(); i += 4) {
    canvas_.line(fresnel[i], fresnel[std::min(i + 2, fresnel.size() - 1)], theme.second_ink, 2.0f);
  }
  canvas_.polyline(line, theme.accent, 3.5f);
  canvas_.disc(line.front(), 8.0f, theme.accent);
  canvas_.disc(line.back(), 8.0f, theme.accent);
  if (picture_.stop_clutter_m > 0.0 && picture_.points.front().ground_m) {
    const double foot_m = *picture_.points.front().ground_m;
    canvas_.line(at(0.0, foot_m), at(0.0, foot_m + picture_.stop_clutter_m), theme.second_ink,
                 10.0f);
  }
}

void PathDrawing::obstacles() {
  constexpr float kRow = 28.0f;
  constexpr float kApart = 40.0f;  // closer tops share the label of the worst
  float baseline = area_.top + 22.0f;
  std::vector<float> labeled;
  for (const reception::PictureObstacle& obstacle : picture_.obstacles) {
    const Point top = at(obstacle.obstacle.distance_m, obstacle.ground_m);
    const bool crowded = std::any_of(labeled.begin(), labeled.end(),
                                     [&](float x) { return std::fabs(x - top.x) < kApart; });
    if (crowded) continue;
    labeled.push_back(top.x);
    const bool right_half = top.x > area_.center().x;
    canvas_.line(top, {top.x, baseline + 6.0f}, ui_.theme().warning, 2.0f);
    canvas_.disc(top, 7.0f, ui_.theme().warning);
    canvas_.text({top.x + (right_half ? -10.0f : 10.0f), baseline},
                 words::obstacle(obstacle.obstacle, miles_), Face::SmallBold, ui_.theme().warning,
                 right_half ? Align::Right : Align::Left);
    baseline += kRow;
  }
}

void PathDrawing::scale() {
  const ui::Color ink = ui_.theme().second_ink;
  const float baseline = area_.bottom + 24.0f;
  canvas_.text({area_.left, baseline}, "here", Face::Small, ink);
  canvas_.text({area_.center().x, baseline}, words::distance(picture_.distance_m / 2.0, miles_),
               Face::Small, ink, Align::Center);
  canvas_.text({area_.right, baseline}, words::distance(picture_.distance_m, miles_), Face::Small,
               ink, Align::Right);
}

void PathDrawing::draw() {
  ground();
  ray();
  obstacles();
  scale();
}

// What the chance would gain without a reason; empty if nothing worth showing.
std::string gain_words(const reception::Reason& reason) {
  constexpr double kLeast_percent = 0.5;
  return reason.gain_percent < kLeast_percent ? std::string()
                                              : fmt::format("+{:.0f} %", reason.gain_percent);
}

// Every reason, then the sources of the station's facts.
void draw_reasons(Ui& ui, Rect area, const StationRow& row, std::chrono::local_days today,
                  bool miles) {
  float y = area.top + 24.0f;
  if (!row.reasons.empty() && !gain_words(row.reasons.front()).empty()) {
    ui.canvas().text({area.left, y}, "What the chance would gain without each:", Face::Small,
                     ui.theme().second_ink);
    y += 27.0f;
  }
  for (const reception::Reason& reason : row.reasons) {
    if (y > area.bottom - 8.0f) break;
    ui.canvas().text({area.left + 70.0f, y}, gain_words(reason), Face::WordBold, ui.theme().ink,
                     Align::Right);
    y = ui.paragraph({area.left + 86.0f, y}, area.width() - 86.0f, 27.0f,
                     words::sentence(words::reason(reason, miles)), Face::Word, ui.theme().ink) +
        4.0f;
  }
  const Provenance& from = row.station.provenance;
  if (y > area.bottom - 8.0f) return;
  ui.paragraph({area.left + 86.0f, y}, area.width() - 86.0f, 24.0f,
               fmt::format("From {}, line {}, {}", from.source.name, from.line,
                           words::data_age(from.source.date, today)),
               Face::Small, ui.theme().second_ink);
}

}  // namespace

void draw_path_sheet(Ui& ui, const Shared& shared) {
  const ui::Theme& theme = ui.theme();
  const Rect page = ui.screen().inset(ui::kMargin);
  const Rect close{page.right - 176.0f, page.top, page.right, page.top + 72.0f};
  if (ui.button("close sheet", close, "Done", ui::ButtonLook::Filled)) {
    ui.emit(act::OpenSheet{Sheet::None});
  }
  const StationRow* row = shared.stop.target && shared.stations
                              ? find_row(*shared.stations, key_of(*shared.stop.target))
                              : nullptr;
  if (row == nullptr || !row->outlook) {
    ui.canvas().text({page.left, page.top + 44.0f}, "No path yet", Face::Cardinal, theme.ink);
    return;
  }
  // Below the word PRACTICE on an upright screen.
  const Rect carries{close.left - 16.0f - 176.0f, page.top + 4.0f, close.left - 16.0f,
                     close.bottom};
  if (ui.button("carries", carries, "Carries", ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::Carries});
  }
  const reception::Outlook& outlook = *row->outlook;
  ui.canvas().text({page.left, page.top + 34.0f}, words::title(row->station), Face::Cardinal,
                   theme.ink);
  ui.canvas().text({page.left, page.top + 68.0f}, words::models(outlook), Face::Word,
                   theme.second_ink);
  const float split = page.top + 0.58f * page.height();
  const Rect picture{page.left, page.top + 104.0f, page.right, split - 32.0f};
  if (shared.stations->target_path) {
    PathDrawing(ui, picture, *shared.stations->target_path, shared.settings.miles).draw();
  } else {
    ui.canvas().text({picture.left, picture.center().y}, "No terrain for this path", Face::Value,
                     theme.warning);
  }
  draw_reasons(ui, {page.left, split + 16.0f, page.right, page.bottom}, *row, shared.findings.today,
               shared.settings.miles);
}

}  // namespace mastwise::screens
