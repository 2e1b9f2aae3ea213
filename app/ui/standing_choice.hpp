#pragma once

#include "app/ui/ui.hpp"
#include "core/headings/standing.hpp"

#include <optional>
#include <string>

namespace mastwise::ui {

// "By rig", "59 ft off": few words, for a label.
std::string standing_words(Standing standing, bool miles);

float standing_choice_height(Ui& ui, float width, bool miles);

// Where a person stands with the compass, drawn: the rig, the person, and what is between them.
// Returns the place touched.
std::optional<Standing> standing_choice(Ui& ui, const std::string& name, Rect rect, bool miles,
                                        std::optional<Standing> chosen);

}  // namespace mastwise::ui
