#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/rig_shape.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

// The first start: from nothing to the first heading in three steps, each with its state.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Canvas;
using ui::Color;
using ui::Face;
using words::fill;
using words::say;

constexpr float kStartAct = 76.0f, kStepText = 92.0f, kAdviceLine = 30.0f;

// The rig from above, its nose to the right.
void draw_lying_rig(Canvas& canvas, Point c, float length, Color color) {
  const float scale = length / 165.0f;
  const auto shape = [&](const auto& points) {
    std::vector<Point> placed;
    for (const ui::RigPoint& point : points) {
      placed.push_back({c.x + scale * point.ahead, c.y + scale * point.right});
    }
    return placed;
  };
  canvas.polyline(shape(ui::kRigOutline), color, 3.0f, true);
  canvas.polyline(shape(ui::kRigWindscreen), color, 3.0f);
}

void draw_lobe(Canvas& canvas, Point from, float length, float width, bool down, Color color) {
  std::vector<Point> lobe;
  for (int degrees = 0; degrees < 360; degrees += 10) {
    const double angle = degrees * std::numbers::pi / 180.0;
    const auto across = static_cast<float>(0.5 * width * std::sin(angle));
    const auto along = static_cast<float>(0.5 * length * (1.0 - std::cos(angle)));
    lobe.push_back({from.x + across, from.y + (down ? along : -along)});
  }
  canvas.polyline(lobe, color, 2.5f, true);
}

void two_faced(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  const float reach = 0.46f * std::min(room.height(), 1.2f * room.width());
  draw_lobe(canvas, c, reach, 0.8f * reach, false, color);
  draw_lobe(canvas, c, reach, 0.8f * reach, true, color);
  draw_lying_rig(canvas, c, 110.0f, color);
  canvas.line({c.x - 26.0f, c.y}, {c.x + 22.0f, c.y}, color, 7.0f);
}

void one_way(Canvas& canvas, Rect room, Color color) {
  const Point c{room.center().x, room.center().y + 0.2f * room.height()};
  draw_lobe(canvas, c, 0.62f * room.height(), 0.42f * room.height(), false, color);
  draw_lying_rig(canvas, c, 110.0f, color);
  canvas.line({c.x, c.y + 16.0f}, {c.x, c.y - 18.0f}, color, 4.0f);
  for (int bar = 0; bar < 4; ++bar) {
    const float half = 20.0f - 4.0f * static_cast<float>(bar),
                y = 14.0f - 10.0f * static_cast<float>(bar);
    canvas.line({c.x - half, c.y + y}, {c.x + half, c.y + y}, color, 4.0f);
  }
}

void all_round(Canvas& canvas, Rect room, Color color) {
  const Point c = room.center();
  canvas.circle(c, std::min(0.48f * room.height(), 66.0f), color, 2.5f);
  draw_lying_rig(canvas, c, 110.0f, color);
  canvas.disc(c, 14.0f, color);
}

void on_a_pole(Canvas& canvas, Rect room, Color color) {
  constexpr float kWhole = 200.0f;  // rig and lobe side by side
  const float scale = std::min(1.0f, room.width() / kWhole);
  const Point c{room.center().x - 46.0f * scale, room.center().y + 0.14f * room.height()};
  draw_lying_rig(canvas, c, 100.0f * scale, color);
  const Point pole{room.center().x + 52.0f * scale, c.y + 6.0f};
  const float reach = std::min(room.height(), 200.0f * scale);
  draw_lobe(canvas, {pole.x, pole.y - 12.0f}, 0.6f * reach, 0.42f * reach, false, color);
  canvas.line({pole.x - 20.0f, pole.y - 10.0f}, {pole.x + 20.0f, pole.y - 10.0f}, color, 7.0f);
  canvas.circle({pole.x, pole.y + 4.0f}, 7.0f, color, 3.0f);
}

struct Antenna {
  const char* key;
  const char* label;
  const char* preset;
  void (*picture)(Canvas&, Rect, Color);
};
constexpr std::array kAntennas{
    Antenna{"two", "Two-faced crank-up", "Bidirectional crank-up with amplifier", two_faced},
    Antenna{"one", "One-way crank-up", "Directional crank-up with amplifier", one_way},
    Antenna{"round", "All-round roof disc", "Omnidirectional roof disc with amplifier", all_round},
    Antenna{"pole", "Panel on a pole", "Panel on a pole with amplifier", on_a_pole},
};

class Start {
 public:
  Start(Ui& ui, const Shared& shared)
      : ui_(ui), canvas_(ui.canvas()), theme_(ui.theme()), shared_(shared) {}

  void draw();

 private:
  bool has_position() const { return shared_.findings.position.has_value(); }
  std::optional<std::size_t> stations() const {
    if (!shared_.findings.on_board) return std::nullopt;
    return shared_.findings.on_board->count;
  }
  bool has_stations() const { return stations().value_or(0) > 0; }

  void head(Rect page);
  void step(int number, Rect row, bool done);
  float act_width() const { return ui_.portrait() ? 220.0f : 264.0f; }
  std::size_t advice_lines(const std::string& advice) const;
  float step_height(const std::string& advice) const;
  void texts(Rect row, const std::string& label, const std::string& state,
             const std::string& advice, float right);
  std::string where_advice() const;
  std::string stations_advice() const;
  void where(Rect row);
  void stations_step(Rect row);
  void antenna(Rect row);
  void foot(Rect row);

  Ui& ui_;
  Canvas& canvas_;
  const ui::Theme& theme_;
  const Shared& shared_;
};

void Start::head(Rect page) {
  canvas_.text({page.left, page.top + 20.0f}, "Mastwise", Face::TextBold, theme_.accent);
  ui::text_within(canvas_, {page.left, page.top + 64.0f}, page.width(),
                  say("Three steps to your first heading"),
                  ui_.portrait() ? Face::Cardinal : Face::Matter, theme_.ink);
}

// A number in a ring, or a check in a disc.
void Start::step(int number, Rect row, bool done) {
  const Point c{row.left + 32.0f, row.top + 50.0f};
  if (!done) {
    canvas_.circle(c, 30.0f, theme_.accent, 4.0f);
    canvas_.text({c.x, c.y + 12.0f}, std::to_string(number), Face::Cardinal, theme_.ink,
                 Align::Center);
    return;
  }
  canvas_.disc(c, 30.0f, theme_.accent);
  const std::array check{Point{c.x - 13.0f, c.y + 1.0f}, Point{c.x - 4.0f, c.y + 11.0f},
                         Point{c.x + 14.0f, c.y - 11.0f}};
  canvas_.polyline(check, theme_.on_accent, 6.0f);
}

void Start::texts(Rect row, const std::string& label, const std::string& state,
                  const std::string& advice, float right) {
  const float left = row.left + kStepText, room = right - left;
  const auto line = [&](float y, const std::string& words, Face face, Color color) {
    ui::text_within(canvas_, {left, row.top + y}, room, words, face, color);
  };
  line(26.0f, label, Face::Text, theme_.second_ink);
  const auto fits = [&](Face face) { return canvas_.text_width(state, face) <= room; };
  line(66.0f, state,
       fits(Face::Matter)  ? Face::Matter
       : fits(Face::Value) ? Face::Value
                           : Face::TextBold,
       theme_.ink);
  if (advice_lines(advice) == 1) return line(100.0f, advice, Face::Text, theme_.ink);
  ui_.paragraph({left, row.top + 100.0f}, room, kAdviceLine, advice, Face::Text, theme_.ink);
}

// An upright screen has the height for all of it.
std::size_t Start::advice_lines(const std::string& advice) const {
  if (!ui_.portrait()) return 1;
  const float room = ui_.screen().width() - 2.0f * ui::kMargin - kStepText - act_width() - 16.0f;
  return ui_.wrapped(advice, room, Face::Text).size();
}

float Start::step_height(const std::string& advice) const {
  constexpr float kStep = 118.0f;
  return kStep + ui_.line(kAdviceLine, Face::Text) * static_cast<float>(advice_lines(advice) - 1);
}

std::string Start::where_advice() const {
  if (!has_position()) {
    return shared_.in_browser ? say("Allow it in the browser, or type the nearest town.")
                              : say("Plug in GPS, or type the nearest town.");
  }
  if (shared_.stop.source == PositionSource::ByHand) return say("Typed by hand");
  return shared_.in_browser ? say("Found automatically") : say("By GPS");
}

std::string Start::stations_advice() const {
  return has_stations() ? say("Old tables: headings hold, channels may not.")
                        : say("Import a regulator's table, or practice first.");
}

// The town near the position, or how the receiver is doing.
void Start::where(Rect row) {
  step(1, row, has_position());
  const Rect act{row.right - act_width(), row.top + 16.0f, row.right, row.top + 16.0f + kStartAct};
  std::string state =
      shared_.in_browser ? say("Looking for your position") : say("Looking for a receiver");
  if (has_position()) {
    const Position& at = *shared_.findings.position;
    const auto* near = near_place_of(shared_, at);
    state = near == nullptr ? format_position(at, shared_.settings.notation)
                            : words::sentence(words::near_place(*near, shared_.settings.miles));
  }
  texts(row, say("Where you are"), state, where_advice(), act.left - 16.0f);
  if (ui_.button("type place", act, has_position() ? say("Change") : say("Type a town"),
                 has_position() ? ui::ButtonLook::Plain : ui::ButtonLook::Filled)) {
    ui_.emit(act::OpenKeypad{KeypadPurpose::Position});
  }
}

void Start::stations_step(Rect row) {
  step(2, row, has_stations());
  const Rect act{row.right - act_width(), row.top + 16.0f, row.right, row.top + 16.0f + kStartAct};
  const auto count = stations();
  const std::string state =
      !count        ? say("Counting")
      : *count == 0 ? say("None yet")
                    : fill(*count == 1 ? say("{number} station") : say("{number} stations"),
                           {{"number", std::to_string(*count)}});
  texts(row, say("Stations on board"), state, stations_advice(), act.left - 16.0f);
  const bool next = has_position() && !has_stations();
  if (ui_.button("data", act, say("Import"),
                 next ? ui::ButtonLook::Filled : ui::ButtonLook::Plain)) {
    ui_.emit(act::OpenSheet{Sheet::Import});
  }
}

void Start::antenna(Rect row) {
  step(3, row, true);
  canvas_.text({row.left + kStepText, row.top + 26.0f},
               say("Your antenna. Not this one? Touch yours."), Face::Text, theme_.second_ink);
  std::vector<ui::Option> options;
  std::optional<std::size_t> chosen;
  for (std::size_t i = 0; i < kAntennas.size(); ++i) {
    const Antenna& antenna = kAntennas[i];
    options.push_back({antenna.key, say(antenna.label), antenna.picture});
    if (gear_of(shared_.settings.gear).name == antenna.preset) chosen = i;
  }
  const Rect tiles{row.left + kStepText, row.top + 40.0f, row.right, row.bottom};
  const auto touched = ui::segmented(ui_, "antenna", tiles, options, chosen);
  if (touched) ui_.emit(act::ChooseGear{GearChoice{.preset = kAntennas[*touched].preset}});
}

void Start::foot(Rect row) {
  const float width = std::min(280.0f, 0.36f * row.width());
  const Rect practice{row.left, row.bottom - kStartAct, row.left + width, row.bottom};
  if (ui_.button("practice", practice, say("Practice first"), ui::ButtonLook::Plain)) {
    ui_.emit(act::SwitchPractice{});
    ui_.emit(act::OpenSheet{Sheet::None});
    ui_.emit(act::Show{Place::Stations});
  }
  const Rect show{row.right - std::min(464.0f, row.width() - width - 24.0f), practice.top,
                  row.right, practice.bottom};
  const float between = show.left - practice.right - 32.0f;
  const std::string invented = say("Invented stations and hills");
  if (canvas_.text_width(invented, Face::Text) < between) {
    canvas_.text({practice.right + 16.0f, practice.center().y + 9.0f}, invented, Face::Text,
                 theme_.second_ink);
  }
  const bool ready = has_position() && has_stations();
  if (ui_.button("show", show, say("Show what I can get"),
                 ready ? ui::ButtonLook::Filled : ui::ButtonLook::Plain, ready)) {
    ui_.emit(act::OpenSheet{Sheet::None});
    ui_.emit(act::Show{Place::Stations});
  }
}

void Start::draw() {
  constexpr float kHead = 84.0f, kGap = 16.0f;
  const Rect page = ui_.screen().inset(ui::kMargin);
  head(page);
  const auto rule = [&](float y) {
    canvas_.line({page.left + kStepText, y}, {page.right, y}, theme_.rule, 2.0f);
  };
  Rect row{page.left, page.top + kHead, page.right, page.top + kHead + step_height(where_advice())};
  where(row);
  rule(row.bottom);
  row = {row.left, row.bottom, row.right, row.bottom + step_height(stations_advice())};
  stations_step(row);
  rule(row.bottom);
  const float foot_top = page.bottom - kStartAct;
  const float bottom = std::min(foot_top - kGap, row.bottom + 300.0f);
  antenna({row.left, row.bottom + 4.0f, row.right, bottom});
  foot({page.left, foot_top, page.right, page.bottom});
}

}  // namespace

void draw_start_sheet(Ui& ui, const Shared& shared) {
  Start(ui, shared).draw();
}

}  // namespace mastwise::screens
