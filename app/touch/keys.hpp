#pragma once

#include "app/touch/focus.hpp"
#include "app/touch/recognizer.hpp"
#include "app/touch/targets.hpp"

#include <deque>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace mastwise::touch {

// A key of a keyboard, or a knob's turn (Next, Previous) and press.
struct KeyEvent {
  // A Repeat is what a held key sends by itself: it moves the focus, but never presses.
  enum class Kind { Down, Repeat, Up };
  Key key = Key::Next;
  Kind kind = Kind::Down;
  Monotonic at = {};
};

// What a key did.
struct KeyAct {
  enum class Kind {
    Tap,     // like a finger's on the target
    Hold,    // like a long press on it
    Scroll,  // moves the list or page named `target`
    Steer,   // moves the field: arrows; Next and Previous are nearer and farther
  };
  Kind kind = Kind::Tap;
  std::string target;
  Point place_px = {};   // the middle of the target's visible part
  Monotonic began = {};  // when the key went down
  Key key = Key::Press;
  float views = 0.0F;  // of a Scroll: heights of its view, positive toward its end
};

// Keys to acts, through one focus. A press that is held longer than a tap becomes a hold, with the
// same times as a finger's.
class Keys {
 public:
  void feed(const KeyEvent& event) { waiting_.push_back(event); }
  bool waiting() const { return !waiting_.empty(); }
  // Lifts all keys, for a window that lost the system's focus.
  void cancel();
  // A finger came down.
  void hide();

  // Handles waiting keys until one acts. `targets`: those of the last frame.
  std::optional<KeyAct> take(const Targets& targets, Monotonic now);
  // After each frame: the focus keeps to what is there.
  void follow(const Targets& targets);

  // Puts the focus on the first of these that the next frame has.
  void wish_for(std::vector<std::string> names);

  // The focused target; nullptr if hidden. Valid like Targets::find().
  const Target* focused(const Targets& targets) const;
  // The focus went elsewhere by a key since the last call: scroll it into view.
  bool take_moved() { return std::exchange(moved_, false); }
  // The field that the arrows steer, or empty.
  const std::string& steered() const { return steered_; }

  // The held press as a finger in the middle of the focused target.
  std::optional<Recognizer::Press> press(const Targets& targets) const;
  // When take() will next act if no key comes first.
  std::optional<Monotonic> hold_due() const;

 private:
  struct Pressed {
    std::string target;
    Monotonic at;
    bool held = false;
  };
  bool holds_long(Monotonic at) const {
    return pressed_ && !pressed_->held && at >= pressed_->at + kLongPress;
  }
  KeyAct act_of(KeyAct::Kind kind, const Target& target, Monotonic began) const;
  std::optional<KeyAct> handle(const KeyEvent& event, const Targets& targets);
  std::optional<KeyAct> press(const KeyEvent& event, const Targets& targets);
  std::optional<KeyAct> lift(const Targets& targets);
  std::optional<KeyAct> go_back(const KeyEvent& event, const Targets& targets);
  std::optional<KeyAct> move(const KeyEvent& event, const Targets& targets);

  std::deque<KeyEvent> waiting_;
  Focus focus_;
  std::optional<Pressed> pressed_;
  std::string steered_;
  std::vector<std::string> wishes_;
  bool moved_ = false;
};

}  // namespace mastwise::touch
