#include "app/touch/scroll.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::touch {
namespace {

// The time in which a glide slows to 1/e of its speed, and the invisible speed of a quarter of a
// pixel in a frame of 1/60 s. Common practice, no source.
constexpr float kDecayS = 0.325F;
constexpr float kRestPxS = 15.0F;

}  // namespace

void Scroll::set_extent(float content_px, float view_px) {
  greatest_px_ = std::max(0.0F, content_px - view_px);
  move_to(offset_px_);
}

// The glide stops at an end.
void Scroll::move_to(float offset_px) {
  offset_px_ = std::clamp(offset_px, 0.0F, greatest_px_);
  if (offset_px_ != offset_px) stop();
}

void Scroll::drag(float dy_px) {
  stop();
  move_to(offset_px_ - dy_px);
}

void Scroll::fling(float velocity_px_s) {
  velocity_px_s_ = std::fabs(velocity_px_s) > kRestPxS ? velocity_px_s : 0.0F;
}

void Scroll::apply(const Gesture& gesture) {
  if (gesture.kind == Gesture::Kind::Drag || gesture.kind == Gesture::Kind::Wheel) {
    drag(gesture.delta_px.y);
  } else if (gesture.kind == Gesture::Kind::Fling) {
    fling(gesture.velocity_px_s.y);
  }
}

bool Scroll::reveal(float top_px, float bottom_px, float view_top_px, float view_bottom_px) {
  const float before_px = offset_px_;
  const float below_px = std::max(0.0F, bottom_px - view_bottom_px);
  const float down_px = std::min(below_px, std::max(0.0F, top_px - view_top_px));
  const float up_px = std::min(0.0F, top_px - view_top_px);
  if (down_px > 0.0F || up_px < 0.0F) drag(-(down_px + up_px));
  return offset_px_ != before_px;
}

bool Scroll::advance(float seconds) {
  if (!moving() || seconds <= 0.0F) return moving();
  const float until_rest_s = kDecayS * std::log(std::fabs(velocity_px_s_) / kRestPxS);
  const float kept = std::exp(-std::min(seconds, until_rest_s) / kDecayS);
  const float way_px = velocity_px_s_ * kDecayS * (1.0F - kept);
  velocity_px_s_ = seconds < until_rest_s ? velocity_px_s_ * kept : 0.0F;
  move_to(offset_px_ - way_px);
  return moving();
}

}  // namespace mastwise::touch
