#pragma once

#include "app/model/action.hpp"
#include "app/model/model.hpp"
#include "app/ui/ui.hpp"

#include <string>

// The parts of the sheet that takes in tables, one for each step.
namespace mastwise::screens::import {

// The sheet's title, an act beside the one that closes it, and the room below.
struct Head {
  ui::Rect room;
  bool tapped;  // the act
};
Head draw_head(ui::Ui& ui, const std::string& title, const std::string& act,
               const std::string& label);

// Two columns, or one above the other where the screen is upright.
struct Halves {
  ui::Rect first, second;
};
Halves halves(const ui::Ui& ui, ui::Rect room);

void draw_table(ui::Ui& ui, const Model& model);
void draw_check_map(ui::Ui& ui, ui::Rect rect, const TableLook& look, bool miles);
void draw_taking_in(ui::Ui& ui, const Model& model);
void draw_report(ui::Ui& ui, const Model& model);

}  // namespace mastwise::screens::import
