#include "app/map/actions.hpp"
#include "app/map/draw.hpp"
#include "app/map/draw_cards.hpp"
#include "app/map/draw_frame.hpp"
#include "app/map/draw_legend.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/layout.hpp"
#include "app/words/language.hpp"

#include <algorithm>
#include <array>
#include <cmath>

// The map around the stop: its place on the screen, gestures and acts.
namespace mastwise::screens {
namespace {

using ui::ButtonLook;
using ui::Face;
using words::say;

constexpr float kMapEdge = 16.0f, kMapAct = 72.0f, kZoomAct = 68.0f, kMapColumn = 128.0f,
                kActGap = 16.0f;

// What lies on the map: its acts, the answer, and the card of what was touched.
struct MapPlaces {
  Rect map, legend, larger, smaller, up, center, best, answer, card, scale;
  bool card_replaces_answer = false;
};

// Upright: the picture above, answer and acts below, the zoom beside the thumb on the map.
void place_upright(MapPlaces& places, Rect area, float legend, bool left_handed) {
  const float acts = area.bottom - kMapAct - 8.0f, answer = acts - kActGap - kMapCard;
  places.legend = {area.left, answer - kActGap - legend, area.right, answer - kActGap};
  places.map = {area.left, area.top, area.right, places.legend.top};
  places.answer = {area.left + kMapEdge, answer, area.right - kMapEdge, answer + kMapCard};
  places.card = places.answer;
  places.card_replaces_answer = true;
  constexpr float kUp = 280.0f;
  const float left = area.left + kMapEdge, right = area.right - kMapEdge;
  const float room = right - left - kUp - 2.0f * kActGap;
  const float center = 0.46f * room;
  const auto act = [&](float from, float width) {
    const float begin = left_handed ? left + right - from - width : from;
    return Rect{begin, acts, begin + width, acts + kMapAct};
  };
  places.up = act(left, kUp);
  places.center = act(left + kUp + kActGap, center);
  places.best = act(left + kUp + 2.0f * kActGap + center, room - center);
}

// Lying: acts in a column beside the thumb, the answer in the other corner.
void place_lying(MapPlaces& places, Rect area, float legend, bool left_handed, float answer) {
  places.legend = {area.left, area.bottom - legend, area.right, area.bottom};
  places.map = {area.left, area.top, area.right, places.legend.top};
  const float column = left_handed ? area.left + kMapEdge : area.right - kMapEdge - kMapColumn;
  const float bottom = places.map.bottom - kMapEdge;
  const auto act = [&](float top, float height) {
    return Rect{column, top, column + kMapColumn, top + height};
  };
  constexpr float kUp = 140.0f;
  places.up = act(area.top + kMapEdge + 2.0f * (kZoomAct + kActGap), kUp);
  places.best = act(bottom - kMapAct, kMapAct);
  places.center = act(places.best.top - kActGap - kZoomAct, kZoomAct);
  const float left = left_handed ? column + kMapColumn + kActGap : area.left + kMapEdge;
  const float right = left_handed ? area.right - kMapEdge : column - kActGap;
  const float width = std::min(answer, right - left);
  const float top = area.top + kMapEdge;
  places.answer = left_handed ? Rect{right - width, top, right, top + kMapCard}
                              : Rect{left, top, left + width, top + kMapCard};
  places.card = {left, bottom - kMapCard, right, bottom};
}

MapPlaces places_of(Rect area, bool upright, bool left_handed, const Legend& legend, float answer) {
  MapPlaces places;
  if (upright) {
    place_upright(places, area, legend.height(area.width(), 2), left_handed);
  } else {
    place_lying(places, area, legend.height(area.width(), 1), left_handed, answer);
  }
  const float column =
      left_handed ? places.map.left + kMapEdge : places.map.right - kMapEdge - kMapColumn;
  const float top = places.map.top + kMapEdge;
  places.larger = {column, top, column + kMapColumn, top + kZoomAct};
  places.smaller = {column, places.larger.bottom + kActGap, column + kMapColumn,
                    places.larger.bottom + kActGap + kZoomAct};
  return places;
}

// The map move of a gesture, in units from the map's middle.
std::optional<MapMove> move_of(const touch::Gesture& gesture, Point middle, float px_per_unit) {
  using Kind = touch::Gesture::Kind;
  const auto offset = [&](Point px) {
    return MapOffset{px.x / px_per_unit - middle.x, px.y / px_per_unit - middle.y};
  };
  MapMove move{.about = offset(gesture.current_px)};
  switch (gesture.kind) {
    case Kind::Drag:
    case Kind::Pinch:
      move.drag = {gesture.delta_px.x / px_per_unit, gesture.delta_px.y / px_per_unit};
      move.scale = gesture.kind == Kind::Pinch ? gesture.scale : 1.0;
      return move;
    case Kind::Turn:
      move.turn_deg = gesture.turn.clockwise_deg();
      return move;
    case Kind::Wheel: {
      constexpr double kNotch = 1.2;
      move.scale = std::pow(kNotch, gesture.notches);
      return move;
    }
    default:
      return std::nullopt;
  }
}

// `covered`: what lies on the map, whose touches are not the map's.
void take_gestures(Ui& ui, Rect map, const std::vector<Rect>& covered) {
  using Kind = touch::Gesture::Kind;
  const float scale = ui.canvas().px_per_unit();
  for (const touch::Gesture& gesture : ui.gestures_in(map)) {
    const Point start{gesture.start_px.x / scale, gesture.start_px.y / scale};
    const auto on = [&](const Rect& rect) { return rect.contains(start); };
    if (std::any_of(covered.begin(), covered.end(), on)) continue;
    const MapOffset at{start.x - map.center().x, start.y - map.center().y};
    if (gesture.kind == Kind::Tap) {
      ui.emit(act::TouchMap{at});
    } else if (gesture.kind == Kind::LongPress) {
      if (gesture.phase == touch::Gesture::Phase::Begin) ui.emit(act::HoldMap{at});
    } else if (const auto move = move_of(gesture, map.center(), scale)) {
      ui.emit(act::MoveMap{*move});
    }
  }
}

// Keys move the map under a cross in its middle.
void take_keys(Ui& ui, const Ui::Steered& keys) {
  using touch::Key;
  constexpr float kStep = 60.0f;
  constexpr double kNearer = 1.2;
  if (keys.tapped) ui.emit(act::TouchMap{});
  if (keys.held) ui.emit(act::HoldMap{});
  if (!keys.key) return;
  MapMove move;
  switch (*keys.key) {
    case Key::Left:
      move.drag.right = kStep;
      break;
    case Key::Right:
      move.drag.right = -kStep;
      break;
    case Key::Up:
      move.drag.down = kStep;
      break;
    case Key::Down:
      move.drag.down = -kStep;
      break;
    default:
      move.scale = *keys.key == Key::Next ? kNearer : 1.0 / kNearer;
  }
  ui.emit(act::MoveMap{move});
}

void draw_cross(Ui& ui, Point middle) {
  constexpr float kFrom = 14.0f, kTo = 44.0f, kWide = 11.0f, kThin = 5.0f;
  for (const auto& [color, width] :
       {std::pair(ui.theme().paper, kWide), std::pair(ui.theme().ink, kThin)}) {
    for (const double deg : {0.0, 90.0, 180.0, 270.0}) {
      ui.canvas().line(ui::around(middle, kFrom, deg), ui::around(middle, kTo, deg), color, width);
    }
  }
}

void draw_map_zoom(Ui& ui, const MapPlaces& places, const MapState& map) {
  constexpr double kZoom = 1.6;
  const auto zoom = [&](const char* name, Rect rect, const char* label, double scale,
                        bool enabled) {
    if (ui.button(name, rect, {}, ButtonLook::Plain, enabled)) {
      ui.emit(act::MoveMap{{.scale = scale}});
    }
    const ui::Theme& theme = ui.theme();
    const ui::Color color = !enabled           ? theme.second_ink
                            : ui.pressed(name) ? theme.on_accent
                                               : theme.accent;
    ui.canvas().text({rect.center().x, rect.center().y + 15.0f}, label, Face::Matter, color,
                     ui::Align::Center);
  };
  zoom("map larger", places.larger, "+", kZoom, map.view.meters_per_unit > kNearestMap);
  zoom("map smaller", places.smaller, "−", 1.0 / kZoom, map.view.meters_per_unit < kFarthestMap);
}

// What is up. The nose only if it is known; else the reason is beside the choice.
Rect nose_reason_rect(const MapPlaces& places, bool upright) {
  constexpr float kHeight = 64.0f, kWidth = 190.0f;
  if (upright) {
    const float bottom = places.map.bottom - 8.0f;
    return {places.map.right - kWidth - kMapEdge, bottom - kHeight, places.map.right - kMapEdge,
            bottom};
  }
  return {places.up.left, places.up.bottom + 8.0f, places.up.right,
          places.up.bottom + 8.0f + kHeight};
}

void draw_map_up(Ui& ui, const MapPlaces& places, const Shared& shared, const MapState& map) {
  const bool nose = shared.findings.nose.has_value();
  const std::array options{ui::Option{"north", say("North up")},
                           ui::Option{.key = "nose", .label = say("Nose up"), .enabled = nose}};
  std::optional<std::size_t> chosen;
  if (map.up != MapUp::Turned) chosen = map.up == MapUp::Rig && nose ? 1 : 0;
  if (const auto touched = ui::segmented(ui, "map up", places.up, options, chosen)) {
    ui.emit(act::ChooseMapUp{*touched == 0 ? MapUp::North : MapUp::Rig});
  }
  if (nose) return;
  const Rect rect = nose_reason_rect(places, ui.portrait());
  ui.canvas().fill(rect, ui.theme().panel, 8.0f);
  const char* reason = say("Nose not known");
  const float share = ui.share_within(rect, reason, Face::Text, 8.0f);
  const auto lines = ui.wrapped(reason, (rect.width() - 8.0f) / share, Face::Text);
  const float apart = std::max(28.0f, 1.05f * share * ui.canvas().em(Face::Text));
  float y = rect.center().y + 8.0f - 0.5f * apart * static_cast<float>(lines.size() - 1);
  for (const std::string_view line : lines) {
    ui.canvas().text({rect.center().x, y}, line, Face::Text, ui.theme().second_ink,
                     ui::Align::Center, share);
    y += apart;
  }
}

void draw_map_acts(Ui& ui, const MapPlaces& places, const MapState& map) {
  if (ui.button("map center", places.center, say("Center"), ButtonLook::Plain,
                map.view.middle != map::PlanePoint{})) {
    ui.emit(act::CenterMap{});
  }
  if (ui.button("where to stand", places.best, map.area ? say("Done") : say("Best spot"),
                ButtonLook::Filled)) {
    ui.emit(act::SwitchArea{});
  }
}

// Empty paper with the rings of a map that does not know where it is.
void draw_nowhere(Ui& ui, Rect area) {
  const ui::Theme& theme = ui.theme();
  const Point center{area.center().x, area.top + 0.42f * area.height()};
  for (const float radius : {90.0f, 170.0f, 250.0f}) {
    if (radius < 0.5f * std::min(area.width(), area.height())) {
      ui.canvas().circle(center, radius, theme.rule, 2.0f);
    }
  }
  const std::string question = say("Where is the rig?");
  const float half = ui.canvas().text_width(question, Face::Matter) / 2.0f + 16.0f;
  ui.canvas().fill({center.x - half, center.y - 40.0f, center.x + half, center.y + 58.0f},
                   theme.paper, 14.0f);
  ui.canvas().text({center.x, center.y + 4.0f}, question, Face::Matter, theme.ink,
                   ui::Align::Center);
  ui.canvas().text({center.x, center.y + 44.0f}, say("The map is drawn around it."), Face::Text,
                   theme.second_ink, ui::Align::Center);
  constexpr float kWidth = 220.0f;
  const Rect act{area.right - kMapEdge - kWidth, area.bottom - kMapEdge - kMapAct,
                 area.right - kMapEdge, area.bottom - kMapEdge};
  if (ui.button("set position", act, say("Set position"), ButtonLook::Filled)) {
    ui.emit(act::Show{Place::Here});
  }
}

// Below the answer, or in the corner of an upright map.
Rect status_rect(Ui& ui, const MapPlaces& places, const std::string& words, bool left_handed) {
  constexpr float kMost = 420.0f, kLine = 29.0f;
  const bool upright = places.card_replaces_answer;
  const float most = std::min(kMost, places.larger.left - places.map.left - 2.0f * kMapEdge);
  const float room = left_handed ? kMost : most;
  const auto lines = ui.wrapped(words, room - 24.0f, Face::Text);
  float width = 0.0f;
  for (const std::string_view line : lines) {
    width = std::max(width, ui.canvas().text_width(line, Face::Text));
  }
  const float top = upright ? places.map.top + kMapEdge : places.answer.bottom + 12.0f;
  const float bottom = top + 16.0f + ui.line(kLine, Face::Text) * static_cast<float>(lines.size());
  if (left_handed) {
    const float right = places.map.right - kMapEdge;
    return {right - width - 24.0f, top, right, bottom};
  }
  const float left = places.map.left + kMapEdge;
  return {left, top, left + width + 24.0f, bottom};
}

void draw_map_status(Ui& ui, Rect rect, const MapStatus& status) {
  ui.canvas().fill(rect, ui.theme().panel, 10.0f);
  ui.paragraph({rect.left + 12.0f, rect.top + 31.0f}, rect.width() - 20.0f, 29.0f, status.words,
               Face::Text, status.warning ? ui.theme().warning : ui.theme().ink);
}

}  // namespace

void draw_station_map(Ui& ui, Rect area, const Shared& shared, const MapState& map) {
  // The map reaches to the edges of the window and of the rail.
  area = {area.left - ui::kMargin, area.top - ui::kMargin, area.right + ui::kMargin, area.bottom};
  if (!shared.findings.position) {
    draw_nowhere(ui, area);
    return;
  }
  const bool left_handed = shared.settings.left_handed;
  const Legend legend(ui, shared, map);
  MapPlaces places = places_of(area, ui.portrait(), left_handed, legend, answer_width(ui, shared));
  const bool card = has_card(shared, map);
  const bool card_on_map = card && !places.card_replaces_answer;
  Rect above_card = places.map;
  if (card_on_map) above_card.bottom = places.card.top;
  places.scale = scale_bar_rect(above_card, left_handed && !ui.portrait());
  std::vector<Rect> covered{places.larger, places.smaller, places.scale};
  if (!places.card_replaces_answer) {
    covered.insert(covered.end(), {places.up, places.center, places.best, places.answer});
  }
  if (card_on_map) covered.push_back(places.card);
  if (!shared.findings.nose) covered.push_back(nose_reason_rect(places, ui.portrait()));
  const MapStatus status = map_status(shared, map);
  if (!status.words.empty()) {
    covered.push_back(status_rect(ui, places, status.words, left_handed));
  }
  take_gestures(ui, places.map, covered);
  const Ui::Steered keys = ui.steered("map", places.map);
  take_keys(ui, keys);
  ui.canvas().push_clip(places.map);
  MapFrame frame(ui, places.map, covered, shared, map);
  frame.draw_ground();
  frame.draw_rings();
  frame.draw_marks();
  if (keys.on) draw_cross(ui, places.map.center());
  ui.canvas().pop_clip();
  draw_scale_bar(ui, places.scale, map.view, shared.settings.miles);
  legend.draw(places.legend);
  if (!status.words.empty()) draw_map_status(ui, covered.back(), status);
  if (!places.card_replaces_answer || !card) draw_answer(ui, places.answer, shared);
  if (card) draw_card(ui, places.card, shared, map);
  draw_map_zoom(ui, places, map);
  draw_map_up(ui, places, shared, map);
  draw_map_acts(ui, places, map);
}

}  // namespace mastwise::screens
