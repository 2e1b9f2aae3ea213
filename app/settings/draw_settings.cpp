#include "app/settings/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/shared/stored_names.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/column.hpp"
#include "app/ui/icons.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/places.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace mastwise::screens {
namespace {

using ui::Canvas;
using ui::Color;
using ui::Face;
using ui::Option;
using ui::Point;
using ui::Rect;
using ui::Ui;
using words::say;

constexpr float kChoiceRow = 72.0f, kApart = 16.0f, kLabel = 144.0f;

void draw_sun(Canvas& canvas, Rect room, Color color) {
  ui::draw_sun(canvas, room.center(), color);
}
void draw_moon(Canvas& canvas, Rect room, Color color) {
  ui::draw_moon(canvas, room.center(), color);
}

// A lamp that keeps eyes used to the dark.
void draw_lamp(Canvas& canvas, Rect room, Color color) {
  canvas.disc(room.center(), 8.0f, color);
  canvas.circle(room.center(), 15.0f, color, 3.0f);
}

// The sun on its way over the horizon.
void draw_sun_path(Canvas& canvas, Rect room, Color color) {
  const Point middle{room.center().x, room.bottom - 4.0f};
  const float radius = std::min(0.36f * room.width(), room.height() - 12.0f);
  canvas.line({middle.x - radius - 14.0f, middle.y}, {middle.x + radius + 14.0f, middle.y}, color,
              2.5f);
  for (int degrees = -80; degrees <= 80; degrees += 16) {
    canvas.disc(ui::around(middle, radius, degrees), 1.8f, color);
  }
  const Point sun = ui::around(middle, radius, -36.0);
  canvas.disc(sun, 8.0f, color);
}

// A tablet with its rail and, under the thumb, its act.
auto hand_tile(bool left) {
  return [left](Canvas& canvas, Rect room, Color color) {
    const Point middle = room.center();
    const Rect tablet{middle.x - 33.0f, middle.y - 16.0f, middle.x + 33.0f, middle.y + 16.0f};
    canvas.outline(tablet, color, 2.5f, 5.0f);
    const float rail = left ? tablet.right - 15.0f : tablet.left + 15.0f;
    canvas.line({rail, tablet.top}, {rail, tablet.bottom}, color, 2.5f);
    const float act = left ? tablet.left + 8.0f : tablet.right - 26.0f;
    canvas.fill({act, tablet.bottom - 14.0f, act + 18.0f, tablet.bottom - 6.0f}, color, 2.0f);
  };
}

auto letter_tile(Face face, float rise) {
  return [face, rise](Canvas& canvas, Rect room, Color color) {
    canvas.text({room.center().x, room.center().y + rise}, "A", face, color, ui::Align::Center);
  };
}

// Rows of a label and what it can be, one below the other.
class Page {
 public:
  Page(Ui& ui, const Shared& shared, Rect area)
      : ui_(ui), shared_(shared), area_(area), y_(area.top) {}

  float bottom() const { return y_; }

  void choice(const char* setting, const char* label, std::vector<Option> options,
              std::size_t chosen, float height = kChoiceRow) {
    const Rect row = next(label, height);
    const auto touched = ui::segmented(ui_, setting, row, options, chosen);
    if (touched) ui_.emit(act::ChooseSetting{setting, options[*touched].key});
  }

  void on_off(const char* setting, const char* label, bool on) {
    const Rect row = next(label, kChoiceRow);
    const auto touched = ui::on_off(ui_, setting, row, on, say("Off"), say("On"));
    if (touched) ui_.emit(act::ChooseSetting{setting, *touched ? "on" : "off"});
  }

  // To the choice above.
  void remark(const std::string& words) {
    constexpr float kLine = 28.0f;
    y_ = ui_.paragraph({area_.left + kLabel, y_ + 10.0f}, area_.width() - kLabel, kLine, words,
                       ui::Face::Text, ui_.theme().second_ink);
  }

  void practice() {
    const Rect row = next(say("Practice"), kChoiceRow);
    const auto touched =
        ui::on_off(ui_, "practice", row, shared_.stop.practice, say("Off"), say("On"));
    if (touched && *touched != shared_.stop.practice) ui_.emit(act::SwitchPractice{});
  }

  // The rail of a small screen has room for Undo only for some seconds; here it has no time limit.
  void undo() {
    if (shared_.undo.empty()) return;
    constexpr float kWide = 176.0f;
    const Rect row{area_.left, y_, area_.right, y_ + kChoiceRow};
    const Rect act{row.right - kWide, row.top, row.right, row.bottom};
    const std::string what = ui::shortened(ui_.canvas(), say(shared_.undo.back().what), Face::Text,
                                           act.left - 16.0f - row.left);
    ui_.canvas().text({row.left, row.center().y + 9.0f}, what, Face::Text, ui_.theme().ink);
    if (ui_.button("undo change", act, say("Undo"), ui::ButtonLook::Plain)) {
      ui_.emit(act::TakeBack{});
    }
    y_ = row.bottom + kApart;
  }

 private:
  Rect next(const char* label, float height) {
    const Rect row{area_.left + kLabel, y_, area_.right, y_ + height};
    const float apart = ui_.line(28.0f, Face::Text);
    const float room = kLabel - 8.0f;
    const auto further = static_cast<float>(ui_.wrapped(label, room, Face::Text).size() - 1);
    const float baseline = row.center().y + 9.0f - 0.5f * apart * further;
    ui_.paragraph({area_.left, baseline}, room, apart, label, Face::Text, ui_.theme().ink);
    y_ = row.bottom + kApart;
    return row;
  }

  Ui& ui_;
  const Shared& shared_;
  Rect area_;
  float y_;
};

void draw_sight(Page& page, const Shared& shared) {
  const Settings& settings = shared.settings;
  page.choice("look", say("Look"),
              {{"day", say("Day"), draw_sun},
               {"night", say("Night"), draw_moon},
               {"red", say("Red"), draw_lamp},
               {"sun", say("Sun"), draw_sun_path}},
              static_cast<std::size_t>(settings.look), 104.0f);
  if (shared.backlight) page.on_off("dim", say("Dim at night"), settings.dim);
  page.choice("text_size", say("Text size"),
              {{"usual", "", letter_tile(Face::Text, 9.0f)},
               {"larger", "", letter_tile(Face::Cardinal, 12.0f)},
               {"largest", "", letter_tile(Face::Second, 18.0f)}},
              static_cast<std::size_t>(settings.text_size));
  if (settings.text_size != TextSize::Usual) {
    page.remark(
        say("Large figures, pictures and labels on narrow buttons grow only as far as they fit."));
  }
  page.choice("left_handed", say("Hand"),
              {{"on", say("Left"), hand_tile(true)}, {"off", say("Right"), hand_tile(false)}},
              settings.left_handed ? 0 : 1, 96.0f);
}

void draw_words(Page& page, const Shared& shared) {
  const Settings& settings = shared.settings;
  page.choice("miles", say("Distance"), {{"on", say("Miles")}, {"off", say("Kilometers")}},
              settings.miles ? 0 : 1);
  page.choice("language", say("Language"), {{"en", "English"}, {"es", "Español"}},
              static_cast<std::size_t>(settings.language));
  page.on_off("speech", say("Speech"), settings.speech);
  if (shared.voiceless) {
    page.remark(say("This device has no voice for this language. Aim by the tone."));
  }
  page.on_off("tone", say("Tone"), settings.tone);
}

// The notations by how a latitude reads in them, on the place where the rig is if there is room.
void draw_notation(Page& page, const Shared& shared, bool roomy) {
  constexpr std::array kShort{"0.0°", "0° 0.0′", "0° 0′ 0″", "UTM", "MGRS"};
  const auto& position = shared.findings.position;
  std::vector<Option> options;
  for (std::size_t i = 0; i < kNotations.size(); ++i) {
    std::string label = kShort[i];
    if (roomy && position && label.find("0") != std::string::npos) {
      label = format_position(*position, kNotations[i]);
      label = label.substr(0, label.find_first_of(" ,"));
    }
    options.push_back({std::string(kStoredNames<Notation>[i]), label});
  }
  page.choice("notation", say("Position"), std::move(options),
              static_cast<std::size_t>(shared.settings.notation));
}

}  // namespace

bool draw_settings_sheet(Ui& ui, const Shared& shared) {
  if (shared.sheet != Sheet::Settings) return false;
  const Rect view = ui::draw_sheet_head(ui, say("Settings"), Sheet::None);
  Rect page = view;
  page.top = ui.begin_page("settings", view);
  auto [first, second] = ui::halves(ui, page);
  Page left(ui, shared, first);
  draw_sight(left, shared);
  if (ui.portrait()) second.top = left.bottom();
  Page right(ui, shared, second);
  draw_words(right, shared);
  const float below = std::max(left.bottom(), right.bottom());
  Page whole(ui, shared, {page.left, below, page.right, below});
  constexpr float kRoomForPlace = 1040.0f;
  draw_notation(whole, shared, page.width() >= kRoomForPlace * ui.canvas().letters());
  whole.practice();
  whole.undo();
  const bool no_names = shared.places && !shared.places->trouble.empty();
  const std::string source = no_names
                                 ? std::string(say("No place names: ")) + shared.places->trouble
                                 : std::string(words::places_source());
  float end = whole.bottom() + 20.0f;
  for (const std::string& credit : {source, std::string(words::map_sources())}) {
    end = ui.paragraph({page.left, end}, page.width(), 24.0f, credit, Face::Fine,
                       ui.theme().second_ink);
  }
  ui.end_page("settings", page.top, end);
  return true;
}

}  // namespace mastwise::screens
