#include "app/screens/aim_dial.hpp"

#include "app/ui/dial.hpp"

#include <algorithm>

namespace mastwise::screens {
namespace {

using ui::Rect;
using ui::Ui;

Bearing<True> top_of_dial(Ui& ui, const Model& model) {
  const Findings& found = model.findings;
  Bearing<True> up;
  if (model.dial_up == DialUp::Nose && found.nose) up = found.nose->nose();
  if (model.dial_up == DialUp::Facing && found.facing) up = *found.facing;
  return Bearing<True>::degrees(ui.smooth_angle("dial up", up.degrees()));
}

void add_others(ui::DialView& view, const Model& model) {
  if (!model.stations) return;
  constexpr std::size_t kMost = 8;
  for (const StationRow& row : model.stations->rows) {
    if (view.others.size() == kMost) break;
    const bool is_target = model.stop.target && row.station.id == model.stop.target->id;
    if (row.outlook && !is_target) {
      view.others.push_back({.label = row.station.call_sign,
                             .bearing = row.outlook->bearing,
                             .wanted = is_pinned(model.stop, key_of(row.station))});
    }
  }
}

// The antenna's pattern in the target's band, turned to the target.
void add_pattern(ui::DialView& view, const Model& model) {
  if (!model.findings.outlook || !view.target) return;
  const gear::Gear gear = gear_of(model.settings.gear);
  const gear::Pattern& pattern = gear.antenna.in(model.findings.outlook->band).pattern;
  constexpr int kStepDeg = 4;
  for (int off_deg = 0; off_deg < 360; off_deg += kStepDeg) {
    view.pattern_db.push_back(pattern.relative_db(Turn::clockwise_deg(off_deg)));
  }
}

}  // namespace

void draw_aim_dial(Ui& ui, Rect area, const Model& model) {
  ui::DialView view;
  view.radius = std::min(area.width(), area.height()) / 2.0f - ui::kDialMargin;
  view.center = {area.center().x, area.bottom - view.radius - ui::kDialMargin + 24.0f};
  view.up = top_of_dial(ui, model);
  if (model.findings.field) view.declination = model.findings.field->declination;
  view.nose = model.findings.nose;
  if (model.findings.card) view.target = model.findings.card->bearing_true;
  view.slack = model.findings.slack;
  view.facing = model.findings.facing;
  add_others(view, model);
  add_pattern(view, model);
  ui::draw_dial(ui, view);
}

}  // namespace mastwise::screens
