#include "app/ahead/draw.hpp"
#include "app/aim/draw.hpp"
#include "app/data/draw.hpp"
#include "app/guide/draw.hpp"
#include "app/guide/guides.hpp"
#include "app/here/draw.hpp"
#include "app/keypad/draw.hpp"
#include "app/logbook/draw.hpp"
#include "app/map/draw.hpp"
#include "app/parking/draw.hpp"
#include "app/path/draw.hpp"
#include "app/peak/draw.hpp"
#include "app/plan/draw.hpp"
#include "app/safety/draw.hpp"
#include "app/safety/update.hpp"
#include "app/session/next_stop.hpp"
#include "app/session/screens.hpp"
#include "app/settings/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/stations/draw.hpp"
#include "app/ui/guide_mark.hpp"
#include "app/ui/icons.hpp"
#include "app/ui/layout.hpp"
#include "app/words/files.hpp"
#include "app/words/glossary.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"

#include <algorithm>
#include <array>

namespace mastwise::screens {
namespace {

struct PlaceOnRail {
  Place place;
  const char* label;
};
constexpr std::array kPlaces{
    PlaceOnRail{Place::Here, "Here"},  PlaceOnRail{Place::Stations, "Stations"},
    PlaceOnRail{Place::Map, "Map"},    PlaceOnRail{Place::Aim, "Aim"},
    PlaceOnRail{Place::Peak, "Peak"},  PlaceOnRail{Place::Logbook, "Logbook"},
    PlaceOnRail{Place::Ahead, "Ahead"}};
static_assert(kPlaces.size() == kPlaceCount);

// The present place is filled with ink over the whole width of the rail; a touch on it opens its
// guide. `share` of its face's size.
void draw_place(Ui& ui, const ui::Layout& layout, Rect rect, const PlaceOnRail& entry, bool chosen,
                float share) {
  const std::string name = std::string("place ") + entry.label;
  if (ui.touchable(name, rect, true, layout.rail_lies ? "rail" : "")) {
    ui.emit(chosen ? Action(act::OpenGuide{guide_of(entry.place)})
                   : Action(act::Show{entry.place}));
  }
  const ui::Theme& theme = ui.theme();
  const bool filled = chosen || ui.pressed(name);
  if (filled) {
    const Rect& rail = layout.rail;
    ui.canvas().fill(layout.rail_lies ? Rect{rect.left, rail.top, rect.right, rail.bottom}
                                      : Rect{rail.left, rect.top, rail.right, rect.bottom},
                     theme.ink);
  }
  const ui::Color color = filled ? theme.paper : theme.ink;
  const Point center = rect.center();
  const float apart = 0.27f * std::min(rect.height(), 88.0f);
  using ui::Face;
  const Face face = layout.rail_lies ? (filled ? Face::FineBold : Face::Fine)
                                     : (filled ? Face::TextBold : Face::Text);
  // Larger letters need more of the slot than the space between.
  const float grown = ui.canvas().em_grown(face);
  Point icon{center.x, center.y - 0.62f * apart - 0.5f * grown};
  if (chosen) {
    constexpr float kMark = 14.0f, kIcon = 22.0f, kEdge = 3.0f;
    const Point mark{rect.right - kEdge - kMark, icon.y - 6.0f};
    icon.x = std::min(icon.x, mark.x - kMark - kEdge - kIcon);
    ui::draw_guide_mark(ui.canvas(), mark, kMark, ui::Face::TextBold, theme.paper, theme.ink);
  }
  ui::draw_place_icon(ui.canvas(), entry.place, icon, color);
  ui.canvas().text({center.x, center.y + 1.52f * apart + 0.1f * grown}, words::say(entry.label),
                   face, color, ui::Align::Center, share);
}

// Two segments, the sun for day and the moon for night, one above the other where they have no room
// side by side; each is too small to touch, so a touch anywhere moves to the other.
void draw_look_switch(Ui& ui, Rect rect, ui::Look look) {
  constexpr float kHeight = 56.0f, kInset = 5.0f, kRadius = 14.0f, kBeside = 80.0f;
  const bool stacked = rect.width() < kBeside;
  const bool day = look == ui::Look::Day;
  if (ui.touchable("look", rect)) ui.emit(act::ChooseSetting{"look", day ? "night" : "day"});
  const ui::Theme& theme = ui.theme();
  const float middle = rect.center().y;
  const float half = 0.5f * (stacked ? rect.height() : kHeight);
  const Rect frame{rect.left, middle - half, rect.right, middle + half};
  ui.canvas().fill(frame, theme.panel, kRadius);
  ui.canvas().outline(frame.inset(1.5f), theme.ink, 3.0f, kRadius);
  Rect first = frame, second = frame;
  (stacked ? first.bottom : first.right) = stacked ? middle : frame.center().x;
  (stacked ? second.top : second.left) = stacked ? middle : frame.center().x;
  ui.canvas().fill((day ? first : second).inset(kInset), theme.ink, kRadius - kInset);
  ui::draw_sun(ui.canvas(), first.center(), day ? theme.paper : theme.accent);
  ui::draw_moon(ui.canvas(), second.center(), day ? theme.accent : theme.paper);
}

// In a narrow slot of a lying rail in the small face of the places beside it.
void draw_undo(Ui& ui, Rect rect) {
  const std::string name = "take back";
  const char* label = words::say("Undo");
  if (ui.canvas().text_width(label, ui::Face::TextBold) <= rect.width() - 8.0f) {
    if (ui.button(name, rect, label, ui::ButtonLook::Plain)) ui.emit(act::TakeBack{});
    return;
  }
  if (ui.touchable(name, rect)) ui.emit(act::TakeBack{});
  const ui::Theme& theme = ui.theme();
  const bool filled = ui.pressed(name);
  ui.canvas().fill(rect, filled ? theme.accent : theme.panel, 14.0f);
  if (!filled) ui.canvas().outline(rect.inset(1.5f), theme.accent, 3.0f, 14.0f);
  const float share = ui.canvas().size_within(rect.width() - 4.0f, label, ui::Face::FineBold);
  ui.canvas().text({rect.center().x, rect.center().y + 7.0f}, label, ui::Face::FineBold,
                   filled ? theme.on_accent : theme.accent, ui::Align::Center, share);
}

void draw_rail_end(Ui& ui, const ui::Layout& layout, const Model& model) {
  const bool fresh = !model.undo.empty() && model.now < model.undo_shown + kUndoFresh;
  const bool shared =
      layout.take_back.top == layout.rail_end.top && layout.take_back.left == layout.rail_end.left;
  const bool undo = model.safety.undo || (shared ? fresh : !model.undo.empty());
  if (undo) draw_undo(ui, layout.take_back);
  if (!(undo && shared)) draw_look_switch(ui, layout.rail_end, model.findings.look);
}

void draw_rail(Ui& ui, const ui::Layout& layout, const Model& model) {
  ui.canvas().fill(layout.rail, ui.theme().panel);
  const auto [from, to] = layout.rail_rule;
  ui.canvas().line(from, to, ui.theme().rule, 1.5f);
  // All words in one size.
  const ui::Face face = layout.rail_lies ? ui::Face::FineBold : ui::Face::TextBold;
  float share = 1.0f;
  for (std::size_t i = 0; i < kPlaces.size(); ++i) {
    const float room = layout.rail_slot(i).width() - 2.0f;
    share = std::min(share, ui.canvas().size_within(room, words::say(kPlaces[i].label), face));
  }
  for (std::size_t i = 0; i < kPlaces.size(); ++i) {
    const bool chosen = model.place == kPlaces[i].place;
    draw_place(ui, layout, layout.rail_slot(i), kPlaces[i], chosen, share);
  }
  draw_rail_end(ui, layout, model);
}

// The near town, on the screens that do not show the position anyway.
std::string stands_words(const Model& model) {
  if (!model.findings.position) return {};
  const places::NearPlace* near = near_place_of(model, *model.findings.position);
  return near == nullptr ? "" : words::sentence(words::near_place(*near, model.settings.miles));
}

// What Undo would undo, for some time after a change.
std::string undo_words(const Model& model) {
  if (undo_is_antennas(model)) return words::say("Antenna marked down");
  const bool fresh = model.now < model.undo_shown + kUndoFresh;
  return fresh && !model.undo.empty() ? words::say(model.undo.back().what) : std::string();
}

std::string foot_warning(const Model& model) {
  if (model.logbook.refused > 0) return words::refused(model.logbook.refused);
  const Unsaved& unsaved = model.unsaved;
  if (unsaved.records > 0) return words::unsaved(unsaved.records, unsaved.why);
  return model.trouble.empty() ? model.notice : model.trouble;
}

// A warning longer than the foot covers the end of the body above it: the name of a damaged file
// must be readable in full.
void draw_foot_warning(Ui& ui, const Rect& foot, float baseline, const std::string& warning) {
  constexpr float kLine = 29.0f;
  const float width = foot.right - foot.left;
  const std::size_t lines = ui.wrapped(warning, width, ui::Face::TextBold).size();
  const float above = ui.line(kLine, ui::Face::TextBold) * static_cast<float>(lines - 1);
  if (lines > 1)
    ui.canvas().fill({foot.left, foot.top - above, foot.right, foot.bottom}, ui.theme().panel);
  ui.paragraph({foot.left, baseline - above}, width, kLine, warning, ui::Face::TextBold,
               ui.theme().warning);
}

// Warnings that every screen must show.
void draw_foot(Ui& ui, const ui::Layout& layout, const Model& model) {
  const Rect foot = layout.foot;
  const float baseline = foot.center().y + 7.0f;
  if (const std::string warning = foot_warning(model); !warning.empty()) {
    draw_foot_warning(ui, foot, baseline, warning);
    return;
  }
  const bool raised = model.findings.antenna_up;
  const bool passenger = model.safety.passenger_until.has_value();
  const std::string right = raised      ? words::say("ANTENNA IS UP")
                            : passenger ? words::say("PASSENGER")
                                        : undo_words(model);
  if (model.stop.practice) {
    const std::string whole = words::say("PRACTICE AREA: invented stations and hills");
    const float beside = ui.canvas().text_width(right, ui::Face::TextBold) + 24.0f;
    const bool fits =
        ui.canvas().text_width(whole, ui::Face::TextBold) + beside < foot.right - foot.left;
    ui.canvas().text({foot.left, baseline}, fits ? whole : words::say("PRACTICE"),
                     ui::Face::TextBold, ui.theme().warning);
  } else {
    const float room = foot.right - 24.0f - ui.canvas().text_width(right, ui::Face::TextBold);
    ui.canvas().push_clip({foot.left, foot.top, room, foot.bottom});
    ui.canvas().text({foot.left, baseline}, stands_words(model), ui::Face::Text,
                     ui.theme().second_ink);
    ui.canvas().pop_clip();
  }
  ui.canvas().text({foot.right, baseline}, right, raised ? ui::Face::TextBold : ui::Face::Text,
                   raised ? ui.theme().warning : ui.theme().second_ink, ui::Align::Right);
}

// Each feature draws its own sheets.
void draw_open_sheet(Ui& ui, const Model& model) {
  draw_sheet(ui, model, model.here) || draw_sheet(ui, model, model.list) || draw_sheet(ui, model) ||
      draw_sheet(ui, model, model.aim) || draw_sheet(ui, model, model.plan) ||
      draw_sheet(ui, model, model.parking) || draw_sheet(ui, model, model.logbook) ||
      draw_sheet(ui, model, model.data) || draw_sheet(ui, model, model.peak) ||
      draw_settings_sheet(ui, model);
}

// What a word of the trade means, and the others below it.
void draw_explanation(Ui& ui, const Model& model) {
  const Rect page = ui.screen().inset(ui::kMargin);
  const ui::Theme& theme = ui.theme();
  const Rect close{page.right - 176.0f, page.top, page.right, page.top + 72.0f};
  ui.back_is("close explanation");
  if (ui.button("close explanation", close, words::say("Done"), ui::ButtonLook::Filled)) {
    ui.emit(act::Explain{});
  }
  const Rect view{page.left, close.bottom + 16.0f, page.right, page.bottom};
  const float top = ui.begin_page("explanation", view);
  float y = top;
  const auto explain = [&](const words::Term& term, ui::Face title) {
    const float line = title == ui::Face::Matter ? 48.0f : 36.0f;
    ui.canvas().text({view.left, y + line}, words::sentence(words::say(term.word)), title,
                     theme.ink);
    y = ui.paragraph({view.left, y + line + 36.0f}, std::min(900.0f, view.width()), 33.0f,
                     words::say(term.meaning), ui::Face::Text, theme.ink) -
        8.0f;
  };
  for (const words::Term& term : words::glossary()) {
    if (term.word == model.explained) explain(term, ui::Face::Matter);
  }
  y += 8.0f;
  ui.canvas().line({view.left, y}, {view.right, y}, theme.rule, 2.0f);
  for (const words::Term& term : words::glossary()) {
    if (term.word != model.explained) explain(term, ui::Face::TextBold);
  }
  ui.end_page("explanation", top, y + 16.0f);
}

// On a sheet, which leaves no foot for it: a tab that hangs from the upper edge.
void draw_practice_tab(Ui& ui) {
  // It hangs between the title and the button of a sheet, so it does not grow.
  constexpr float kHeight = 31.0f, kAside = 16.0f, kCorner = 8.0f;
  const float share = ui.canvas().usual_share(ui::Face::TextBold);
  const std::string mark = words::say("PRACTICE");
  const float half = 0.5f * share * ui.canvas().text_width(mark, ui::Face::TextBold) + kAside;
  const float middle = ui.screen().center().x;
  // Its upper corners are beyond the edge.
  ui.canvas().fill({middle - half, -kCorner, middle + half, kHeight}, ui.theme().warning, kCorner);
  ui.canvas().text({middle, kHeight - 6.0f}, mark, ui::Face::TextBold, ui.theme().on_warning,
                   ui::Align::Center, share);
}

// Draws the sheet that covers the rail and all places; false if none does.
bool draw_cover(Ui& ui, const Model& model) {
  if (screens_locked(model.safety)) {
    draw_drive_face(ui, model, model.safety, next_stop(model));
    return true;
  }
  if (model.safety.asking != Asking::Nothing) {
    draw_prompt(ui, model, model.safety);
    return true;
  }
  if (model.safety.roof && model.explained.empty() && model.guide == Guide::None) {
    draw_roof(ui, model, model.aim);
    return true;
  }
  if (!model.explained.empty()) {
    draw_explanation(ui, model);
  } else if (model.guide != Guide::None) {
    draw_guide(ui, model);
  } else if (model.keypad) {
    const std::optional<Rect> found = draw_keypad(ui, model, *model.keypad);
    if (found) draw_station_rows(ui, *found, model, model.list);
  } else if (model.sheet != Sheet::None) {
    draw_open_sheet(ui, model);
  } else {
    return false;
  }
  if (model.stop.practice) draw_practice_tab(ui);
  return true;
}

// Here: what is known of the stop, and which way to park. On an upright screen the picture is
// above; else it is under the acting thumb.
void draw_stop(Ui& ui, const ui::Layout& layout, const Model& model) {
  constexpr float kBetween = 32.0f;
  Rect facts = layout.body, park = layout.body;
  if (ui.portrait()) {
    // The facts scroll; the picture cannot.
    const float least = park.width() >= 700.0f ? 372.0f : 0.32f * park.height();
    facts.top = facts.bottom - least;
    park.bottom = facts.top - kBetween / 2.0f;
  } else {
    const float width = std::clamp(0.39f * layout.body.width(), 372.0f, 480.0f);
    if (model.settings.left_handed) {
      facts.left = facts.right - width;
      park.right = facts.left - kBetween;
    } else {
      facts.right = facts.left + width;
      park.left = facts.right + kBetween;
    }
  }
  draw_here(ui, facts, model);
  draw_park(ui, park, model, model.parking);
}

}  // namespace

void draw_program(Ui& ui, const Model& model) {
  if (draw_cover(ui, model)) return;
  const ui::Layout layout =
      ui::layout(ui.screen(), model.settings.left_handed, ui.canvas().letters());
  draw_rail(ui, layout, model);
  switch (model.place) {
    case Place::Here:
      draw_stop(ui, layout, model);
      break;
    case Place::Stations:
      draw_stations(ui, layout.body, model, model.list);
      break;
    case Place::Map:
      draw_station_map(ui, layout.body, model, model.map);
      break;
    case Place::Aim:
      draw_aim(ui, layout.body, model, model.aim);
      break;
    case Place::Peak:
      draw_peak(ui, layout.body, model, model.peak);
      break;
    case Place::Logbook:
      draw_logbook(ui, layout.body, model, model.logbook);
      break;
    case Place::Ahead:
      draw_ahead(ui, layout.body, model, model.ahead);
      break;
  }
  draw_foot(ui, layout, model);
}

}  // namespace mastwise::screens
