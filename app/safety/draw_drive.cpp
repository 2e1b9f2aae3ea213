#include "app/safety/draw.hpp"
#include "app/safety/draw_alarm.hpp"
#include "app/safety/draw_pictures.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/cautions.hpp"
#include "app/words/language.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <cmath>

// One face under way, read in a glance of 2 s [NHTSA visual-manual guidelines, 78 FR 24817]: how
// far to the next stop, how fast, and that the antenna is down.
namespace mastwise {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using words::say;

constexpr float kPassengerHigh = 120.0f, kPassengerWide = 480.0f;

// Figures with their unit beside them. Returns the right end.
float draw_figure(Ui& ui, Point at, const std::string& figures, const std::string& unit, Face face,
                  Face unit_face, Align align) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Color ink = ui.theme().ink;
  const float wide = canvas.text_width(figures, face), gap = 18.0f;
  const float unit_wide = canvas.text_width(unit, unit_face);
  const float left = align == Align::Right ? at.x - wide - gap - unit_wide : at.x;
  canvas.text({left, at.y}, figures, face, ink);
  canvas.text({left + wide + gap, at.y}, unit, unit_face, ink);
  return left + wide + gap + unit_wide;
}

// The way from where the drive began to the next stop, with the rig on it.
void draw_way(Ui& ui, Rect area, const std::optional<NextStop>& next) {
  ui::Canvas& canvas = ui.canvas();
  const ui::Theme& theme = ui.theme();
  const float road = area.bottom - 16.0f;
  ui::RigProfile rig = rig_of(theme, 4.5);
  rig.units_per_m = std::min(26.0f, (area.height() - 24.0f) / 3.9f);
  const float half = 0.5f * rig.length_m * rig.units_per_m;
  float share = 0.3f;
  if (next && next->whole_m && *next->whole_m > 0.0) {
    share = static_cast<float>(std::clamp(1.0 - next->left_m / *next->whole_m, 0.0, 1.0));
  }
  const float left = area.left + 16.0f, right = area.right - 20.0f;
  const float at = std::clamp(left + share * (right - left), left + half, right - half - 24.0f);
  rig.ground = {at, road - 3.0f};
  canvas.line({left, road}, {at, road}, theme.rule, 8.0f);
  canvas.line({at, road}, {right, road}, theme.ink, 10.0f);
  if (next) {
    canvas.disc({right, road}, 20.0f, theme.paper);
    canvas.circle({right, road}, 20.0f, theme.ink, 8.0f);
  }
  ui::draw_rig_side(canvas, rig);
  const char* down = say("Antenna down");
  const float wide = canvas.text_width(down, Face::Matter);
  const bool ahead = at + half + 32.0f + wide < area.right - 40.0f;
  const float room =
      ahead ? area.right - 40.0f - (at + half + 32.0f) : at - half - 32.0f - area.left;
  // Beside the rig, else above it.
  if (wide <= room) {
    canvas.text({ahead ? at + half + 32.0f : at - half - 32.0f, road - 30.0f}, down, Face::Matter,
                theme.ink, ahead ? Align::Left : Align::Right);
  } else {
    ui::text_within(canvas, {area.left, area.top + 4.0f}, area.width(), down, Face::Matter,
                    theme.ink);
  }
}

// A passenger holds it on purpose; the ring fills.
void draw_passenger(Ui& ui, Rect rect) {
  ui.begin_prompt("under way");
  const auto held = ui.hold_touch("passenger", rect, touch::kHoldToUnlock);
  if (held.confirmed) ui.emit(act::UnlockForPassenger{});
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  canvas.fill(rect, theme.panel, 14.0f);
  canvas.outline(rect.inset(1.5f), theme.accent, 3.0f, 14.0f);
  const Point center{rect.left + 64.0f, rect.center().y};
  canvas.circle(center, 38.0f, theme.rule, 8.0f);
  canvas.disc(center, 14.0f, theme.accent);
  if (held.progress > 0.0f) {
    canvas.arc(center, 38.0f, 0.0f, 360.0f * held.progress, theme.accent, 10.0f);
  }
  const float x = rect.left + 124.0f;
  canvas.text({x, rect.center().y - 10.0f}, say("Passenger?"), Face::Cardinal, theme.accent);
  const char* how = say("Hold 3 s to unlock");
  canvas.text({x, rect.center().y + 34.0f}, how, Face::Cardinal, theme.accent, Align::Left,
              canvas.size_within(rect.right - 8.0f - x, how, Face::Cardinal));
}

class Underway {
 public:
  Underway(Ui& ui, const Shared& shared, const std::optional<NextStop>& next)
      : ui_(ui), shared_(shared), next_(next) {}

  void draw();

 private:
  void head(Rect area);
  void figures(Rect area);
  std::string speed() const {
    const auto& kmh = shared_.findings.speed_kmh;
    return kmh ? words::speed_number(*kmh, shared_.settings.miles) : "–";
  }
  std::string speed_unit() const { return words::speed_unit(shared_.settings.miles); }

  Ui& ui_;
  const Shared& shared_;
  const std::optional<NextStop>& next_;
};

void Underway::head(Rect area) {
  ui::Canvas& canvas = ui_.canvas();
  const ui::Theme& theme = ui_.theme();
  float room = area.width();
  if (shared_.stop.practice) {
    canvas.text({area.right, area.top + 26.0f}, say("PRACTICE"), Face::TextBold, theme.warning,
                Align::Right);
    room -= canvas.text_width(say("PRACTICE"), Face::TextBold) + 24.0f;
  }
  if (!next_) return;
  canvas.text({area.left, area.top + 30.0f}, say("Next stop"), Face::Cardinal, theme.second_ink);
  if (next_->name.empty()) return;
  const std::string name =
      ui::shortened(canvas, next_->name, Face::Matter, std::max(room, 0.8f * area.width()));
  canvas.text({area.left, area.top + 82.0f}, name, Face::Matter, theme.ink);
}

void Underway::figures(Rect area) {
  if (!next_) {
    draw_figure(ui_, {area.left, area.bottom - 12.0f}, speed(), speed_unit(), Face::Roof, Face::Big,
                Align::Left);
    return;
  }
  const bool miles = shared_.settings.miles;
  const std::string distance = fmt::format("{:.0f}", next_->left_m / words::distance_unit_m(miles));
  const float first = ui_.portrait() ? area.top + 220.0f : area.bottom - 12.0f;
  const float end = draw_figure(ui_, {area.left, first}, distance, words::distance_unit(miles),
                                Face::Roof, Face::Big, Align::Left);
  const char* straight = say("straight line");
  const float taken = ui_.portrait() ? 0.0f : 330.0f;  // by the speed
  if (end + 16.0f + ui_.canvas().text_width(straight, Face::Cardinal) < area.right - taken) {
    ui_.canvas().text({end + 16.0f, first}, straight, Face::Cardinal, ui_.theme().second_ink);
  }
  const float second = ui_.portrait() ? 0.5f * (first + area.bottom) + 60.0f : first;
  draw_figure(ui_, {ui_.portrait() ? area.left : area.right, second}, speed(), speed_unit(),
              Face::Answer, Face::Matter, ui_.portrait() ? Align::Left : Align::Right);
}

void Underway::draw() {
  const Rect screen = ui_.screen(), page = screen.inset(2.0f * ui::kMargin);
  const float foot = page.bottom - kPassengerHigh;
  const float road = foot - 44.0f;
  ui_.canvas().fill({screen.left, road, screen.right, screen.bottom}, ui_.theme().panel);
  head({page.left, page.top, page.right, page.top + 90.0f});
  const float way = std::min(140.0f, 0.2f * page.height());
  figures({page.left, page.top + 100.0f, page.right, road - way - 12.0f});
  draw_way(ui_, {page.left, road - way, page.right, road + 16.0f}, next_);
  const float wide = std::min(kPassengerWide, page.width());
  const bool left_handed = shared_.settings.left_handed;
  const float left = left_handed ? page.left : page.right - wide;
  draw_passenger(ui_, {left, foot, left + wide, page.bottom});
  if (ui_.portrait()) return;
  const float room = page.width() - wide - 32.0f;
  const float x = left_handed ? left + wide + 32.0f : page.left;
  ui_.paragraph({x, foot + 50.0f}, room, 42.0f, say("Screens come back when you stop"),
                Face::Cardinal, ui_.theme().ink);
}

}  // namespace

void draw_drive_face(Ui& ui, const Shared& shared, const SafetyState& state,
                     const std::optional<NextStop>& next) {
  if (state.stopped || state.drive == safety::Drive::Alarm) {
    draw_alarm(ui, shared, state);
  } else {
    Underway(ui, shared, next).draw();
  }
}

}  // namespace mastwise
