#include "app/safety/draw_alarm.hpp"

#include "app/safety/draw_pictures.hpp"
#include "app/safety/update.hpp"
#include "app/ui/layout.hpp"
#include "app/words/cautions.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace mastwise {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using words::say;

constexpr float kFrame = 20.0f, kAct = 112.0f;

// The rig drives with its antenna toward a bridge.
void draw_collision(Ui& ui, Rect area) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  constexpr float kWide_m = 12.0f, kHigh_m = 5.6f, kRaised_m = 4.7f;
  const float scale = std::min(area.width() / kWide_m, area.height() / kHigh_m);
  const float ground = area.bottom - 8.0f;
  ui::RigProfile rig;
  rig.units_per_m = scale;
  rig.raised_m = kRaised_m;
  rig.antenna = ui::RigProfile::Antenna::Raised;
  rig.ink = rig.body = theme.on_warning;
  rig.glass = theme.warning;
  rig.ground = {area.left + 0.5f * rig.length_m * scale, ground};
  ui::draw_rig_side(canvas, rig);
  canvas.line({area.left, ground}, {area.left + kWide_m * scale, ground}, theme.on_warning, 7.0f);
  const float bridge = area.left + 9.7f * scale;
  canvas.fill({bridge, ground - 5.2f * scale, bridge + 2.3f * scale, ground - 4.1f * scale},
              theme.on_warning);
  canvas.fill({bridge + 1.3f * scale, ground - 4.2f * scale, bridge + 2.0f * scale, ground},
              theme.on_warning);
  const Point tip{ui::rig_antenna_end(rig).x + 0.3f * scale, ui::rig_antenna_end(rig).y};
  for (float x = tip.x; x < bridge - 0.5f * scale; x += 0.55f * scale) {
    canvas.line({x, tip.y}, {x + 0.33f * scale, tip.y}, theme.on_warning, 5.0f);
  }
  for (const double turn_deg : {-140.0, -115.0, -65.0, -40.0}) {
    const Point hit{bridge - 0.05f * scale, tip.y};
    canvas.line(ui::around(hit, 0.2f * scale, turn_deg), ui::around(hit, 0.55f * scale, turn_deg),
                theme.on_warning, 5.0f);
  }
}

// The only act: less noise while the rig moves, an answer when it stands.
void draw_act(Ui& ui, Rect rect, const SafetyState& state, Monotonic now) {
  const ui::Theme& theme = ui.theme();
  const float baseline = rect.center().y + 15.0f;
  const char* label = state.stopped ? say("Stopped. I will lower it") : say("Quieter for 30 s");
  const bool wide = ui.canvas().text_width(label, Face::Matter) > rect.width() - 24.0f;
  if (state.stopped) {
    if (ui.touchable("will lower", rect)) ui.emit(act::WillLower{});
  } else if (alarm_is_quiet(state, now)) {
    using Seconds = std::chrono::duration<double>;
    const double left_s = std::ceil(Seconds(state.quiet_until - now).count());
    ui.canvas().text(
        {rect.center().x, baseline},
        words::fill(say("Quieter for {seconds} s"), {{"seconds", fmt::format("{:.0f}", left_s)}}),
        Face::Matter, theme.on_warning, Align::Center);
    return;
  } else if (ui.touchable("quiet alarm", rect)) {
    ui.emit(act::QuietAlarm{});
  }
  const bool pressed = ui.pressed("will lower") || ui.pressed("quiet alarm");
  const ui::Color ground = pressed ? theme.warning : theme.on_warning;
  const ui::Color ink = pressed ? theme.on_warning : theme.warning;
  ui.canvas().fill(rect, ground, 14.0f);
  if (pressed) ui.canvas().outline(rect.inset(1.5f), ink, 3.0f, 14.0f);
  ui.canvas().text({rect.center().x, baseline}, label, wide ? Face::Cardinal : Face::Matter, ink,
                   Align::Center);
}

// How fast the rig goes, and PRACTICE. Returns its height.
float draw_corner(Ui& ui, Point top_right, const Shared& shared) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Color ink = ui.theme().on_warning;
  if (shared.findings.speed_kmh) {
    const bool miles = shared.settings.miles;
    canvas.text({top_right.x, top_right.y + 54.0f},
                fmt::format("{} {}", words::speed_number(*shared.findings.speed_kmh, miles),
                            words::speed_unit(miles)),
                Face::Big, ink, Align::Right);
  }
  if (shared.stop.practice) {
    canvas.text({top_right.x, top_right.y + 92.0f}, say("PRACTICE"), Face::TextBold, ink,
                Align::Right);
  }
  return 116.0f;
}

}  // namespace

void draw_alarm(Ui& ui, const Shared& shared, const SafetyState& state) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  // The frame blinks once in two seconds: the only thing that blinks at all.
  const bool lit =
      state.stopped ||
      std::chrono::floor<std::chrono::seconds>(shared.now).time_since_epoch().count() % 2 == 0;
  canvas.fill(ui.screen(), lit ? theme.on_warning : theme.warning);
  canvas.fill(ui.screen().inset(kFrame), theme.warning);
  const Rect page = ui.screen().inset(kFrame + 24.0f);
  Rect act{page.left, page.bottom - kAct, page.right, page.bottom};
  // In a thumb's reach, away from the middle of a wide screen.
  draw_act(ui, act, state, shared.now);

  const std::string title = say("ANTENNA UP");
  const bool upright = ui.portrait();
  float top = page.top;
  if (upright) top += draw_corner(ui, {page.right, page.top}, shared);
  const float room = page.width() - (upright ? 0.0f : 270.0f);
  const float below =
      ui.paragraph({page.left, top + 88.0f}, room, 112.0f, title, Face::Answer, theme.on_warning);
  if (!upright) draw_corner(ui, {page.right, page.top}, shared);
  const Rect rest{page.left, below - 112.0f + 40.0f, page.right, act.top - 24.0f};
  const auto orders = [&](Point at) {
    canvas.text({at.x, at.y + 100.0f}, say("Stop."), Face::Answer, theme.on_warning);
    canvas.text({at.x, at.y + 192.0f}, say("Lower it."), Face::Big, theme.on_warning);
    canvas.text({at.x, at.y + 272.0f}, say("Then drive."), Face::Big, theme.on_warning);
  };
  constexpr float kOrders = 300.0f;
  if (upright) {
    draw_collision(ui, {rest.left, rest.top, rest.right, rest.bottom - kOrders});
    orders({rest.left, rest.bottom - kOrders});
  } else {
    constexpr float kOrdersWidth = 420.0f;
    draw_collision(ui, {rest.left, rest.top, rest.right - kOrdersWidth - 24.0f, rest.bottom});
    const float above = std::min(rest.center().y - 0.5f * kOrders, rest.bottom - kOrders);
    orders({rest.right - kOrdersWidth, above});
  }
}

}  // namespace mastwise
