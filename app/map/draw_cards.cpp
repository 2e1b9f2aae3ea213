#include "app/map/draw_cards.hpp"

#include "app/map/actions.hpp"
#include "app/map/update.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

// The cards over the map.
namespace mastwise::screens {

using ui::ButtonLook;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;
using words::say;

namespace {

constexpr float kCardMargin = 18.0f, kCardButton = 72.0f, kCardGap = 16.0f, kCardKite = 11.0f;
// Baselines of a card's lines below its top.
constexpr std::array kCardLines{40.0f, 76.0f, 110.0f};

void draw_card_ground(Ui& ui, Rect rect) {
  ui.canvas().fill(rect, ui.theme().panel, 14.0f);
  ui.canvas().outline(rect.inset(1.0f), ui.theme().rule, 2.0f, 14.0f);
}

// A kite and words; what does not fit is cut with an ellipsis.
void draw_with_kite(Ui& ui, Point from, float right, bool filled, const std::string& words) {
  const ui::Color color = ui.theme().second_ink;
  ui::kite(ui.canvas(), {from.x + kCardKite, from.y - 9.0f}, kCardKite, color, filled);
  const float left = from.x + 2.0f * kCardKite + 8.0f;
  ui::text_within(ui.canvas(), {left, from.y}, right - left, words, Face::Text, color);
}

void draw_card_line(Ui& ui, Point from, float right, const std::string& words, Face face,
                    ui::Color color) {
  ui::text_within(ui.canvas(), from, right - from.x, words, face, color);
}

struct AnswerWords {
  std::string number, magnetic, title, truly;
};

AnswerWords answer_words(const Shared& shared) {
  const AimCard& card = *shared.findings.card;
  const auto magnetic = on_compass_here(shared, card.bearing_true);
  return {.number = words::whole_degrees(magnetic.value_or(card.bearing_magnetic)),
          .magnetic = fmt::format("{} ± {:.0f}°", say("magnetic"),
                                  std::ceil(shared.findings.heading_error_deg)),
          .title = shared.stop.target ? words::title(*shared.stop.target) : std::string(),
          .truly = fmt::format("{} {}, {}", words::whole_degrees(card.bearing_true), say("true"),
                               words::whole_distance(card.distance_m, shared.settings.miles))};
}

float answer_width(const ui::Canvas& canvas, const AnswerWords& words, Face number) {
  const float beside = 2.0f * kCardKite + 8.0f +
                       std::max(canvas.text_width(words.magnetic, Face::Text),
                                canvas.text_width(words.truly, Face::Text));
  return 3.0f * kCardMargin + canvas.text_width(words.number, number) +
         std::max(beside, canvas.text_width(words.title, Face::Value)) + 4.0f;
}

// Two buttons at the right end of a card, the next act last. Returns where the words must end.
struct CardAct {
  const char* name;
  std::string label;
  ButtonLook look;
  Action action;
};

float draw_card_acts(Ui& ui, Rect rect, const std::array<CardAct, 2>& acts) {
  constexpr float kWidth = 140.0f;
  const float top = rect.center().y - kCardButton / 2.0f;
  const float first = rect.right - kCardMargin - 2.0f * kWidth - kCardGap;
  float left = first;
  for (const CardAct& act : acts) {
    const Rect button{left, top, left + kWidth, top + kCardButton};
    if (ui.button(act.name, button, act.label, act.look)) ui.emit(act.action);
    left = button.right + kCardGap;
  }
  return first - kCardGap;
}

void draw_station_card(Ui& ui, Rect rect, const StationRow& row, const Shared& shared) {
  const StationKey key = key_of(row.station);
  const bool pinned = is_pinned(shared.stop, key);
  const float right = draw_card_acts(
      ui, rect,
      {CardAct{"pin on map", pinned ? say("Unpin") : say("Pin"), ButtonLook::Plain,
               act::PinStation{key}},
       CardAct{"aim on map", say("Aim"), ButtonLook::Filled, act::SelectStation{key}}});
  const reception::Outlook& outlook = *row.outlook;
  const Point from{rect.left + kCardMargin, rect.top};
  draw_card_line(ui, from + Point{0.0f, kCardLines[0]}, right, words::title(row.station),
                 Face::Value, ui.theme().ink);
  draw_card_line(ui, from + Point{0.0f, kCardLines[1]}, right,
                 fmt::format("{}, {}", words::chance_number(outlook), words::chance_word(outlook)),
                 Face::TextBold, ui.theme().ink);
  const auto magnetic = on_compass_here(shared, outlook.bearing);
  draw_with_kite(ui, from + Point{0.0f, kCardLines[2]}, right, !magnetic,
                 fmt::format("{} {}, {}, RF {}",
                             magnetic ? words::whole_degrees(*magnetic)
                                      : words::whole_degrees(outlook.bearing),
                             magnetic ? say("magnetic") : say("true"),
                             words::distance(outlook.distance_m, shared.settings.miles),
                             to_text(row.station.rf_channel)));
}

void draw_spot_card(Ui& ui, Rect rect, const MapSpot& spot, const Shared& shared) {
  const float right = draw_card_acts(
      ui, rect,
      {CardAct{"compare spot", say("Compare"), ButtonLook::Plain, act::CompareSpot{}},
       CardAct{"use spot", say("Set as stop"), ButtonLook::Filled, act::UseSpot{}}});
  const Point from{rect.left + kCardMargin, rect.top};
  draw_card_line(ui, from + Point{0.0f, kCardLines[0]}, right,
                 format_position(spot.position, shared.settings.notation), Face::TextBold,
                 ui.theme().ink);
  const places::NearPlace* near = near_place_of(shared, spot.position);
  draw_card_line(ui, from + Point{0.0f, kCardLines[1]}, right,
                 near == nullptr ? std::string()
                                 : words::sentence(words::near_place(*near, shared.settings.miles)),
                 Face::Text, ui.theme().ink);
  const auto magnetic = on_compass_here(shared, spot.bearing);
  draw_with_kite(
      ui, from + Point{0.0f, kCardLines[2]}, right, !magnetic,
      fmt::format(
          "{} {}, {}",
          magnetic ? words::whole_degrees(*magnetic) : words::whole_degrees(spot.bearing),
          magnetic ? say("magnetic") : say("true"),
          words::fill(say("{distance} from here"),
                      {{"distance", words::distance(spot.distance_m, shared.settings.miles)}})));
}

// The color scale, from 0 to 100 %.
void draw_color_scale(Ui& ui, Rect rect) {
  constexpr int kSteps = 20;
  constexpr float kHeight = 18.0f;
  for (int i = 0; i < kSteps; ++i) {
    const float left = rect.left + rect.width() * static_cast<float>(i) / kSteps;
    ui.canvas().fill({left, rect.top, left + rect.width() / kSteps + 0.5f, rect.top + kHeight},
                     ui::chance_shade(100.0 * (i + 0.5) / kSteps, ui.look()));
  }
  ui.canvas().outline({rect.left, rect.top, rect.right, rect.top + kHeight}, ui.theme().ink, 1.5f);
  const float baseline = rect.top + kHeight + 26.0f;
  const float share =
      ui::share_of_both(ui.canvas(), rect.width(), {"0 %", Face::Text}, {"100 %", Face::Text});
  ui.canvas().text({rect.left, baseline}, "0 %", Face::Text, ui.theme().ink, ui::Align::Left,
                   share);
  ui.canvas().text({rect.right, baseline}, "100 %", Face::Text, ui.theme().ink, ui::Align::Right,
                   share);
}

// The scanned stations, and the result.
std::pair<std::string, std::string> area_words(const Shared& shared, const MapState& map) {
  const auto& sheet = map.area_sheet;
  const std::vector<Station> stations = area_stations(shared);
  if (stations.empty()) {
    return {say("No best spot yet"),
            say("Touch a station and aim at it, or pin the ones you want.")};
  }
  std::string what =
      stations.size() == 1
          ? words::fill(say("Chance of {station}"), {{"station", stations.front().call_sign}})
          : words::fill(say("Chance of the weakest of {number} pinned stations"),
                        {{"number", std::to_string(stations.size())}});
  if (!sheet) return {what, say("Computing")};
  if (!sheet->trouble.empty()) return {say("No best spot"), words::sentence(sheet->trouble)};
  if (!sheet->left_out.empty()) {
    what += ", " + words::fill(say("without {stations}"),
                               {{"stations", fmt::format("{}", fmt::join(sheet->left_out, ", "))}});
  }
  if (sheet->done < 1.0) {
    return {what, words::fill(say("{percent} % computed"),
                              {{"percent", fmt::format("{:.0f}", 100.0 * sheet->done)}})};
  }
  if (!sheet->here_percent) return {what, say("Chance here unknown: ground data is missing.")};
  const std::string here = words::fill(say("Here {chance}, without interference."),
                                       {{"chance", words::chance_number(*sheet->here_percent)}});
  if (sheet->spots.empty()) return {what, here + " " + say("No place nearby is clearly better.")};
  const AreaSpot& best = sheet->spots.front();
  return {what,
          here + " " +
              words::fill(say("{chance} {distance} {octant} of here."),
                          {{"chance", words::chance_number(best.chance_percent)},
                           {"distance", words::distance(best.distance_m, shared.settings.miles)},
                           {"octant", words::octant(best.bearing)}})};
}

void draw_area_card(Ui& ui, Rect rect, const Shared& shared, const MapState& map) {
  constexpr float kSlip = 140.0f, kScale = 134.0f, kRoomForScale = 700.0f;
  const float top = rect.center().y - kCardButton / 2.0f;
  const Rect radius{rect.right - kCardMargin - kSlip, top, rect.right - kCardMargin,
                    top + kCardButton};
  if (ui::slip(ui, "area radius", radius, "",
               words::distance(kAreaRadii_m[map.area_radius], shared.settings.miles))) {
    ui.emit(act::NextAreaRadius{});
  }
  float right = radius.left - kCardGap;
  const auto& sheet = map.area_sheet;
  const bool scanned = sheet && sheet->trouble.empty() && !sheet->percent.empty();
  if (scanned && rect.width() >= kRoomForScale) {
    draw_color_scale(ui, {right - kScale, rect.top + 40.0f, right, rect.bottom});
    right -= kScale + kCardGap;
  }
  const auto [what, found] = area_words(shared, map);
  const float left = rect.left + kCardMargin;
  draw_card_line(ui, {left, rect.top + 38.0f}, right, what, Face::TextBold, ui.theme().ink);
  ui.canvas().push_clip({left, rect.top, right, rect.bottom - 2.0f});
  ui.paragraph({left, rect.top + 71.0f}, right - left, 29.0f, found, Face::Text,
               ui.theme().second_ink);
  ui.canvas().pop_clip();
}

const StationRow* selected_row(const Shared& shared, const MapState& map) {
  if (!map.selected || !shared.stations) return nullptr;
  const StationRow* row = find_row(*shared.stations, *map.selected);
  return row != nullptr && row->outlook ? row : nullptr;
}

}  // namespace

float answer_width(Ui& ui, const Shared& shared) {
  const ui::Canvas& canvas = ui.canvas();
  if (!shared.findings.card) {
    return 2.0f * kCardMargin + 8.0f +
           std::max(canvas.text_width(say("No station chosen"), Face::Value),
                    canvas.text_width(say("Touch one on the map."), Face::Text));
  }
  return answer_width(canvas, answer_words(shared), Face::Answer);
}

void draw_answer(Ui& ui, Rect rect, const Shared& shared) {
  draw_card_ground(ui, rect);
  const ui::Theme& theme = ui.theme();
  const float left = rect.left + kCardMargin, right = rect.right - kCardMargin;
  if (!shared.findings.card) {
    draw_card_line(ui, {left, rect.top + 52.0f}, right, say("No station chosen"), Face::Value,
                   theme.ink);
    if (!shared.findings.listed.empty()) {
      draw_card_line(ui, {left, rect.top + 90.0f}, right, say("Touch one on the map."), Face::Text,
                     theme.second_ink);
    }
    return;
  }
  const AnswerWords words = answer_words(shared);
  const bool roomy = answer_width(ui.canvas(), words, Face::Answer) <= rect.width() + 1.0f;
  const Face face = roomy ? Face::Answer : Face::Big;
  ui.canvas().text({left, rect.top + (roomy ? 108.0f : 88.0f)}, words.number, face, theme.ink);
  const float beside = left + ui.canvas().text_width(words.number, face) + kCardMargin;
  draw_with_kite(ui, {beside, rect.top + kCardLines[0]}, right, false, words.magnetic);
  draw_card_line(ui, {beside, rect.top + kCardLines[1]}, right, words.title, Face::Value,
                 theme.ink);
  draw_with_kite(ui, {beside, rect.top + kCardLines[2]}, right, true, words.truly);
}

bool has_card(const Shared& shared, const MapState& map) {
  return map.area || map.spot || selected_row(shared, map) != nullptr;
}

void draw_card(Ui& ui, Rect rect, const Shared& shared, const MapState& map) {
  draw_card_ground(ui, rect);
  if (map.spot) {
    draw_spot_card(ui, rect, *map.spot, shared);
  } else if (map.area) {
    draw_area_card(ui, rect, shared, map);
  } else if (const StationRow* row = selected_row(shared, map)) {
    draw_station_card(ui, rect, *row, shared);
  }
}

MapStatus map_status(const Shared& shared, const MapState& map) {
  const auto& sheet = map.sheet;
  if (sheet && !sheet->trouble.empty()) return {words::sentence(sheet->trouble), true};
  if (shared.stations && !shared.stations->trouble.empty()) {
    return {words::sentence(shared.stations->trouble), true};
  }
  if (!shared.stations || shared.stations->measured < shared.stations->all) {
    return {say("Computing the paths")};
  }
  if (shared.stations->rows.empty() && shared.search.empty()) {
    return {say("No stations yet. Get some under Stations.")};
  }
  if (shared.findings.listed.empty()) return {say("No station matches the list's search.")};
  if (!sheet || !sheet->relief) return {say("Drawing the ground")};
  if (!shared.search.empty()) {
    return {words::fill(say("Only stations that match {search}"), {{"search", shared.search}})};
  }
  return {};
}

}  // namespace mastwise::screens
