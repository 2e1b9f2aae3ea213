#pragma once

#include "app/ui/ui.hpp"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>

namespace mastwise::ui {

// One of the things to choose from.
struct Option {
  std::string key;    // its touch target is "NAME KEY"
  std::string label;  // may be empty beside a picture
  // Draws a picture above the label in the given color; may be empty.
  std::function<void(Canvas&, Rect, Color)> picture = {};
  bool enabled = true;  // the screen says why not
};

// The height of options side by side over `width`, where labels of one line need `one_line`: higher
// if a label takes more lines.
float choice_height(Ui& ui, std::span<const Option> options, float width, float one_line);

// One of several, all of them visible and the present one filled with ink: a state, never an act.
// Along the longer side of the rectangle; each option needs 9 mm. Returns the index touched.
std::optional<std::size_t> segmented(Ui& ui, const std::string& name, Rect rect,
                                     std::span<const Option> options,
                                     std::optional<std::size_t> chosen, bool enabled = true);

// Off or on, as two segments with the keys "off" and "on". Returns the new state when touched.
std::optional<bool> on_off(Ui& ui, const std::string& name, Rect rect, bool on,
                           const std::string& off_label, const std::string& on_label);

// One row of a list of which one is chosen, filled with ink if it is: what it is, and a remark at
// the right. `joined`: see Ui::touchable. True when touched.
bool choice_row(Ui& ui, const std::string& name, Rect row, const std::string& label,
                const std::string& remark, bool chosen, const std::string& joined);

}  // namespace mastwise::ui
