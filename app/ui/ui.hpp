#pragma once

#include "app/shared/action.hpp"
#include "app/touch/hold.hpp"
#include "app/touch/keys.hpp"
#include "app/touch/recognizer.hpp"
#include "app/touch/scroll.hpp"
#include "app/touch/targets.hpp"
#include "app/ui/canvas.hpp"
#include "app/ui/metrics.hpp"
#include "app/ui/spring.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace mastwise::ui {

enum class ButtonLook { Plain, Filled, Warning };

// Interface state between frames that is not part of the model: scroll offsets and motion.
struct Motion {
  struct List {
    touch::Scroll scroll;
    Rect view_px;  // its view in the last frame; empty if hidden
  };
  std::map<std::string, List> lists;          // by name
  std::map<std::string, float> page_heights;  // units, from the last frame
  std::map<std::string, Spring> springs;
  // A prompt, from its first frame to its last.
  struct Prompt {
    std::optional<touch::Point> opened_at_px;  // where the last finger before it went down
    touch::Hold hold;
    bool drawn = true;  // in the last frame
  };
  std::map<std::string, Prompt> prompts;  // by name
  Bitmaps bitmaps;                        // by name
  bool moving = false;                    // something still moves after the last frame
};

// One frame of the interface: draws widgets, records them as targets, and reports touches. Screens
// get a const model and this, and can only emit actions.
class Ui {
 public:
  // The touches since the last frame, resolved against its targets.
  struct Input {
    struct Tap {
      std::string target;  // its name
      touch::Point start_px;
    };
    std::vector<Tap> tapped;
    std::string pressed;                   // the target under a finger that may yet tap
    std::vector<touch::Gesture> gestures;  // drags, flings, wheel turns
    float seconds = 0.0f;                  // since the last frame
    Monotonic now = {};
    std::optional<touch::Recognizer::Press> press = {};  // the one finger that is down
    std::optional<touch::Point> opener_px = {};          // where the last acting finger went down
    std::optional<touch::KeyAct> steer = {};             // what a key does to a field
    std::string steered = {};                            // the field that the arrows steer
  };

  Ui(Canvas canvas, const Metrics& metrics, Look look, const Input& input, Motion& motion,
     touch::Targets& targets);

  Canvas& canvas() { return canvas_; }
  const Theme& theme() const { return theme_; }
  Look look() const { return look_; }
  Rect screen() const { return {0.0f, 0.0f, metrics_.width(), metrics_.height()}; }
  bool portrait() const { return metrics_.portrait(); }

  void emit(Action action) { actions_.push_back(std::move(action)); }
  std::vector<Action> take_actions() { return std::move(actions_); }

  // Records a target; true when it was tapped. `joined`: the list whose rows touch one another.
  bool touchable(const std::string& name, Rect rect, bool enabled = true,
                 const std::string& joined = {});
  // Escape taps the target of this name.
  void back_is(const std::string& name) { targets_.set_back(name); }

  // A ring around the target with the focus; nothing without one.
  void draw_focus(const touch::Target* target);

  // A place such as a map that keys steer by a cross in its middle, since a finger drags it.
  struct Steered {
    bool on = false;  // show the cross
    bool tapped = false;
    bool held = false;
    std::optional<touch::Key> key = {};  // an arrow; Next and Previous are nearer and farther
  };
  Steered steered(const std::string& name, Rect rect);

  // A finger is on this target and may still tap it.
  bool pressed(std::string_view name) const { return input_.pressed == name; }

  bool button(const std::string& name, Rect rect, std::string_view label, ButtonLook look,
              bool enabled = true);

  // A prompt that must not be passed by accident; call once in each frame that shows it. Returns
  // where the finger that opened it went down, in units; empty without a finger.
  std::optional<Point> begin_prompt(const std::string& name);
  // A target of the last begun prompt that must be held on purpose; the caller draws it.
  struct Held {
    bool confirmed = false;  // in the frame in which the hold is long enough (see touch::Hold)
    bool awake = false;      // it accepts touches by now
    float progress = 0.0f;   // of the hold, 0 to 1
  };
  Held hold_touch(const std::string& name, Rect rect, milliseconds needed = touch::kHoldToConfirm);
  // The button that confirms the last begun prompt: true in the frame in which the hold is long
  // enough (see touch::Hold). Draws its progress.
  bool hold_button(const std::string& name, Rect rect, std::string_view label);

  // The gestures that began within the rectangle, except taps on targets.
  std::vector<touch::Gesture> gestures_in(Rect rect) const;

  // The bitmap of this name; `make` redraws it if the version has changed.
  const Bitmap& bitmap(const std::string& name, std::uint64_t version,
                       const std::function<Bitmap()>& make);

  // The offset of the list in `viewport`, moved by this frame's drags, flings and wheel turns.
  // Clips all drawing at the viewport until end_scroll.
  float begin_scroll(const std::string& name, Rect viewport, float content_height);
  void end_scroll();
  // Of the list between begin_scroll and end_scroll: a row to draw, since it is in view or the
  // next one beyond, which keys can reach.
  bool in_reach(float row_top, float row_bottom) const;

  // The same for a page whose height is known only after drawing: begin_page returns the top to
  // draw from, end_page gets the reached bottom.
  float begin_page(const std::string& name, Rect viewport);
  void end_page(const std::string& name, float top, float bottom);

  // A value that follows `target` smoothly, critically damped, in 200 ms.
  double smooth(const std::string& name, double target);
  // The same for degrees on a circle, the short way round.
  double smooth_angle(const std::string& name, double target_deg);

  // The distance of two lines of this face: as given, or more if its letters are larger.
  float line(float usual, Face face, float share = 1.0f) const {
    constexpr float kLeast = 1.1f;  // of the em
    return std::max(usual, kLeast * share * canvas_.em(face));
  }
  // The share of the face's size at which the words, broken into lines, fit into the rectangle less
  // `sides` of its width; not under the usual size.
  float share_within(Rect rect, std::string_view label, Face face, float sides) const;
  // Words broken at spaces into lines that fit the width.
  std::vector<std::string_view> wrapped(std::string_view words, float width, Face face) const;
  // Draws them, at most in this share of the face's size; returns the baseline below the last line.
  float paragraph(Point at, float width, float line_height, std::string_view words, Face face,
                  Color color, Align align = Align::Left, float share = 1.0f);

 private:
  Rect to_px(Rect rect) const;
  void add_page_for_keys();
  void draw_label(Rect rect, std::string_view label, Color color);
  void draw_hold(Rect rect, std::string_view label, const Held& held);

  Canvas canvas_;
  const Metrics& metrics_;
  Look look_;
  const Theme& theme_;
  const Input& input_;
  Motion& motion_;
  touch::Targets& targets_;
  std::vector<Action> actions_;
  std::optional<Rect> clip_;
  std::string scrolls_;      // the list or page being drawn
  bool rows_drawn_ = false;  // it has something to touch
  Motion::Prompt* prompt_ = nullptr;
};

}  // namespace mastwise::ui
