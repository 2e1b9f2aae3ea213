#include "app/ui/chance_mark.hpp"
#include "app/ui/dial.hpp"
#include "app/ui/dial_label_places.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

// The stations around the rim of the dial, named in the corners that a circle leaves of its room.
namespace mastwise::ui {
namespace {

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
    // Marks high on the screen have the first choice of the upper lines.
    std::sort(shown.begin(), shown.end(),
              [&](const auto* a, const auto* b) { return height_off(*a) > height_off(*b); });
    std::vector<DialLabelWish> wishes;
    for (const DialView::Mark* mark : shown) {
      wishes.push_back({at(*mark), canvas_.text_width(mark->label, Face::Text),
                        canvas_.text_width(mark->short_label, Face::Text)});
    }
    const DialRoom room{view_.center, view_.radius, view_.radius + kDialMargin, view_.room};
    const auto places = place_dial_labels(room, wishes, tolerance_words());
    for (std::size_t i = 0; i < shown.size(); ++i) {
      if (places[i]) label(*shown[i], *places[i]);
    }
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

  // The tolerance's degrees, which are drawn already.
  std::vector<Rect> tolerance_words() const {
    constexpr float kUp = 14.0f, kDown = 12.0f;
    std::vector<Rect> words;
    for (const ToleranceEnd& end : tolerance_ends(view_)) {
      const float half = canvas_.text_width(end.words, Face::TextBold) / 2.0f;
      words.push_back({end.at.x - half, end.at.y - kUp, end.at.x + half, end.at.y + kDown});
    }
    return words;
  }

  void label(const DialView::Mark& mark, const DialLabelPlace& place) {
    const std::string& words = place.is_short ? mark.short_label : mark.label;
    canvas_.text({place.left ? place.words.left : place.words.right, place.baseline}, words,
                 Face::Text, theme_.ink, place.left ? Align::Left : Align::Right);
    canvas_.polyline(place.leader, theme_.ink, 1.8f);
  }

  // The list's five segments around a middle that is filled if the station is pinned.
  void draw_mark(const DialView::Mark& mark) {
    draw_chance_ring(canvas_, theme_, look_, at(mark), mark.chance_percent, mark.wanted);
  }

  Canvas& canvas_;
  const Theme& theme_;
  Look look_;
  const DialView& view_;
};

}  // namespace

void draw_dial_labels(Ui& ui, const DialView& view) {
  Labels(ui, view).draw();
}

}  // namespace mastwise::ui
