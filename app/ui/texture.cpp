#include "app/ui/texture.hpp"

#include <cmath>

namespace mastwise::ui {

void hatch(Canvas& canvas, Rect rect, Color color, float apart, float width) {
  canvas.push_clip(rect);
  const float step = apart * 1.414f, height = rect.height();
  // From the screen's origin, so that neighbors have one pattern.
  const float first = std::floor((rect.left - rect.bottom) / step) * step;
  for (float at = first; at < rect.right - rect.top; at += step) {
    // The line x - y = at, within the rectangle's rows.
    canvas.line({at + rect.top, rect.top}, {at + rect.top + height, rect.bottom}, color, width);
  }
  canvas.pop_clip();
}

void dotted(Canvas& canvas, Point from, Point to, Color color, float width) {
  const float dot = 2.0f * width, step = 2.0f * dot;
  const float length = std::hypot(to.x - from.x, to.y - from.y);
  if (length == 0.0f) return;
  const Point along{(to.x - from.x) / length, (to.y - from.y) / length};
  for (float at = 0.0f; at < length; at += step) {
    const float end = std::min(length, at + dot);
    canvas.line({from.x + at * along.x, from.y + at * along.y},
                {from.x + end * along.x, from.y + end * along.y}, color, width);
  }
}

void dotted(Canvas& canvas, Rect rect, Color color, float width) {
  dotted(canvas, {rect.left, rect.top}, {rect.right, rect.top}, color, width);
  dotted(canvas, {rect.right, rect.top}, {rect.right, rect.bottom}, color, width);
  dotted(canvas, {rect.right, rect.bottom}, {rect.left, rect.bottom}, color, width);
  dotted(canvas, {rect.left, rect.bottom}, {rect.left, rect.top}, color, width);
}

}  // namespace mastwise::ui
