#pragma once

#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::ui {

// Two columns, or both the whole room where the screen is upright: then one is moved below the
// other.
struct Halves {
  Rect first, second;
};
Halves halves(const Ui& ui, Rect room);

// A column of facts and buttons, from the top down; keeps the next free line.
class Column {
 public:
  static constexpr float kButton = 72.0f, kGap = 16.0f;

  Column(Ui& ui, Rect area) : ui_(ui), theme_(ui.theme()), area_(area), y_(area.top) {}

  float bottom() const { return y_; }
  void space(float units) { y_ += units; }

  void heading(const std::string& words);
  void figure(const std::string& words);
  void line(const std::string& words, Face face = Face::Text);
  void plain(const std::string& words, Face face = Face::Text);  // in the first ink
  void warning(const std::string& words);
  void rule();
  // A label on the left, its value on the right.
  void pair(const std::string& label, const std::string& value);
  // A label and a value that a touch on the row edits; `given`: it has a value.
  bool field(const std::string& name, const std::string& label, const std::string& value,
             bool given);
  // One row of `count` buttons of equal width; the `index`-th.
  bool button(const std::string& name, const std::string& label, int index, int count,
              bool enabled = true, ButtonLook look = ButtonLook::Plain);

 private:
  // The step down to the next baseline, larger with the letters.
  float grown(float step, Face face) const { return step + ui_.canvas().em_grown(face); }
  void color_line(const std::string& words, Face face, Color color);

  Ui& ui_;
  const Theme& theme_;
  Rect area_;
  float y_;
};

}  // namespace mastwise::ui
