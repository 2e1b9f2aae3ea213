#pragma once

#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::screens {

// The height of a row; larger for larger letters.
inline float station_row(ui::Ui& ui) {
  constexpr float kUsual = 80.0f, kLines = 1.4f;
  return kUsual + kLines * ui.canvas().em_grown(ui::Face::Text);
}

struct RowView {
  const StationRow& row;
  std::string brings = {};  // the network, if the list is by network
  // It is under no common heading: says its own.
  bool own_heading = false;
};

// A station: network, channel, chance, the dearest reason, and a nail that pins it. A touch aims.
void draw_station_row(ui::Ui& ui, ui::Rect rect, const RowView& view, const Shared& shared);

}  // namespace mastwise::screens
