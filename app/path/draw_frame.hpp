#pragma once

#include "app/ui/ui.hpp"
#include "core/reception/path_picture.hpp"

#include <string>

namespace mastwise::screens {

inline constexpr float kHeightsAxis = 96.0f;   // room of the axis on the left
inline constexpr float kPathRigRoom = 76.0f;   // for the rig, left of the near end
inline constexpr float kDistanceAxis = 44.0f;  // under the ground

// Where the ray's picture is drawn within its area.
ui::Rect path_plot(ui::Rect area);

// Distances across and heights up, of one picture.
class PathFrame {
 public:
  PathFrame(ui::Rect area, const reception::PathPicture& picture);

  ui::Rect plot() const { return plot_; }
  ui::Point at(double distance_m, double height_m) const;
  double lowest_m() const { return lowest_m_; }
  double range_m() const { return range_m_; }  // of what is drawn; there is room for words over it
  double exaggeration() const;                 // how many times taller heights are than distances

 private:
  double height_m() const;

  ui::Rect plot_;
  double distance_m_;
  double lowest_m_ = 1e9, range_m_ = 0.0;
};

// 1, 2 or 5 times a power of ten, so that at most `most` steps fit into the range.
double nice_step(double range, double most);
// "6,000".
std::string grouped(double number);

}  // namespace mastwise::screens
