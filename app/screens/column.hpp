#pragma once

#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::screens {

// A column of facts and buttons, from the top down; keeps the next free line.
class Column {
 public:
  static constexpr float kButton = 72.0f, kGap = 16.0f;

  Column(ui::Ui& ui, ui::Rect area) : ui_(ui), theme_(ui.theme()), area_(area), y_(area.top) {}

  float bottom() const { return y_; }
  void space(float units) { y_ += units; }

  void heading(const std::string& words);
  void figure(const std::string& words);
  void line(const std::string& words, ui::Face face = ui::Face::Word);
  void plain(const std::string& words, ui::Face face = ui::Face::Word);  // in the first ink
  void warning(const std::string& words);
  void rule();
  // A label on the left, its value on the right.
  void pair(const std::string& label, const std::string& value);
  // A label and a value that a touch on the row edits; `given`: it has a value.
  bool field(const std::string& name, const std::string& label, const std::string& value,
             bool given);
  // One row of `count` buttons of equal width; the `index`-th.
  bool button(const std::string& name, const std::string& label, int index, int count,
              bool enabled = true, ui::ButtonLook look = ui::ButtonLook::Plain);

 private:
  void color_line(const std::string& words, ui::Face face, ui::Color color);

  ui::Ui& ui_;
  const ui::Theme& theme_;
  ui::Rect area_;
  float y_;
};

}  // namespace mastwise::screens
