#pragma once

#include "app/plan/draw.hpp"

namespace mastwise::screens {

// The plan's table, with what no heading brings below it. The state has one.
void draw_plan_table(Ui& ui, Rect area, const Shared& shared, const PlanState& state);

// Its empty columns, dotted, before there is a plan.
void draw_empty_table(Ui& ui, Rect area);

}  // namespace mastwise::screens
