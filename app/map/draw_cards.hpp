#pragma once

#include "app/map/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/ui.hpp"

#include <string>

namespace mastwise::screens {

inline constexpr float kMapCard = 128.0f;  // height

// The answer: the target's compass heading, by how much it may be off, and the same as a true
// bearing. The width that it needs; narrower it leaves out what is least.
float answer_width(ui::Ui& ui, const Shared& shared);
void draw_answer(ui::Ui& ui, ui::Rect rect, const Shared& shared);

// Whether a card of something touched is open.
bool has_card(const Shared& shared, const MapState& map);
// The touched station, the held place, or the best spots, with their acts.
void draw_card(ui::Ui& ui, ui::Rect rect, const Shared& shared, const MapState& map);

// What keeps the map from being whole: a failed sheet, no stations, ground still being drawn; empty
// if nothing does. A warning is what went wrong.
struct MapStatus {
  std::string words;
  bool warning = false;
};
MapStatus map_status(const Shared& shared, const MapState& map);

}  // namespace mastwise::screens
