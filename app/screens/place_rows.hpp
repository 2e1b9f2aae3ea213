#pragma once

#include "app/model/model.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// Whose the names of places are, as their license wants it said where they are shown.
inline constexpr const char* kPlacesSource = "Names of places: GeoNames (geonames.org), CC BY 4.0";

// The places that were found for the name on the keypad, to be touched.
void draw_place_rows(ui::Ui& ui, ui::Rect view, const Model& model);

}  // namespace mastwise::screens
