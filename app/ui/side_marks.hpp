#pragma once

#include "app/ui/canvas.hpp"
#include "core/reception/obstacle_ring.hpp"

// What stands around the rig, as marks.
namespace mastwise::ui {

// A tree from above; `size` is its radius.
void draw_tree(Canvas& canvas, Point center, float size, Color ink, Color ground);
// A hill as contour lines; `size` is the radius of the lowest.
void draw_hill(Canvas& canvas, Point center, float size, Color ink);

// The picture of a kind of side, for a choice: a piece of open ring, two trees, a hill, a rig.
void draw_side_picture(Canvas& canvas, Rect room, reception::SideKind kind, Color ink,
                       Color ground);

// The obstacles of a ring as marks on a dial, each in the middle of its side at `radius` from the
// center, `size` high. `up`: the true bearing at the top of the dial. Open and unmarked sides have
// no mark.
void draw_obstacles(Canvas& canvas, const Theme& theme, Point center, float radius, float size,
                    const reception::ObstacleRing& ring, Bearing<True> up);

}  // namespace mastwise::ui
