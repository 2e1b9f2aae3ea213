#include "app/ui/ui.hpp"
#include "app/words/language.hpp"

#include <algorithm>

namespace mastwise::ui {

std::optional<Point> Ui::begin_prompt(const std::string& name) {
  const auto fresh = motion_.prompts.try_emplace(
      name, Motion::Prompt{.opened_at_px = input_.opener_px, .hold = touch::Hold(input_.now)});
  prompt_ = &fresh.first->second;
  prompt_->drawn = true;
  if (!prompt_->opened_at_px) return std::nullopt;
  return *prompt_->opened_at_px * (1.0f / metrics_.px_per_unit);
}

Ui::Held Ui::hold_touch(const std::string& name, Rect rect, milliseconds needed) {
  touch::Hold& hold = prompt_->hold;
  touchable(name, rect);
  targets_.only_to_hold(name);
  const auto& press = input_.press;
  const Rect rect_px = to_px(rect);
  const bool lies_here = press && !press->dragged && rect_px.contains(press->start_px) &&
                         rect_px.contains(press->current_px);
  const bool confirmed =
      hold.advance(input_.now, lies_here ? std::optional(press->down_at) : std::nullopt, needed);
  const bool awake = hold.awake(input_.now);
  if (!awake || hold.pressed()) motion_.moving = true;
  return {.confirmed = confirmed, .awake = awake, .progress = hold.progress()};
}

bool Ui::hold_button(const std::string& name, Rect rect, std::string_view label) {
  const Held held = hold_touch(name, rect);
  draw_hold(rect, label, held);
  return held.confirmed;
}

// Filled once it accepts touches; a bar along its foot shows how long it has been held.
void Ui::draw_hold(Rect rect, std::string_view label, const Held& held) {
  constexpr float kRadius = 14.0f, kEdge = 3.0f, kInset = 10.0f, kBar = 12.0f;
  const Color ground = held.awake ? theme_.warning : theme_.panel;
  const Color ink = held.awake ? theme_.on_warning : theme_.second_ink;
  const float room = rect.width() - 2.0f * kInset;
  const char* how = words::say("Press and hold");
  const bool large = wrapped(label, room, Face::Value).size() == 1;
  const Face face = large ? Face::Value : Face::TextBold;
  // Above the line on how to confirm.
  const Rect above{rect.left, rect.top, rect.right, rect.bottom - 1.1f * canvas_.em(Face::Text)};
  const float share = share_within(above, label, face, 2.0f * kInset);
  const float apart = std::max(large ? 34.0f : 29.0f, 1.08f * share * canvas_.em(face));
  float width = room / share;
  const std::size_t needed = wrapped(label, width, face).size();
  constexpr float kStep = 8.0f;  // lines of about one length
  while (width > 2.0f * kStep && wrapped(label, width - kStep, face).size() == needed) {
    width -= kStep;
  }
  const auto lines = static_cast<float>(needed + 1);
  canvas_.fill(rect, ground, kRadius);
  float y = rect.center().y - 0.5f * lines * apart + 0.78f * apart;
  for (const std::string_view words : wrapped(label, width, face)) {
    canvas_.text({rect.center().x, y}, words, face, ink, Align::Center, share);
    y += apart;
  }
  canvas_.text({rect.center().x, y - 2.0f}, how, Face::Text, ink, Align::Center,
               canvas_.size_within(room, how, Face::Text));
  canvas_.outline(rect.inset(kEdge / 2.0f), held.awake ? theme_.warning : theme_.second_ink, kEdge,
                  kRadius);
  if (held.progress <= 0.0f) return;
  canvas_.push_clip(
      {rect.left, rect.bottom - kBar, rect.left + rect.width() * held.progress, rect.bottom});
  canvas_.fill(rect, theme_.on_warning, kRadius);
  canvas_.pop_clip();
}

}  // namespace mastwise::ui
