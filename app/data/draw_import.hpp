#pragma once

#include "app/data/state.hpp"
#include "app/shared/shared.hpp"
#include "app/ui/column.hpp"
#include "app/ui/ui.hpp"

#include <string>

// The import pages, one for each step.
namespace mastwise::screens::import {

// The page's title, an action beside Done, and the room below.
struct Head {
  ui::Rect room;
  bool tapped;  // the action's button
};
Head draw_head(ui::Ui& ui, const std::string& title, const std::string& act, const char* label);

// A row of a title and a line below it that leads on; true if it was touched.
bool row_onward(ui::Ui& ui, const std::string& name, ui::Rect row, const std::string& page,
                const std::string& title, const std::string& line);

// "N44W072, N44W073 and 3 more".
std::string squares_words(const std::vector<std::string>& cells, std::size_t most);

void draw_table(ui::Ui& ui, const Shared& shared, const Intake& data);
void draw_check_map(ui::Ui& ui, ui::Rect rect, const CheckMap& map,
                    const std::vector<CheckedStation>& sample, bool miles);
// Why the positions look wrong, and both readings to choose from.
void draw_suspicion(ui::Ui& ui, ui::Rect rect, const Shared& shared, const TableLook& look);
// What a pack holds, from where, and how much room it still needs.
void draw_pack(ui::Ui& ui, ui::Rect rect, const PackLook& pack);
// Returns where it ends.
float draw_pack_report(ui::Ui& ui, ui::Rect rect, const PackReport& pack);
// What the publishers have, and the details of one offer.
void draw_offers(ui::Ui& ui, const Shared& shared, const Intake& data);
void draw_fetch_report(ui::Column& column, const FetchReport& report);
void draw_routes(ui::Ui& ui, const Shared& shared, const Intake& data);
void draw_taking_in(ui::Ui& ui, const Intake& data);
void draw_report(ui::Ui& ui, const Shared& shared, const Intake& data);

}  // namespace mastwise::screens::import
