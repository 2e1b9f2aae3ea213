#pragma once

#include "app/map/draw_labels.hpp"
#include "app/map/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

#include <array>
#include <string>
#include <vector>

namespace mastwise::screens {

// One frame of the map: where its places are on the screen, and where there is room for words.
class MapFrame {
 public:
  // `covered`: what is drawn over the map afterwards.
  MapFrame(ui::Ui& ui, ui::Rect area, const std::vector<ui::Rect>& covered, const Shared& shared,
           const MapState& map);

  // Shaded ground, the chance around the stop, coasts and borders, ground behind ridges or unknown.
  void draw_ground();
  // The ring of bearings with both norths, the tolerance and the way to the target.
  void draw_rings();
  // Rings of distance, stations by chance with their compass headings, the best spots, towns,
  // states, the rig.
  void draw_marks();

 private:
  struct Ring {
    double step, unit_m;
  };
  struct RingName {
    ui::Rect plate;
    std::string words;
  };
  struct Mark;
  struct Label;

  ui::Point at(map::PlanePoint point) const;
  ui::Point stop() const { return at({}); }
  float units(double distance_m) const {
    return static_cast<float>(distance_m / map_.view.meters_per_unit);
  }
  bool seen(ui::Point point, float margin = 0.0f) const {
    return area_.inset(-margin).contains(point);
  }
  // A direction on the screen, clockwise from up.
  float on_screen(Bearing<True> bearing) const {
    return static_cast<float>((bearing - map_.view.up).clockwise_deg());
  }
  // The radius of the ring of bearings.
  float bearings_radius() const;
  Ring ring_step() const;
  int ring_count() const;
  std::array<ui::Point, 4> square(double half_m) const;
  std::uint64_t versioned(std::uint64_t serial) const;

  void draw_relief();
  void draw_area_scan();
  void draw_unknown();
  void draw_shadow();
  void draw_lines();
  void draw_bearings();
  void draw_tolerance();
  void draw_tolerance_end(float end, float past, double amount_deg);
  void draw_target_way();

  void draw_other_stations();
  std::vector<Mark> place_marks();
  std::vector<Label> place_labels(const std::vector<Mark>& marks);
  void draw_mark(ui::Point at, const StationRow& row);
  void draw_label(const Label& label);
  void draw_target_beyond();
  void place_ring_names();
  void draw_distances(const std::vector<ui::Rect>& words);
  void draw_towns();
  void draw_regions();
  void draw_spots();
  void draw_rig();

  ui::Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  ui::Rect area_;
  const Shared& shared_;
  const MapState& map_;
  LabelField field_;
  std::vector<RingName> ring_names_;
};

}  // namespace mastwise::screens
