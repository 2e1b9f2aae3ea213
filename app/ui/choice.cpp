#include "app/ui/choice.hpp"

#include "app/ui/shortened.hpp"

#include <algorithm>
#include <array>

namespace mastwise::ui {
namespace {

constexpr float kRadius = 14.0f, kEdge = 3.0f, kInset = 5.0f;
constexpr float kLabelLine = 27.0f, kLabelSide = 6.0f;

Rect segment(Rect rect, std::size_t index, std::size_t count) {
  const auto at = static_cast<float>(index), of = static_cast<float>(count);
  if (rect.width() >= rect.height()) {
    const float width = rect.width() / of;
    return {rect.left + at * width, rect.top, rect.left + (at + 1.0f) * width, rect.bottom};
  }
  const float height = rect.height() / of;
  return {rect.left, rect.top + at * height, rect.right, rect.top + (at + 1.0f) * height};
}

void draw_label(Ui& ui, Rect part, const std::string& label, Color color, bool chosen) {
  const Face face = chosen ? Face::TextBold : Face::Text;
  constexpr float kCapital = 9.0f;
  const auto lines = ui.wrapped(label, part.width() - 2.0f * kLabelSide, face);
  float baseline =
      part.center().y + kCapital - kLabelLine * (static_cast<float>(lines.size()) - 1.0f) / 2.0f;
  for (const std::string_view words : lines) {
    ui.canvas().text({part.center().x, baseline}, words, face, color, Align::Center);
    baseline += kLabelLine;
  }
}

// The lines of the longest label beyond its first.
float further_lines(const Ui& ui, std::span<const Option> options, float part_width) {
  std::size_t most = 1;
  for (const Option& option : options) {
    const float room = part_width - 2.0f * kLabelSide;
    most = std::max(most, ui.wrapped(option.label, room, Face::TextBold).size());
  }
  return kLabelLine * static_cast<float>(most - 1);
}

// `further`: the height of labels beyond their first line.
void draw_option(Ui& ui, Rect part, const Option& option, Color color, bool chosen, float further) {
  if (!option.picture) return draw_label(ui, part, option.label, color, chosen);
  constexpr float kLabel = 36.0f, kMargin = 10.0f;
  Rect picture = part.inset(kMargin);
  if (!option.label.empty()) {
    picture.bottom = part.bottom - kLabel - further;
    draw_label(ui, {part.left, picture.bottom - 4.0f, part.right, part.bottom - 4.0f}, option.label,
               color, chosen);
  }
  option.picture(ui.canvas(), picture, color);
}

}  // namespace

float choice_height(const Ui& ui, std::span<const Option> options, float width, float one_line) {
  return one_line + further_lines(ui, options, width / static_cast<float>(options.size()));
}

std::optional<std::size_t> segmented(Ui& ui, const std::string& name, Rect rect,
                                     std::span<const Option> options,
                                     std::optional<std::size_t> chosen, bool enabled) {
  const Theme& theme = ui.theme();
  Canvas& canvas = ui.canvas();
  std::optional<std::size_t> touched;
  canvas.fill(rect, theme.panel, kRadius);
  canvas.outline(rect.inset(kEdge / 2.0f), enabled ? theme.ink : theme.second_ink,
                 enabled ? kEdge : 1.0f, kRadius);
  const bool lies = rect.width() >= rect.height();
  const float further = further_lines(ui, options, segment(rect, 0, options.size()).width());
  for (std::size_t i = 0; i < options.size(); ++i) {
    const std::string target = name + " " + options[i].key;
    const Rect part = segment(rect, i, options.size());
    const bool active = enabled && options[i].enabled;
    if (ui.touchable(target, part, active, name)) touched = i;
    const bool filled = chosen == i || ui.pressed(target);
    if (filled) canvas.fill(part.inset(kInset), theme.ink, kRadius - kInset);
    const Color color = filled ? theme.paper : active ? theme.accent : theme.second_ink;
    draw_option(ui, part, options[i], color, filled, further);
    const bool beside_filled = filled || (i > 0 && chosen == i - 1);
    if (i == 0 || beside_filled) continue;
    const float inset = 14.0f;
    if (lies) {
      canvas.line({part.left, part.top + inset}, {part.left, part.bottom - inset}, theme.rule,
                  2.0f);
    } else {
      canvas.line({part.left + inset, part.top}, {part.right - inset, part.top}, theme.rule, 2.0f);
    }
  }
  return touched;
}

std::optional<bool> on_off(Ui& ui, const std::string& name, Rect rect, bool on,
                           const std::string& off_label, const std::string& on_label) {
  const std::array options{Option{"off", off_label}, Option{"on", on_label}};
  const auto touched = segmented(ui, name, rect, options, on ? 1 : 0);
  if (!touched) return std::nullopt;
  return *touched == 1;
}

bool choice_row(Ui& ui, const std::string& name, Rect row, const std::string& label,
                const std::string& remark, bool chosen, const std::string& joined) {
  const bool touched = ui.touchable(name, row, true, joined);
  const bool filled = chosen || ui.pressed(name);
  if (filled) ui.canvas().fill(row.inset(2.0f), ui.theme().ink, 12.0f);
  const float baseline = row.center().y + 9.0f;
  const Face face = filled ? Face::TextBold : Face::Text;
  const float room = row.width() - 56.0f - ui.canvas().text_width(remark, Face::Text);
  ui.canvas().text({row.left + 18.0f, baseline}, shortened(ui.canvas(), label, face, room), face,
                   filled ? ui.theme().paper : ui.theme().ink);
  ui.canvas().text({row.right - 18.0f, baseline}, remark, Face::Text,
                   filled ? ui.theme().paper : ui.theme().second_ink, Align::Right);
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, ui.theme().rule, 1.5f);
  return touched;
}

}  // namespace mastwise::ui
