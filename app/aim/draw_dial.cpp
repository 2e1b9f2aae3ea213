#include "app/aim/draw_dial.hpp"

#include "app/ui/dial.hpp"

#include <algorithm>

namespace mastwise::screens {
namespace {

using ui::Rect;
using ui::Ui;

Bearing<True> top_of_dial(Ui& ui, const Shared& shared, const AimState& aim) {
  const Findings& found = shared.findings;
  Bearing<True> up;
  if (aim.dial_up == DialUp::Nose && found.nose) up = found.nose->nose();
  if (aim.dial_up == DialUp::Facing && found.facing) up = *found.facing;
  return Bearing<True>::degrees(ui.smooth_angle("dial up", up.degrees()));
}

void add_others(ui::DialView& view, const Shared& shared) {
  if (!shared.stations) return;
  constexpr std::size_t kMost = 8;
  for (const StationRow& row : shared.stations->rows) {
    if (view.others.size() == kMost) break;
    const bool is_target = shared.stop.target && row.station.id == shared.stop.target->id;
    if (row.outlook && !is_target) {
      view.others.push_back({.label = row.station.call_sign,
                             .bearing = row.outlook->bearing,
                             .wanted = is_pinned(shared.stop, key_of(row.station))});
    }
  }
}

// The antenna's pattern in the target's band, turned to the target.
void add_pattern(ui::DialView& view, const Shared& shared) {
  if (!shared.findings.outlook || !view.target) return;
  const gear::Gear gear = gear_of(shared.settings.gear);
  const gear::Pattern& pattern = gear.antenna.in(shared.findings.outlook->band).pattern;
  constexpr int kStepDeg = 4;
  for (int off_deg = 0; off_deg < 360; off_deg += kStepDeg) {
    view.pattern_db.push_back(pattern.relative_db(Turn::clockwise_deg(off_deg)));
  }
}

}  // namespace

void draw_aim_dial(Ui& ui, Rect area, const Shared& shared, const AimState& aim) {
  ui::DialView view;
  view.radius = std::min(area.width(), area.height()) / 2.0f - ui::kDialMargin;
  view.center = {area.center().x, area.bottom - view.radius - ui::kDialMargin + 24.0f};
  view.up = top_of_dial(ui, shared, aim);
  if (shared.findings.field) view.declination = shared.findings.field->declination;
  view.nose = shared.findings.nose;
  if (shared.findings.card) view.target = shared.findings.card->bearing_true;
  view.slack = shared.findings.slack;
  view.facing = shared.findings.facing;
  add_others(view, shared);
  add_pattern(view, shared);
  ui::draw_dial(ui, view);
}

}  // namespace mastwise::screens
