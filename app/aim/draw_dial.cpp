#include "app/aim/draw_dial.hpp"

#include "app/ui/dial.hpp"
#include "app/ui/side_marks.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"
#include "core/stations/networks.hpp"

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

// The likeliest stations, pinned ones first.
void add_others(ui::DialView& view, const Shared& shared) {
  if (!shared.stations) return;
  constexpr std::size_t kMost = 8;
  constexpr double kLeast_percent = 40.0;
  for (const bool pinned : {true, false}) {
    for (const StationRow& row : shared.stations->rows) {
      if (view.others.size() == kMost) break;
      const bool wanted = is_pinned(shared.stop, key_of(row.station));
      const bool is_target = shared.stop.target && row.station.id == shared.stop.target->id;
      if (!row.outlook || is_target || wanted != pinned) continue;
      if (!wanted && row.outlook->chance_percent.value_or(0.0) < kLeast_percent) continue;
      const std::string title = words::title(row.station);
      const auto space = title.find(' ');
      const std::string channel = space == std::string::npos ? "" : title.substr(space);
      const auto networks = networks_of(row.station);
      view.others.push_back({.label = networks.empty() ? title : networks.front() + channel,
                             .short_label = row.station.call_sign,
                             .bearing = row.outlook->bearing,
                             .chance_percent = row.outlook->chance_percent,
                             .wanted = wanted});
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

const NullHint* null_here(const Shared& shared) {
  if (!shared.stations || !shared.stations->target_null || !shared.stop.target) return nullptr;
  const bool same = shared.stations->question.target == key_of(*shared.stop.target);
  return same ? &*shared.stations->target_null : nullptr;
}

void draw_aim_dial(Ui& ui, Rect area, float acts_height, const Shared& shared,
                   const AimState& aim) {
  const Findings& found = shared.findings;
  ui::DialView view;
  view.radius = std::min(area.width(), area.height()) / 2.0f - ui::kDialMargin - 2.0f;
  view.center = area.center();
  view.room = {area.left, area.top, area.right, area.bottom - acts_height};
  view.up = top_of_dial(ui, shared, aim);
  if (found.field) view.declination = found.field->declination;
  view.nose = found.nose;
  if (found.card) {
    view.target = found.card->bearing_true;
    if (found.card->rig_angle) view.from_nose = words::from_nose(*found.card->rig_angle);
  }
  view.slack = found.slack;
  view.facing = found.facing;
  view.facing_error_deg = found.heading_error_deg;
  view.surroundings = [&](ui::Canvas& canvas, const ui::Theme& theme, ui::Point center,
                          float radius) {
    constexpr float kSize = 22.0f;
    ui::draw_obstacles(canvas, theme, center, radius - kSize, kSize, shared.stop.ring, view.up);
  };
  if (const NullHint* hint = null_here(shared)) {
    view.null = {hint->heading, hint->interferer_bearing, hint->width_deg};
  }
  add_others(view, shared);
  add_pattern(view, shared);
  ui::draw_dial(ui, view);
  ui::draw_dial_labels(ui, view);
}

}  // namespace mastwise::screens
