#include "app/ui/dial_label_places.hpp"

#include "app/touch/segments.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::ui {
namespace {

constexpr float kLine = 34.0f, kAscent = 22.0f, kDescent = 8.0f;
constexpr int kLines = 4;  // in a corner
constexpr float kClear = 3.0f;

float distance_to(Point from, Point to, Point place) {
  const Point way = to - from;
  const float square = way.x * way.x + way.y * way.y;
  const Point off = place - from;
  const float part =
      square == 0.0f ? 0.0f : std::clamp((off.x * way.x + off.y * way.y) / square, 0.0f, 1.0f);
  return touch::distance(place, from + way * part);
}

// Calls for each piece of a line until one says true.
template <class Pieces, class Test>
bool any_piece(const Pieces& line, Test test) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    if (test(line[i], line[i + 1])) return true;
  }
  return false;
}

class DialCorners {
 public:
  DialCorners(const DialRoom& dial, std::span<const DialLabelWish> wishes,
              std::span<const Rect> blocked)
      : dial_(dial), wishes_(wishes), blocked_(blocked) {}

  std::vector<std::optional<DialLabelPlace>> all() {
    for (const DialLabelWish& wish : wishes_) places_.push_back(place(wish));
    return places_;
  }

 private:
  // First in the corner of the mark; one at the side may also use the other corner there.
  std::optional<DialLabelPlace> place(const DialLabelWish& wish) const {
    const bool upper = wish.mark.y < dial_.center.y;
    for (const bool in_upper : {upper, !upper}) {
      if (in_upper != upper && !at_side(wish.mark)) break;
      for (int line = 0; line < kLines; ++line) {
        for (const bool is_short : {false, true}) {
          if (auto found = in_line(wish, in_upper, line, is_short)) return found;
        }
      }
    }
    return std::nullopt;
  }

  std::optional<DialLabelPlace> in_line(const DialLabelWish& wish, bool upper, int line,
                                        bool is_short) const {
    const bool left = wish.mark.x < dial_.center.x;
    const float off = 20.0f + kLine * static_cast<float>(line);
    const float y = upper ? dial_.room.top + off : dial_.room.bottom - off + 16.0f;
    const float width = is_short ? wish.short_width : wish.width;
    if (width > room_at(y, left) - 26.0f) return std::nullopt;
    DialLabelPlace place{
        .is_short = is_short, .left = left, .baseline = y, .words = {}, .leader = {}};
    place.words = {left ? dial_.room.left : dial_.room.right - width, y - kAscent,
                   left ? dial_.room.left + width : dial_.room.right, y + kDescent};
    if (!words_are_free(place.words, wish)) return std::nullopt;
    for (std::vector<Point>& leader : leaders(wish.mark, place, upper)) {
      if (!leader_is_free(leader, wish)) continue;
      place.leader = std::move(leader);
      return place;
    }
    return std::nullopt;
  }

  bool at_side(Point mark) const {
    constexpr float kSide = 0.62f;
    return std::fabs(mark.y - dial_.center.y) < kSide * dial_.radius;
  }

  // The width beside the dial at a height on the screen.
  float room_at(float y, bool left) const {
    const float up = std::min(std::fabs(y - dial_.center.y), std::fabs(y - 20.0f - dial_.center.y));
    const float half = up >= dial_.reach ? 0.0f : std::sqrt(dial_.reach * dial_.reach - up * up);
    return left ? dial_.center.x - half - dial_.room.left
                : dial_.room.right - dial_.center.x - half;
  }

  // Straight from the end of the words, or along the edge and then level, at either end of them.
  std::vector<std::vector<Point>> leaders(Point mark, const DialLabelPlace& place,
                                          bool upper) const {
    constexpr float kBeside = 8.0f, kInset = 6.0f;
    const Rect& words = place.words;
    const float level = place.baseline - 9.0f,
                foot = upper ? words.bottom + 2.0f : words.top - 6.0f;
    const Point end{place.left ? words.right + kBeside : words.left - kBeside, level};
    const Point edge{place.left ? words.left + kInset : words.right - kInset, foot};
    const Point inner{place.left ? words.right - kInset : words.left + kInset, foot};
    const std::vector<Point> straight{end, mark};
    const std::vector<Point> by_edge{edge, {edge.x, mark.y}, mark};
    const std::vector<Point> by_inner{inner, {inner.x, mark.y}, mark};
    // A mark at the side is reached along the edge, so that the line keeps clear of the dial.
    if (at_side(mark)) return {by_edge, by_inner, straight};
    return {straight, by_edge, by_inner};
  }

  bool words_are_free(const Rect& words, const DialLabelWish& own) const {
    const Rect wide = words.inset(-kClear);
    for (const DialLabelWish& wish : wishes_) {
      if (&wish != &own && wide.inset(-kDialMark).contains(wish.mark)) return false;
    }
    const auto covers = [&](const Rect& rect) { return rect.overlaps(wide); };
    if (std::any_of(blocked_.begin(), blocked_.end(), covers)) return false;
    return std::none_of(places_.begin(), places_.end(), [&](const auto& place) {
      return place &&
             (place->words.overlaps(wide) || any_piece(place->leader, [&](Point from, Point to) {
                return touch::line_meets(from, to, wide);
              }));
    });
  }

  bool leader_is_free(const std::vector<Point>& leader, const DialLabelWish& own) const {
    return !any_piece(leader, [&](Point from, Point to) {
      if (distance_to(from, to, dial_.center) < dial_.radius - 1.0f) return true;
      for (const DialLabelWish& wish : wishes_) {
        if (&wish != &own && distance_to(from, to, wish.mark) < kDialMark + kClear) return true;
      }
      const auto covers = [&](const Rect& rect) {
        return touch::line_meets(from, to, rect.inset(-kClear));
      };
      if (std::any_of(blocked_.begin(), blocked_.end(), covers)) return true;
      return std::any_of(places_.begin(), places_.end(), [&](const auto& place) {
        return place && (touch::line_meets(from, to, place->words.inset(-kClear)) ||
                         any_piece(place->leader, [&](Point other_from, Point other_to) {
                           return touch::lines_cross(from, to, other_from, other_to);
                         }));
      });
    });
  }

  const DialRoom& dial_;
  std::span<const DialLabelWish> wishes_;
  std::span<const Rect> blocked_;
  std::vector<std::optional<DialLabelPlace>> places_;
};

}  // namespace

std::vector<std::optional<DialLabelPlace>> place_dial_labels(const DialRoom& room,
                                                             std::span<const DialLabelWish> wishes,
                                                             std::span<const Rect> blocked) {
  return DialCorners(room, wishes, blocked).all();
}

}  // namespace mastwise::ui
