#include "app/ahead/actions.hpp"
#include "app/ahead/draw.hpp"
#include "app/ahead/draw_way.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/act_row.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/ui/texture.hpp"
#include "app/words/language.hpp"
#include "app/words/on_board.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>
#include <array>

// Possible stops side by side on the way, compared by the wanted networks.
namespace mastwise::screens {
namespace {

using ui::ActRow;
using ui::ButtonLook;
using ui::Face;

// What the page is about, and what cannot be told yet with the act that mends it.
struct Said {
  std::string answer;
  std::string more = {};
  bool warning = false;
};

std::string answer_of(const Shared& shared, const AheadFound& found) {
  const AheadColumn& chosen = found.columns[found.chosen];
  const std::string place = ahead_page::title_of(shared, chosen);
  if (!chosen.computed) {
    return words::fill(words::say("{place}: computing"), {{"place", place}});
  }
  return words::fill(words::say("{place}: {number} of {all} networks"),
                     {{"place", place},
                      {"number", std::to_string(chosen.holding)},
                      {"all", std::to_string(found.rows.size())}});
}

std::string way_words(const Shared& shared, const AheadFound& found) {
  const bool miles = shared.settings.miles;
  if (!found.trouble.empty()) return words::sentence(found.trouble);
  if (found.surveyed_km < found.length_km) {
    return words::fill(words::say("Surveying the way: {at} of {all}"),
                       {{"at", words::along(found.surveyed_km, miles)},
                        {"all", words::along(found.length_km, miles)}});
  }
  const std::string length = words::straight_line(found.length_km, miles);
  if (!found.hold_to_km) return length;
  return words::all_hold(found.holding_here, *found.hold_to_km, found.length_km, miles) + " (" +
         length + ")";
}

Said said(const Shared& shared, const AheadFound& found, bool any) {
  if (!shared.findings.position) return {words::say("Where are you parked?")};
  if (!any) {
    return {words::say("Where next?"),
            words::say("Add the places where you might stop, in the order of the way.")};
  }
  if (!found.compared) return {words::say("Computing the paths")};
  if (found.rows.empty() && found.wants == AheadWants::Pinned) {
    return {words::say("Nothing is pinned"), words::say("Pin what you want under Stations.")};
  }
  if (found.rows.empty()) {
    const auto& on_board = shared.findings.on_board;
    const bool unnamed = on_board && on_board->count > 0 && !on_board->networks_named &&
                         shared.stations && !shared.stations->rows.empty();
    return {words::say("No network in reach"),
            unnamed ? words::no_networks_named() : std::string()};
  }
  return {answer_of(shared, found), way_words(shared, found), !found.trouble.empty()};
}

// The stretch of the way whose heights are missing, and the page that mends it.
void draw_missing(Ui& ui, Rect row, const Shared& shared, const AheadFound& found) {
  const bool miles = shared.settings.miles;
  const RoutePart& first = found.without_terrain.front();
  std::string words = words::no_heights(first.from_km, first.to_km, miles);
  if (found.without_terrain.size() > 1) {
    words += words::fill(words::say(", and {number} more"),
                         {{"number", std::to_string(found.without_terrain.size() - 1)}});
  }
  if (ui::onward(ui, "ground ahead", row)) ui.emit(act::OpenSheet{Sheet::Import});
  const ui::Theme& theme = ui.theme();
  const Rect swatch{row.left + 4.0f, row.center().y - 15.0f, row.left + 52.0f,
                    row.center().y + 15.0f};
  ui.canvas().fill(swatch, theme.panel);
  ui::hatch(ui.canvas(), swatch, theme.ink, 8.0f);
  ui.canvas().outline(swatch, theme.ink, 2.0f);
  const float left = swatch.right + 16.0f;
  ui::text_within(ui.canvas(), {left, row.center().y + 9.0f}, row.right - ui::kChevron - left,
                  words, Face::Text, theme.ink);
}

class Acts {
 public:
  Acts(Ui& ui, const Shared& shared, const AheadState& ahead)
      : ui_(ui), shared_(shared), ahead_(ahead), place_(chosen()) {}

  // In one row where it is wide enough, else in two.
  static float height(const Ui& ui) {
    return ui.portrait() ? 2.0f * ActRow::kHeight + ActRow::kGap : ActRow::kHeight;
  }

  void draw(Rect area) {
    const bool two = area.height() > ActRow::kHeight + 1.0f;
    const bool left = shared_.settings.left_handed;
    ActRow main({area.left, area.bottom - ActRow::kHeight, area.right, area.bottom}, left);
    next_stop(main.next(kMain));
    add(main.next(kOther));
    ActRow upper({area.left, area.top, area.right, area.top + ActRow::kHeight}, left);
    ActRow& others = two ? upper : main;
    remove(others.next(kOther));
    remove_all(others.next(kOther));
    const Rect rest = (two ? upper : main).rest();
    Rect floor = rest;
    floor.right = std::min(rest.right, rest.left + kFloor);
    if (left) floor = {std::max(rest.left, rest.right - kFloor), rest.top, rest.right, rest.bottom};
    if (ui::slip(ui_, "ahead floor", floor, {}, words::floor(ahead_.found.floor_percent))) {
      ui_.emit(act::NextAheadFloor{});
    }
  }

 private:
  static constexpr float kMain = 240.0f, kOther = 160.0f, kFloor = 232.0f;

  std::optional<std::size_t> chosen() const {
    const AheadFound& found = ahead_.found;
    return found.chosen < found.columns.size() ? found.columns[found.chosen].place : std::nullopt;
  }
  bool button(const char* name, Rect rect, const char* label, ButtonLook look, bool enabled) {
    return ui_.button(name, rect, words::say(label), look, enabled);
  }
  void next_stop(Rect rect) {
    const auto look = place_ ? ButtonLook::Filled : ButtonLook::Plain;
    if (button("next stop", rect, "Set as next stop", look, place_.has_value())) {
      ui_.emit(act::SetNextStop{*place_});
    }
  }
  void add(Rect rect) {
    const auto look = place_ ? ButtonLook::Plain : ButtonLook::Filled;
    if (button("add place", rect, "Add place", look, true)) {
      ui_.emit(act::OpenField{Field::AheadPlace});
    }
  }
  void remove(Rect rect) {
    if (button("remove place", rect, "Remove", ButtonLook::Plain, place_.has_value())) {
      ui_.emit(act::DropPlace{*place_});
    }
  }
  void remove_all(Rect rect) {
    // In the same place, so that a file's places never mix with others unasked.
    if (ahead_.places.empty()) {
      if (button("places from file", rect, "From file", ButtonLook::Plain, true)) {
        ui_.emit(act::OpenSheet{Sheet::Import});
        ui_.emit(act::ShowRoutePlaces{});
      }
      return;
    }
    if (button("drop places", rect, "Remove all", ButtonLook::Plain, true)) {
      ui_.emit(act::DropAllPlaces{});
    }
  }

  Ui& ui_;
  const Shared& shared_;
  const AheadState& ahead_;
  std::optional<std::size_t> place_;
};

void draw_wants(Ui& ui, Rect rect, const AheadFound& found) {
  const std::array options{ui::Option{"pinned", words::say("Pinned")},
                           ui::Option{"networks", words::say("Networks")}};
  const auto chosen = static_cast<std::size_t>(found.wants);
  if (const auto touched = ui::segmented(ui, "compare by", rect, options, chosen)) {
    ui.emit(act::CompareBy{static_cast<AheadWants>(*touched)});
  }
}

// What the page shows once there are places.
void draw_empty_way(Ui& ui, Rect area) {
  const ui::Theme& theme = ui.theme();
  const float y = area.top + 90.0f;
  constexpr float kInset = 100.0f, kDot = 13.0f;
  ui::dotted(ui.canvas(), {area.left + kInset, y}, {area.right - kInset, y}, theme.ink, 3.0f);
  ui.canvas().disc({area.left + kInset, y}, kDot, theme.ink);
  ui.canvas().text({area.left + kInset, y - 32.0f}, words::say("Here"), Face::TextBold, theme.ink,
                   ui::Align::Center);
  for (const float part : {0.4f, 0.7f, 1.0f}) {
    const float x = area.left + kInset + part * (area.width() - 2.0f * kInset);
    ui.canvas().disc({x, y}, kDot, theme.paper);
    ui.canvas().circle({x, y}, kDot, theme.second_ink, 3.0f);
    ui::dotted(ui.canvas(), Rect{x - 84.0f, area.top, x + 84.0f, area.bottom}, theme.rule, 2.0f);
  }
}

// The act that leads on where there is nothing to compare.
void draw_mend(Ui& ui, Rect area, const Shared& shared, const AheadFound& found) {
  const Rect act{area.left, area.top + 8.0f, area.left + 264.0f, area.top + 80.0f};
  if (!shared.findings.position) {
    if (ui.button("set position", act, words::say("Set position"), ButtonLook::Filled)) {
      ui.emit(act::Show{Place::Here});
    }
  } else if (found.compared && found.rows.empty()) {
    if (ui.button("see stations", act, words::say("See stations"), ButtonLook::Filled)) {
      ui.emit(act::Show{Place::Stations});
    }
  }
}

}  // namespace

void draw_ahead(Ui& ui, Rect area, const Shared& shared, const AheadState& ahead) {
  const AheadFound& found = ahead.found;
  const ui::Theme& theme = ui.theme();
  area.bottom -= 8.0f;
  const Said words = said(shared, found, !ahead.places.empty());
  constexpr float kWants = 328.0f;
  Rect wants{area.right - kWants, area.top - 8.0f, area.right, area.top - 8.0f + ActRow::kHeight};
  float room = area.width() - kWants - 24.0f, top = area.top;
  if (ui.portrait()) {
    top = wants.bottom + 16.0f;
    room = area.width();
  }
  draw_wants(ui, wants, found);
  const Face face =
      ui.canvas().text_width(words.answer, Face::Matter) <= room ? Face::Matter : Face::Cardinal;
  ui::text_within(ui.canvas(), {area.left, top + 34.0f}, room, words.answer, face, theme.ink);
  const float below = words.more.empty()
                          ? top + 48.0f
                          : ui.paragraph({area.left, top + 68.0f}, room, 30.0f, words.more,
                                         Face::Text, words.warning ? theme.warning : theme.ink) -
                                12.0f;
  const Rect acts{area.left, area.bottom - Acts::height(ui), area.right, area.bottom};
  Rect way{area.left, std::max(below, wants.bottom) + 12.0f, area.right, acts.top - 16.0f};
  Acts(ui, shared, ahead).draw(acts);
  if (!found.without_terrain.empty() && !found.rows.empty() && ahead_page::pages(way, ahead)) {
    const Rect row{way.left, way.bottom - ActRow::kHeight + 4.0f, way.right, way.bottom};
    draw_missing(ui, row, shared, found);
    way.bottom = row.top - 16.0f;
  }
  const bool comparable = shared.findings.position && !(found.compared && found.rows.empty());
  if (comparable && ahead.places.empty()) {
    draw_empty_way(ui, way);
  } else if (comparable) {
    ahead_page::draw_way(ui, way, shared, ahead);
  } else {
    draw_mend(ui, way, shared, found);
  }
}

}  // namespace mastwise::screens
