#pragma once

#include "app/guide/draw_sketch.hpp"
#include "app/guide/guides.hpp"

#include <array>

namespace mastwise::screens {

// The four pictures of a guide, in the order of its sentences.
using GuidePictures = std::array<void (*)(Sketch&), kGuideSteps>;

GuidePictures here_pictures();
GuidePictures stations_pictures();
GuidePictures map_pictures();
GuidePictures aim_pictures();
GuidePictures plan_pictures();
GuidePictures path_pictures();
GuidePictures peak_pictures();
GuidePictures roof_pictures();
GuidePictures logbook_pictures();
GuidePictures ahead_pictures();
GuidePictures data_pictures();

}  // namespace mastwise::screens
