#pragma once

#include "app/path/waterfall.hpp"
#include "app/ui/ui.hpp"
#include "core/reception/path_picture.hpp"

#include <span>
#include <string>

namespace mastwise::screens {

// What the picture of a path shows.
struct PathView {
  const reception::PathPicture& picture;
  std::span<const WaterfallRow> steps = {};  // the obstacles' costs, as far as they are shown
  bool miles = true;
};

// Heights with the earth's curve, the straight ray, 0.6 of the first Fresnel zone around it, and
// the obstacles with what they cost.
void draw_path_picture(ui::Ui& ui, ui::Rect area, const PathView& view);

// The zone without ground, for a path that is not computed.
void draw_unknown_path(ui::Ui& ui, ui::Rect area, const std::string& words);

// How many times taller heights are drawn than distances.
double height_exaggeration(ui::Rect area, const reception::PathPicture& picture);

}  // namespace mastwise::screens
