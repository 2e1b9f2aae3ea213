#include "app/ui/column.hpp"

#include "app/ui/lit_row.hpp"
#include "app/ui/shortened.hpp"

#include <algorithm>

namespace mastwise::ui {

Halves halves(const Ui& ui, Rect room) {
  Rect first = room, second = room;
  if (!ui.portrait()) {
    constexpr float kBetween = 40.0f;
    first.right = room.center().x - kBetween / 2.0f;
    second.left = room.center().x + kBetween / 2.0f;
  }
  return {first, second};
}

void Column::heading(const std::string& words) {
  y_ += grown(24.0f, Face::TextBold);
  text_within(ui_.canvas(), {area_.left, y_}, area_.width(), words, Face::TextBold,
              theme_.second_ink);
}

void Column::figure(const std::string& words) {
  y_ += grown(46.0f, Face::Cardinal);
  const bool wide = ui_.canvas().text_width(words, Face::Cardinal) > area_.width();
  ui_.canvas().text({area_.left, y_}, words, wide ? Face::Value : Face::Cardinal, theme_.ink);
}

void Column::line(const std::string& words, Face face) {
  color_line(words, face, theme_.second_ink);
}

void Column::plain(const std::string& words, Face face) {
  color_line(words, face, theme_.ink);
}

void Column::warning(const std::string& words) {
  color_line(words, Face::TextBold, theme_.warning);
}

void Column::rule() {
  y_ += 20.0f;
  ui_.canvas().line({area_.left, y_}, {area_.right, y_}, theme_.rule, 2.0f);
  y_ += 16.0f;
}

void Column::pair(const std::string& label, const std::string& value) {
  y_ += grown(36.0f, Face::Value);
  const float share =
      share_of_both(ui_.canvas(), area_.width(), {label, Face::Text}, {value, Face::Value});
  const float both =
      ui_.canvas().text_width(label, Face::Text) + ui_.canvas().text_width(value, Face::Value);
  if (share * both > area_.width()) {
    y_ =
        ui_.paragraph({area_.left, y_}, area_.width(), 31.0f, label, Face::Text, theme_.second_ink);
    ui_.canvas().text({area_.right, y_}, value, Face::Value, theme_.ink, Align::Right);
    return;
  }
  ui_.canvas().text({area_.left, y_}, label, Face::Text, theme_.second_ink, Align::Left, share);
  ui_.canvas().text({area_.right, y_}, value, Face::Value, theme_.ink, Align::Right, share);
}

bool Column::field(const std::string& name, const std::string& label, const std::string& value,
                   bool given) {
  y_ += kGap;
  const Rect row{area_.left, y_, area_.right, y_ + kButton};
  y_ += kButton;
  const bool tapped = ui_.touchable(name, row);
  const bool lit = ui_.pressed(name);
  ui_.canvas().fill(row, lit ? theme_.lobe : theme_.panel, 14.0f);
  ui_.canvas().outline(row.inset(1.0f), theme_.rule, 2.0f, 14.0f);
  const float baseline = row.center().y + 9.0f;
  const Face face = given ? Face::TextBold : Face::Text;
  const float room = row.width() - 48.0f - ui_.canvas().text_width(value, face);
  // A long label takes two lines before it is cut.
  const auto lines = ui_.wrapped(label, room, Face::Text);
  const std::size_t count = std::min<std::size_t>(lines.size(), 2);
  for (std::size_t i = 0; i < count; ++i) {
    const float apart = ui_.line(30.0f, Face::Text);
    const float y = count == 1 ? baseline : baseline + apart * (static_cast<float>(i) - 0.5f);
    text_within(ui_.canvas(), {row.left + 16.0f, y}, room, lines[i], Face::Text, theme_.ink);
  }
  ui_.canvas().text({row.right - 16.0f, baseline}, value, face,
                    given ? theme_.ink : accent_on_row(theme_, lit), Align::Right);
  return tapped;
}

bool Column::button(const std::string& name, const std::string& label, int index, int count,
                    bool enabled, ButtonLook look) {
  const auto of = static_cast<float>(count);
  const float width = (area_.width() - (of - 1.0f) * kGap) / of;
  const float left = area_.left + static_cast<float>(index) * (width + kGap);
  if (index == 0) y_ += kGap;
  const Rect rect{left, y_, left + width, y_ + kButton};
  if (index + 1 == count) y_ += kButton;
  return ui_.button(name, rect, label, look, enabled);
}

void Column::color_line(const std::string& words, Face face, Color color) {
  constexpr float kLine = 31.0f;
  y_ = ui_.paragraph({area_.left, y_ + grown(34.0f, face)}, area_.width(), kLine, words, face,
                     color) -
       ui_.line(kLine, face);
}

}  // namespace mastwise::ui
