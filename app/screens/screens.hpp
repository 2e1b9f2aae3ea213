#pragma once

#include "app/model/action.hpp"
#include "app/model/model.hpp"
#include "app/ui/ui.hpp"

// Each draws a const model and can only emit actions.
namespace mastwise::screens {

using ui::Point;
using ui::Rect;
using ui::Ui;

// The whole window: the current place beside the rail, or the sheet that covers it.
void draw_program(Ui& ui, const Model& model);

void draw_here(Ui& ui, Rect area, const Model& model);
void draw_stations(Ui& ui, Rect area, const Model& model);
void draw_aim(Ui& ui, Rect area, const Model& model);
void draw_peak(Ui& ui, Rect area, const Model& model);
void draw_logbook(Ui& ui, Rect area, const Model& model);
void draw_ahead(Ui& ui, Rect area, const Model& model);

// These cover the whole screen.
void draw_keypad(Ui& ui, const Model& model);
void draw_gear_sheet(Ui& ui, const Model& model);
void draw_surroundings_sheet(Ui& ui, const Model& model);
void draw_path_sheet(Ui& ui, const Model& model);
void draw_plan_sheet(Ui& ui, const Model& model);
void draw_ways_sheet(Ui& ui, const Model& model);
void draw_scan_sheet(Ui& ui, const Model& model);
void draw_nose_sheet(Ui& ui, const Model& model);
void draw_paper_sheet(Ui& ui, const Model& model);
void draw_handle_sheet(Ui& ui, const Model& model);
void draw_checks_sheet(Ui& ui, const Model& model);
void draw_logbook_files_sheet(Ui& ui, const Model& model);
void draw_import_sheet(Ui& ui, const Model& model);
void draw_carries_sheet(Ui& ui, const Model& model);
void draw_roof(Ui& ui, const Model& model);

// The rows of stations that fit into the view.
void draw_station_rows(Ui& ui, Rect view, const Model& model);

// The stations as a map.
void draw_station_map(Ui& ui, Rect area, const Model& model);

}  // namespace mastwise::screens
