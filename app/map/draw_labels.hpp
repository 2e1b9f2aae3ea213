#pragma once

#include "app/touch/geometry.hpp"

#include <optional>
#include <vector>

namespace mastwise::screens {

// Where on a map there is room for words: what is drawn already blocks the ground below it. Units
// of the screen.
class LabelField {
 public:
  explicit LabelField(touch::Rect area) : area_(area) {}

  void block(touch::Rect rect) { blocks_.push_back(rect); }
  void block_mark(touch::Point middle, float radius) {
    block({middle.x - radius, middle.y - radius, middle.x + radius, middle.y + radius});
  }
  // Lines and rings may be crossed by leader lines, never by words. A ring that breaks is drawn
  // later, with gaps at the words.
  void block_line(touch::Point from, touch::Point to) { lines_.push_back({from, to}); }
  void block_ring(touch::Point center, float radius, bool breaks = false) {
    rings_.push_back({center, radius, breaks});
  }

  // What words may stand on besides free ground: nothing, rings that break, or any ring.
  enum class On { Nothing, BreakingRings, Rings };
  // Whether words may stand there: within the area, on nothing else.
  bool is_free(touch::Rect plate, On on = On::Nothing) const;

  // A plate beside a mark, with the end of its leader line.
  struct Place {
    touch::Rect plate;
    touch::Point leader;
  };
  // The nearest room for words of this size around a mark, blocked from now on, leader included;
  // std::nullopt if there is none. `radius`: of the mark, which is blocked already. Where there is
  // no room near it otherwise, a ring breaks. The leader crosses no mark, no words and no other
  // leader.
  std::optional<Place> beside(touch::Point mark, float radius, float width, float height);

 private:
  struct Segment {
    touch::Point from, to;
  };
  struct Ring {
    touch::Point center;
    float radius;
    bool breaks;
  };
  bool leader_is_free(Segment leader) const;
  std::optional<Place> room(touch::Point mark, float radius, float away, touch::Point size,
                            On on) const;

  touch::Rect area_;
  std::vector<touch::Rect> blocks_;
  std::vector<Segment> lines_, leaders_;
  std::vector<Ring> rings_;
};

}  // namespace mastwise::screens
