#include "app/ui/ui.hpp"

namespace mastwise::ui {

std::optional<Point> Ui::begin_prompt(const std::string& name) {
  const auto fresh = motion_.prompts.try_emplace(
      name, Motion::Prompt{.opened_at_px = input_.opener_px, .hold = touch::Hold(input_.now)});
  prompt_ = &fresh.first->second;
  prompt_->drawn = true;
  if (!prompt_->opened_at_px) return std::nullopt;
  return *prompt_->opened_at_px * (1.0f / metrics_.px_per_unit);
}

bool Ui::hold_button(const std::string& name, Rect rect, std::string_view label) {
  touch::Hold& hold = prompt_->hold;
  touchable(name, rect);
  const auto& press = input_.press;
  const Rect rect_px = to_px(rect);
  const bool lies_here = press && !press->dragged && rect_px.contains(press->start_px) &&
                         rect_px.contains(press->current_px);
  const bool confirmed =
      hold.advance(input_.now, lies_here ? std::optional(press->down_at) : std::nullopt);
  if (!hold.awake(input_.now) || hold.pressed()) motion_.moving = true;
  draw_hold(rect, label, hold);
  return confirmed;
}

void Ui::draw_hold(Rect rect, std::string_view label, const touch::Hold& hold) {
  constexpr float kRadius = 14.0f, kEdge = 3.0f, kLine = 29.0f, kInset = 12.0f;
  const bool awake = hold.awake(input_.now);
  const Color color = awake ? theme_.warning : theme_.second_ink;
  const float widest = rect.width() - 2.0f * kInset;
  const std::size_t needed = wrapped(label, widest, Face::TextBold).size();
  float width = widest;  // lines of about one length
  constexpr float kStep = 8.0f;
  while (width > 2.0f * kStep && wrapped(label, width - kStep, Face::TextBold).size() == needed) {
    width -= kStep;
  }
  const float done = rect.left + rect.width() * hold.progress();
  const auto words = [&](Color ink) {
    const auto lines = static_cast<float>(needed + 1);
    const float first = rect.center().y - 0.5f * lines * kLine + 0.8f * kLine;
    const float below = paragraph({rect.center().x, first}, width, kLine, label, Face::TextBold,
                                  ink, Align::Center);
    canvas_.text({rect.center().x, below}, "Press and hold", Face::Text, ink, Align::Center);
  };
  canvas_.fill(rect, theme_.panel, kRadius);
  words(color);
  if (hold.progress() > 0.0f) {
    canvas_.push_clip({rect.left, rect.top, done, rect.bottom});
    canvas_.fill(rect, theme_.warning, kRadius);
    words(theme_.on_warning);
    canvas_.pop_clip();
  }
  canvas_.outline(rect.inset(kEdge / 2.0f), color, kEdge, kRadius);
}

}  // namespace mastwise::ui
