#include "app/path/draw_frame.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

constexpr float kTowerRoom = 64.0f;
constexpr double kWithWords = 1.7;  // of the range, with room for words

}  // namespace

ui::Rect path_plot(ui::Rect area) {
  return {area.left + kHeightsAxis + kPathRigRoom, area.top + 16.0f, area.right - kTowerRoom,
          area.bottom - kDistanceAxis};
}

PathFrame::PathFrame(ui::Rect area, const reception::PathPicture& picture)
    : plot_(path_plot(area)), distance_m_(picture.distance_m) {
  double highest_m = -1e9;
  const auto include = [&](const std::optional<double>& height_m) {
    if (!height_m) return;
    lowest_m_ = std::min(lowest_m_, *height_m);
    highest_m = std::max(highest_m, *height_m);
  };
  for (const reception::PicturePoint& point : picture.points) {
    include(point.ground_m);
    include(point.line_m);
    if (point.line_m && point.fresnel_m) include(2.0 * *point.line_m - *point.fresnel_m);
  }
  range_m_ = std::max(40.0, highest_m - lowest_m_);
  lowest_m_ -= 0.1 * range_m_;
}

double PathFrame::height_m() const {
  return kWithWords * range_m_;
}

ui::Point PathFrame::at(double distance_m, double height_m) const {
  const double along = distance_m / distance_m_;
  const double up = (height_m - lowest_m_) / this->height_m();
  return {plot_.left + static_cast<float>(along) * plot_.width(),
          plot_.bottom - static_cast<float>(up) * plot_.height()};
}

double PathFrame::exaggeration() const {
  return (distance_m_ / static_cast<double>(plot_.width())) /
         (height_m() / static_cast<double>(plot_.height()));
}

double nice_step(double range, double most) {
  const double rough = range / most;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (times * power >= rough) return times * power;
  }
  return 10.0 * power;
}

std::string grouped(double number) {
  const auto whole = static_cast<long>(std::lround(number));
  if (std::labs(whole) < 1000) return std::to_string(whole);
  return fmt::format("{},{:03}", whole / 1000, std::labs(whole) % 1000);
}

}  // namespace mastwise::screens
