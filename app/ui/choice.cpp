#include "app/ui/choice.hpp"

#include "app/ui/shortened.hpp"

#include <algorithm>
#include <array>

namespace mastwise::ui {
namespace {

constexpr float kRadius = 14.0f, kEdge = 3.0f, kInset = 5.0f;
constexpr float kLabelLine = 27.0f, kLabelSides = 12.0f;

Rect segment(Rect rect, std::size_t index, std::size_t count) {
  const auto at = static_cast<float>(index), of = static_cast<float>(count);
  if (rect.width() >= rect.height()) {
    const float width = rect.width() / of;
    return {rect.left + at * width, rect.top, rect.left + (at + 1.0f) * width, rect.bottom};
  }
  const float height = rect.height() / of;
  return {rect.left, rect.top + at * height, rect.right, rect.top + (at + 1.0f) * height};
}

// `share` of the face's size, the same for all labels of a choice.
void draw_label(Ui& ui, Rect part, const std::string& label, Color color, bool chosen,
                float share) {
  const Face face = chosen ? Face::TextBold : Face::Text;
  constexpr float kCapital = 9.0f;
  const float apart = std::max(kLabelLine, 1.08f * share * ui.canvas().em(face));
  const auto lines = ui.wrapped(label, (part.width() - kLabelSides) / share, face);
  float baseline =
      part.center().y + kCapital - apart * (static_cast<float>(lines.size()) - 1.0f) / 2.0f;
  for (const std::string_view words : lines) {
    ui.canvas().text({part.center().x, baseline}, words, face, color, Align::Center, share);
    baseline += apart;
  }
}

// The lines of the longest label beyond its first, in letters of the usual size.
float further_lines(Ui& ui, std::span<const Option> options, float part_width) {
  std::size_t most = 1;
  for (const Option& option : options) {
    const float room = (part_width - kLabelSides) / ui.canvas().usual_share(Face::TextBold);
    most = std::max(most, ui.wrapped(option.label, room, Face::TextBold).size());
  }
  return ui.line(kLabelLine, Face::TextBold) * static_cast<float>(most - 1);
}

// The room for the label: below the picture if there is one. `further`: the height of labels beyond
// their first line.
Rect label_room(Ui& ui, Rect part, const Option& option, float further) {
  constexpr float kLabel = 36.0f, kFoot = 4.0f;
  if (!option.picture) return part;
  const float height = kLabel + ui.canvas().em_grown(Face::Text) + further;
  return {part.left, part.bottom - height - kFoot, part.right, part.bottom - kFoot};
}

void draw_option(Ui& ui, Rect part, const Option& option, Color color, bool chosen, float further,
                 float share) {
  const Rect label = label_room(ui, part, option, further);
  if (!option.label.empty()) draw_label(ui, label, option.label, color, chosen, share);
  if (!option.picture) return;
  constexpr float kMargin = 10.0f, kAbove = 4.0f;
  Rect picture = part.inset(kMargin);
  if (!option.label.empty()) picture.bottom = label.top + kAbove;
  option.picture(ui.canvas(), picture, color);
}

}  // namespace

float choice_height(Ui& ui, std::span<const Option> options, float width, float one_line) {
  return one_line + ui.canvas().em_grown(Face::Text) +
         further_lines(ui, options, width / static_cast<float>(options.size()));
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
  float share = 1.0f;
  for (const Option& option : options) {
    const Rect room = label_room(ui, segment(rect, 0, options.size()), option, further);
    share = std::min(share, ui.share_within(room, option.label, Face::TextBold, kLabelSides));
  }
  for (std::size_t i = 0; i < options.size(); ++i) {
    const std::string target = name + " " + options[i].key;
    const Rect part = segment(rect, i, options.size());
    const bool active = enabled && options[i].enabled;
    if (ui.touchable(target, part, active, name)) touched = i;
    const bool filled = chosen == i || ui.pressed(target);
    if (filled) canvas.fill(part.inset(kInset), theme.ink, kRadius - kInset);
    const Color color = filled ? theme.paper : active ? theme.accent : theme.second_ink;
    draw_option(ui, part, options[i], color, filled, further, share);
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
  text_within(ui.canvas(), {row.left + 18.0f, baseline}, room, label, face,
              filled ? ui.theme().paper : ui.theme().ink);
  ui.canvas().text({row.right - 18.0f, baseline}, remark, Face::Text,
                   filled ? ui.theme().paper : ui.theme().second_ink, Align::Right);
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, ui.theme().rule, 1.5f);
  return touched;
}

}  // namespace mastwise::ui
