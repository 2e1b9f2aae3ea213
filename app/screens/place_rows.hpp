#pragma once

#include "app/model/model.hpp"
#include "app/ui/ui.hpp"

namespace mastwise::screens {

// The credit that the license of the place names requires wherever they are shown.
inline constexpr const char* kPlacesSource = "Place names: GeoNames (geonames.org), CC BY 4.0";

// The places found for the typed name, one row each.
void draw_place_rows(ui::Ui& ui, ui::Rect view, const Model& model);

}  // namespace mastwise::screens
