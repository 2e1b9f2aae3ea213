#include "app/touch/keys.hpp"

#include <algorithm>
#include <utility>

namespace mastwise::touch {
namespace {

bool is_arrow(Key key) {
  return key == Key::Left || key == Key::Right || key == Key::Up || key == Key::Down;
}

// The list that a page key scrolls: the focused target's, else the highest on the screen.
std::string list_of(const Target* focused, const Targets& targets) {
  if (focused != nullptr && !focused->scrolls_in.empty()) return focused->scrolls_in;
  std::string highest;
  float height_px = 0.0F;
  for (const Target* target : targets.focusable()) {
    if (!target->clip_px || target->scrolls_in.empty()) continue;
    if (target->clip_px->height() <= height_px) continue;
    height_px = target->clip_px->height();
    highest = target->scrolls_in;
  }
  return highest;
}

}  // namespace

void Keys::cancel() {
  waiting_.clear();
  pressed_.reset();
}

void Keys::hide() {
  cancel();
  focus_.hide();
  steered_.clear();
  wishes_.clear();
}

void Keys::wish_for(std::vector<std::string> names) {
  wishes_ = std::move(names);
}

const Target* Keys::focused(const Targets& targets) const {
  return focus_.shown() ? focus_.on(targets) : nullptr;
}

KeyAct Keys::act_of(KeyAct::Kind kind, const Target& target, Monotonic began) const {
  return {.kind = kind,
          .target = target.name,
          .place_px = target.visible_px().center(),
          .began = began};
}

std::optional<KeyAct> Keys::take(const Targets& targets, Monotonic now) {
  if (!targets.any_focusable()) {
    cancel();  // keys do nothing on a screen without targets
    return std::nullopt;
  }
  while (true) {
    const Monotonic at = waiting_.empty() ? now : waiting_.front().at;
    if (holds_long(at)) {
      pressed_->held = true;
      const Target* target = focused(targets);
      const bool field = target != nullptr && target->for_keys == Target::ForKeys::Field;
      if (field && steered_ != target->name) {
        steered_ = target->name;
      } else if (target != nullptr && target->name == pressed_->target) {
        return act_of(KeyAct::Kind::Hold, *target, pressed_->at);
      }
    }
    if (waiting_.empty()) return std::nullopt;
    const KeyEvent event = waiting_.front();
    waiting_.pop_front();
    if (auto act = handle(event, targets)) return act;
  }
}

std::optional<KeyAct> Keys::handle(const KeyEvent& event, const Targets& targets) {
  if (event.kind == KeyEvent::Kind::Up)
    return event.key == Key::Press ? lift(targets) : std::nullopt;
  const bool repeat = event.kind == KeyEvent::Kind::Repeat;
  if (event.key == Key::Back) return repeat ? std::nullopt : go_back(event, targets);
  if (event.key == Key::Press) return repeat ? std::nullopt : press(event, targets);
  pressed_.reset();
  return move(event, targets);
}

// The first key only shows where the focus is.
std::optional<KeyAct> Keys::press(const KeyEvent& event, const Targets& targets) {
  if (pressed_) return std::nullopt;
  if (focused(targets) == nullptr) {
    focus_.show(targets);
    moved_ = true;
    return std::nullopt;
  }
  pressed_ = Pressed{focus_.name(), event.at};
  return std::nullopt;
}

std::optional<KeyAct> Keys::lift(const Targets& targets) {
  const auto pressed = std::exchange(pressed_, std::nullopt);
  const Target* target = focused(targets);
  if (!pressed || pressed->held || target == nullptr || target->name != pressed->target) {
    return std::nullopt;
  }
  if (target->for_keys == Target::ForKeys::Field && steered_ != target->name) {
    steered_ = target->name;
    return std::nullopt;
  }
  if (target->for_keys != Target::ForKeys::Page) {
    return act_of(KeyAct::Kind::Tap, *target, pressed->at);
  }
  // A page turns, and begins anew after its end.
  constexpr float kMostOfView = 0.8F, kToTop = -1e6F;
  KeyAct act = act_of(KeyAct::Kind::Scroll, *target, pressed->at);
  act.target = target->scrolls_in;
  act.views = target->more_below ? kMostOfView : kToTop;
  return act;
}

std::optional<KeyAct> Keys::go_back(const KeyEvent& event, const Targets& targets) {
  pressed_.reset();
  if (!steered_.empty()) {
    steered_.clear();
    return std::nullopt;
  }
  const Target* back = targets.back();
  if (back == nullptr || !back->enabled) return std::nullopt;
  return act_of(KeyAct::Kind::Tap, *back, event.at);
}

std::optional<KeyAct> Keys::move(const KeyEvent& event, const Targets& targets) {
  constexpr float kMostOfView = 0.8F, kPartOfView = 0.25F;
  const Target* target = focused(targets);
  const auto scroll = [&](const std::string& list, float views) {
    return KeyAct{.kind = KeyAct::Kind::Scroll,
                  .target = list,
                  .began = event.at,
                  .key = event.key,
                  .views = views};
  };
  const bool page = event.key == Key::PageUp || event.key == Key::PageDown;
  if (target != nullptr && steered_ == target->name) {
    KeyAct act = act_of(KeyAct::Kind::Steer, *target, event.at);
    act.key = event.key == Key::PageUp     ? Key::Next
              : event.key == Key::PageDown ? Key::Previous
                                           : event.key;
    return act;
  }
  if (page) {
    const std::string list = list_of(target, targets);
    if (list.empty()) return std::nullopt;
    return scroll(list, event.key == Key::PageDown ? kMostOfView : -kMostOfView);
  }
  if (target == nullptr) {
    focus_.show(targets);
    moved_ = true;
    return std::nullopt;
  }
  if (event.key == Key::Down && target->more_below) return scroll(target->scrolls_in, kPartOfView);
  if (event.key == Key::Up && target->more_above) return scroll(target->scrolls_in, -kPartOfView);
  if (is_arrow(event.key)) {
    focus_.go(targets, event.key);
  } else {
    focus_.step(targets, event.key == Key::Next ? 1 : -1);
  }
  moved_ = true;
  return std::nullopt;
}

void Keys::follow(const Targets& targets) {
  const auto there = wishes_.empty() ? std::vector<const Target*>() : targets.focusable();
  for (const std::string& wish : std::exchange(wishes_, {})) {
    const bool found = std::any_of(there.begin(), there.end(),
                                   [&](const Target* target) { return target->name == wish; });
    if (!found) continue;
    focus_.put_on(wish);
    focus_.show(targets);
    moved_ = true;
    break;
  }
  const std::string before = focus_.name();
  focus_.follow(targets);
  if (focus_.shown() && focus_.name() != before) moved_ = true;
  if (steered_ != focus_.name()) steered_.clear();
}

std::optional<Recognizer::Press> Keys::press(const Targets& targets) const {
  if (!pressed_) return std::nullopt;
  const Target* target = focused(targets);
  if (target == nullptr || target->name != pressed_->target) return std::nullopt;
  const Point middle = target->visible_px().center();
  return Recognizer::Press{middle, middle, pressed_->at, !pressed_->held, false};
}

std::optional<Monotonic> Keys::hold_due() const {
  if (!pressed_ || pressed_->held) return std::nullopt;
  return pressed_->at + kLongPress;
}

}  // namespace mastwise::touch
