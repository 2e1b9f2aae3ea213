#include "app/ui/chance_mark.hpp"
#include "app/ui/dial.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

// The stations around the rim of the dial, named in the corners that a circle leaves of its room.
namespace mastwise::ui {
namespace {

constexpr float kLine = 34.0f;
constexpr std::size_t kLines = 3;  // in a corner

class Labels {
 public:
  Labels(Ui& ui, const DialView& view)
      : canvas_(ui.canvas()), theme_(ui.theme()), look_(ui.look()), view_(view) {}

  void draw() {
    std::vector<const DialView::Mark*> shown;
    for (const DialView::Mark& mark : view_.others) {
      if (crowds(mark, shown)) continue;
      shown.push_back(&mark);
    }
    // Marks high on the screen take the upper lines, so that no line crosses another.
    std::sort(shown.begin(), shown.end(),
              [&](const auto* a, const auto* b) { return height_off(*a) > height_off(*b); });
    for (const DialView::Mark* mark : shown) label(*mark);
    for (const DialView::Mark* mark : shown) draw_mark(*mark);
  }

 private:
  Point at(const DialView::Mark& mark) const {
    return around(view_.center, view_.radius, (mark.bearing - view_.up).clockwise_deg());
  }
  // How far from the middle toward the upper or lower edge.
  float height_off(const DialView::Mark& mark) const {
    return std::fabs(at(mark).y - view_.center.y);
  }

  bool crowds(const DialView::Mark& mark, const std::vector<const DialView::Mark*>& shown) const {
    constexpr double kApart_deg = 9.0;
    const auto near = [&](Bearing<True> other) {
      return (other - mark.bearing).size_deg() < kApart_deg;
    };
    return (view_.target && near(*view_.target)) ||
           std::any_of(shown.begin(), shown.end(),
                       [&](const auto* other) { return near(other->bearing); });
  }

  // The next free line of the mark's corner, where the words fit beside the dial.
  void label(const DialView::Mark& mark) {
    const Point rim = at(mark);
    const bool left = rim.x < view_.center.x, upper = rim.y < view_.center.y;
    std::size_t& used = used_[(left ? 0 : 1) + (upper ? 0 : 2)];
    for (std::size_t line = used; line < kLines; ++line) {
      const float off = 20.0f + kLine * static_cast<float>(line);
      const float y = upper ? view_.room.top + off : view_.room.bottom - off + 16.0f;
      const float width = room_at(y, left) - 26.0f;
      const std::string* words = canvas_.text_width(mark.label, Face::Text) <= width ? &mark.label
                                 : canvas_.text_width(mark.short_label, Face::Text) <= width
                                     ? &mark.short_label
                                     : nullptr;
      if (words == nullptr) continue;
      used = line + 1;
      write(*words, y, left, rim);
      return;
    }
  }

  // The width beside the dial and its tolerance at a height on the screen.
  float room_at(float y, bool left) const {
    const float reach = view_.radius + kDialMargin;
    const float up = std::min(std::fabs(y - view_.center.y), std::fabs(y - 20.0f - view_.center.y));
    const float half = up >= reach ? 0.0f : std::sqrt(reach * reach - up * up);
    return left ? view_.center.x - half - view_.room.left
                : view_.room.right - view_.center.x - half;
  }

  void write(const std::string& words, float y, bool left, Point rim) {
    const float edge = left ? view_.room.left : view_.room.right;
    const float width = canvas_.text_width(words, Face::Text);
    canvas_.text({edge, y}, words, Face::Text, theme_.ink, left ? Align::Left : Align::Right);
    // A mark at the side is reached along the edge, so that the line keeps clear of the dial.
    constexpr float kSide = 0.62f;
    const float inward = left ? 1.0f : -1.0f;
    const bool at_side = std::fabs(rim.y - view_.center.y) < kSide * view_.radius;
    const bool upper = y < view_.center.y;
    const Point from = at_side ? Point{edge + 6.0f * inward, upper ? y + 10.0f : y - 28.0f}
                               : Point{edge + (width + 8.0f) * inward, y - 9.0f};
    const std::array line{from, at_side ? Point{from.x, rim.y} : from, rim};
    canvas_.polyline(line, theme_.ink, 1.8f);
  }

  // The list's five segments around a middle that is filled if the station is pinned.
  void draw_mark(const DialView::Mark& mark) {
    const Point point = at(mark);
    draw_chance_ring(canvas_, theme_, look_, point, mark.chance_percent);
    if (mark.wanted) canvas_.disc(point, 6.0f, theme_.accent);
  }

  Canvas& canvas_;
  const Theme& theme_;
  Look look_;
  const DialView& view_;
  std::array<std::size_t, 4> used_{};
};

}  // namespace

void draw_dial_labels(Ui& ui, const DialView& view) {
  Labels(ui, view).draw();
}

}  // namespace mastwise::ui
