#pragma once

#include "app/touch/geometry.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::touch {

// A touch target.
struct Target {
  std::string name;  // unique in the frame
  Rect rect_px;      // whole, including parts scrolled out of view
  bool enabled = true;
  int layer = 0;                     // only the highest layer of a frame can be touched
  std::optional<Rect> clip_px = {};  // the view of the list or page it scrolls in
  std::string joined = {};           // the list whose rows may touch one another, or empty
  std::string scrolls_in = {};       // the list or page that moves it, or empty
  // For keys only: no finger hits it.
  enum class ForKeys { No, Page, Field };
  ForKeys for_keys = ForKeys::No;  // a page that keys scroll, a field that they steer
  bool to_hold = false;            // a prompt's act: never the first to have the focus
  bool more_above = false;         // of a page: it can scroll up, down
  bool more_below = false;

  Rect visible_px() const { return clip_px ? rect_px.intersect(*clip_px) : rect_px; }
};

// All touch targets of one frame.
class Targets {
 public:
  // `px_per_mm` of the actual screen, finite and positive.
  explicit Targets(float px_per_mm) : px_per_mm_(px_per_mm) {}

  // Clears the last frame. The size of the screen, in pixels.
  void begin_frame(float width_px, float height_px);

  // A target wholly scrolled out of its clip, and one for keys only, can only have the focus.
  void add(Target target);
  // The last added target is one to hold.
  void only_to_hold(const std::string& name);
  // The target that the Back key taps; the last one named in a frame counts.
  void set_back(const std::string& name) { back_ = name; }

  // By name, and by place in the highest layer; nullptr if none. Valid until the next add() or
  // begin_frame().
  const Target* find(std::string_view name) const;
  const Target* at(Point place_px) const;

  const std::vector<Target>& all() const { return targets_; }

  // What can have the focus, in the order of reading: enabled targets of the highest layer, also
  // those scrolled out. Valid like find().
  std::vector<const Target*> focusable() const;
  // Whether there is any; costs no order.
  bool any_focusable() const;
  // nullptr without one.
  const Target* back() const { return find(back_); }

  // The frame's problems, one sentence each: a target narrower or lower than `min_mm` (whole, even
  // if partly scrolled out), one that leaves the screen, two of one layer whose visible parts
  // overlap or are closer than `gap_mm`, a name used twice. Rows of one list may touch but not
  // overlap. Sizes of the design: 9 mm, on the roof screen 15 mm, and 2 mm apart.
  std::vector<std::string> problems(double min_mm = 9.0, double gap_mm = 2.0) const;

 private:
  int highest_layer() const;
  double mm(float px) const { return static_cast<double>(px) / static_cast<double>(px_per_mm_); }
  std::string described(const Target& target) const;
  void check_alone(const Target& target, double min_mm, std::vector<std::string>& found) const;
  void check_pair(const Target& first, const Target& second, double gap_mm,
                  std::vector<std::string>& found) const;

  float px_per_mm_;
  Rect screen_px_;
  std::vector<Target> targets_;
  std::vector<Target> reachable_;  // by keys
  std::string back_;
};

}  // namespace mastwise::touch
