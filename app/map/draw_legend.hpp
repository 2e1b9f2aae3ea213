#pragma once

#include "app/map/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace mastwise::screens {

// What the marks on the map mean, as a line at its foot; only what is on the map, and as much as
// has room.
class Legend {
 public:
  static constexpr float kLine = 48.0f;

  Legend(ui::Ui& ui, const Shared& shared, const MapState& map);

  // For a width, of at most so many lines.
  float height(float width, std::size_t most_lines) const;
  void draw(ui::Rect rect) const;

 private:
  struct Entry {
    std::function<void(ui::Point)> mark;  // drawn around this middle
    float mark_width;
    std::string words;
  };
  float width_of(const Entry& entry, float share) const;
  // The first entry of each line after the first.
  std::vector<std::size_t> breaks(float width, float share) const;
  float share_in(float width, std::size_t most_lines) const;

  ui::Ui& ui_;
  std::vector<Entry> entries_;
};

// A length on the map, at the left or right end of its foot.
ui::Rect scale_bar_rect(ui::Rect map, bool right);
void draw_scale_bar(ui::Ui& ui, ui::Rect rect, const MapView& view, bool miles);

}  // namespace mastwise::screens
