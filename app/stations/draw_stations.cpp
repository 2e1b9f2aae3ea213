#include "app/shared/actions.hpp"
#include "app/stations/actions.hpp"
#include "app/stations/draw.hpp"
#include "app/stations/draw_station_row.hpp"
#include "app/stations/draw_turn_head.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/chances.hpp"
#include "app/words/changes.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise::screens {
namespace {

using ui::Face;
using words::fill;
using words::say;

constexpr float kBar = 72.0f, kBetween = 16.0f;

// What the list cannot show, and the act that mends it.
struct Gap {
  std::string title;
  std::string advice = {};
  const char* act = nullptr;  // label of the act
  Action action = act::Show{Place::Here};
};

bool computing(const Shared& shared) {
  return !shared.stations || shared.stations->measured < shared.stations->all;
}

Gap empty_kind(const StationsState& list) {
  switch (list.list_of) {
    case ListOf::All:
      break;
    case ListOf::Likely:
      return {say("No station is likely here"), say("All shows the weaker ones too."),
              say("Show all"), act::ChooseList{ListOf::All}};
    case ListOf::Networks:
      return {say("The table names no networks"),
              say("Import a table of programs to see them, or list the stations."), say("Show all"),
              act::ChooseList{ListOf::All}};
    case ListOf::Pinned:
      return {say("Nothing is pinned"), say("Drive in the nail beside a station you want."),
              say("Show all"), act::ChooseList{ListOf::All}};
  }
  return {};
}

Gap gap_of(const Shared& shared, const StationsState& list) {
  if (!shared.stations) return {.title = say("Computing the paths")};
  const StationsAnswer& answer = *shared.stations;
  if (!answer.trouble.empty()) {
    return {say("The list cannot be made"), answer.trouble, say("Data"),
            act::OpenSheet{Sheet::Import}};
  }
  if (computing(shared)) return {.title = say("Computing the paths")};
  if (!answer.rows.empty()) return empty_kind(list);
  if (!shared.search.empty()) {
    return {say("No match"), say("Try fewer letters."), say("Clear"), act::ClearSearch{}};
  }
  if (!shared.findings.position) {
    return {say("Where is the rig?"), say("The list needs a position."), say("Set the position"),
            act::Show{Place::Here}};
  }
  if (const auto& on_board = shared.findings.on_board; on_board && on_board->nearest_m) {
    return {fill(say("The nearest station is {distance} {direction}"),
                 {{"distance", words::whole_distance(*on_board->nearest_m, shared.settings.miles)},
                  {"direction", words::octant(on_board->nearest_bearing)}}),
            fill(say("{number} stations are on board. Is the position right?"),
                 {{"number", std::to_string(on_board->count)}}),
            say("Check the position"), act::Show{Place::Here}};
  }
  return {say("No stations on board"),
          say("Get them over a connection or from a stick, or practice first."), say("Data"),
          act::OpenSheet{Sheet::Import}};
}

void draw_gap(Ui& ui, Rect view, const Gap& gap) {
  const ui::Theme& theme = ui.theme();
  ui.canvas().text({view.left, view.top + 56.0f}, gap.title, Face::Cardinal, theme.ink);
  const float y = ui.paragraph({view.left, view.top + 100.0f}, std::min(view.width(), 720.0f),
                               32.0f, gap.advice, Face::Text, theme.ink);
  if (gap.act == nullptr) return;
  const Rect act{view.left, y, view.left + 280.0f, y + kBar};
  if (ui.button("mend", act, gap.act, ui::ButtonLook::Filled)) ui.emit(gap.action);
}

// What the whole list means, in one line; while it fills, how far it is.
std::string list_note(const Shared& shared, const StationsState& list) {
  const StationsAnswer& answer = *shared.stations;
  if (computing(shared)) {
    return fill(say("{done} of {all} paths computed"),
                {{"done", std::to_string(answer.measured)}, {"all", std::to_string(answer.all)}});
  }
  if (!list.data_caution.empty()) return list.data_caution;
  if (!list.wanted.empty()) return fmt::format("{}", fmt::join(list.wanted, "; "));
  return std::string(say("Chance of a steady picture")) + " " + words::evening();
}

// A card of rows that one heading brings in.
class GroupList {
 public:
  GroupList(Ui& ui, Rect view, const Shared& shared, const StationsState& list)
      : ui_(ui), view_(view), shared_(shared), list_(list), beside_(view.width() >= 860.0f) {}

  void draw() {
    float height = 0.0f;
    for (const ListGroup& group : list_.groups) height += height_of(group) + kBetween;
    float top = view_.top - ui_.begin_scroll("stations", view_, height);
    for (const ListGroup& group : list_.groups) {
      const Rect card{view_.left, top, view_.right, top + height_of(group)};
      if (ui_.in_reach(card.top, card.bottom)) draw(group, card);
      top = card.bottom + kBetween;
    }
    ui_.end_scroll();
  }

 private:
  static constexpr float kHeadAbove = 96.0f;

  bool headless(const ListGroup& group) const { return !group.turn && list_.groups.size() == 1; }
  float height_of(const ListGroup& group) const {
    const float rows = station_row(ui_) * static_cast<float>(group.listed.size());
    return beside_ || headless(group) ? rows : rows + kHeadAbove;
  }

  void draw(const ListGroup& group, const Rect& card) {
    const ui::Theme& theme = ui_.theme();
    ui_.canvas().fill(card, theme.panel, 14.0f);
    Rect rows = card;
    if (headless(group)) {
    } else if (beside_) {
      // The head stays in view while its rows go by.
      Rect head{card.left, card.top, card.left + kTurnHead, card.bottom};
      if (card.overlaps(view_)) head = head.intersect(view_);
      draw_turn_head(ui_, head, group, shared_);
      rows.left = card.left + kTurnHead;
      ui_.canvas().line({rows.left, rows.top}, {rows.left, rows.bottom}, theme.rule, 2.0f);
    } else {
      rows.top += kHeadAbove;
      draw_turn_head(ui_, {card.left, card.top, card.right, rows.top}, group, shared_);
      ui_.canvas().line({rows.left, rows.top}, {rows.right, rows.top}, theme.rule, 2.0f);
    }
    draw_rows(group, rows);
    ui_.canvas().outline(card.inset(1.0f), theme.rule, 2.0f, 14.0f);
  }

  void draw_rows(const ListGroup& group, const Rect& rows) {
    float top = rows.top;
    for (const std::size_t i : group.listed) {
      const Rect row{rows.left, top, rows.right, top + station_row(ui_)};
      top = row.bottom;
      if (!ui_.in_reach(row.top, row.bottom)) continue;
      const StationRow& station = shared_.stations->rows[shared_.findings.listed[i]];
      const auto& brought = list_.brought;
      draw_station_row(ui_, row,
                       {.row = station,
                        .brings = i < brought.size() ? brought[i] : std::string(),
                        .own_heading = !group.turn},
                       shared_);
      if (row.bottom < rows.bottom) {
        ui_.canvas().line({row.left + 16.0f, row.bottom}, {row.right - 16.0f, row.bottom},
                          ui_.theme().rule, 1.5f);
      }
    }
  }

  Ui& ui_;
  Rect view_;
  const Shared& shared_;
  const StationsState& list_;
  bool beside_;  // the heads beside the rows, not above
};

void draw_search(Ui& ui, Rect field, const Shared& shared) {
  const bool searching = !shared.search.empty();
  const Rect clear{field.right - 120.0f, field.top, field.right, field.bottom};
  if (searching) field.right = clear.left - kBetween;
  const char* whole = say("Find network, channel or name");
  const bool fits = ui.canvas().text_width(whole, Face::Text) < field.width() - 48.0f;
  const char* hint = fits ? whole : say("Find");
  if (ui::slip(ui, "search", field, searching ? "" : hint, shared.search)) {
    ui.emit(act::OpenKeypad{KeypadPurpose::Search});
  }
  if (searching && ui.button("clear search", clear, say("Clear"), ui::ButtonLook::Plain)) {
    ui.emit(act::ClearSearch{});
  }
}

void draw_kinds(Ui& ui, Rect rect, const StationsState& list) {
  const auto label = [&](const char* words, ListOf kind) {
    return fmt::format("{} {}", words, list.counts[static_cast<std::size_t>(kind)]);
  };
  const std::array options{ui::Option{"all", label(say("All"), ListOf::All)},
                           ui::Option{"likely", label(say("Likely"), ListOf::Likely)},
                           ui::Option{"networks", label(say("Networks"), ListOf::Networks)},
                           ui::Option{"pinned", label(say("Pinned"), ListOf::Pinned)}};
  const auto touched =
      ui::segmented(ui, "list of", rect, options, static_cast<std::size_t>(list.list_of));
  if (touched) ui.emit(act::ChooseList{static_cast<ListOf>(*touched)});
}

// The network found by the search, which can be pinned for every stop.
void draw_pinnable(Ui& ui, Rect rect, const Shared& shared, const StationsState& list) {
  const std::string& network = list.pinnable;
  const bool pinned = is_pinned(shared.settings, network);
  const std::string label =
      fill(pinned ? say("Unpin {network} everywhere") : say("Pin {network} at every stop"),
           {{"network", network}});
  if (ui.button("pin what is searched", rect, label, ui::ButtonLook::Plain)) {
    ui.emit(act::PinNetwork{network});
  }
}

void draw_data_button(Ui& ui, Rect rect, const Shared& shared) {
  const char* label = shared.findings.importing ? say("Importing") : say("Data");
  if (ui.button("data", rect, label, ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::Import});
  }
}

// One pinned station that is gone at a time, with what to do about it. Returns the list's top.
float draw_lost_pin(Ui& ui, Rect area, const LostPin& lost) {
  constexpr float kAct = 176.0f, kPad = 16.0f;
  const bool narrow = area.width() < 700.0f;
  const Rect room{area.left + kPad, area.top, area.right - kPad, area.bottom};
  const float acts_width = (lost.instead ? 2.0f * kAct + kBetween : kAct);
  const float width = narrow ? room.width() : room.width() - acts_width - kPad;
  const std::string words = words::lost_pin(lost.pin.call_sign, lost.pin.key.source,
                                            lost.instead ? lost.instead->channel : std::string(),
                                            lost.instead ? lost.instead->key.source : "");
  const auto lines = static_cast<float>(ui.wrapped(words, width, Face::Text).size());
  const float line = ui.line(30.0f, Face::Text);
  const float text_height = line * lines + 20.0f;
  const float height =
      narrow ? text_height + kBar + kPad : std::max(text_height, kBar + 2.0f * kPad);
  const Rect card{area.left, area.top, area.right, area.top + height};
  ui.canvas().fill(card, ui.theme().panel, 14.0f);
  ui.canvas().outline(card.inset(1.0f), ui.theme().warning, 2.0f, 14.0f);
  const float first_line =
      narrow ? card.top + 34.0f : card.center().y - line * (lines - 1.0f) / 2.0f + 8.0f;
  ui.paragraph({room.left, first_line}, width, line, words, Face::Text, ui.theme().ink);
  const float top = narrow ? card.bottom - kPad - kBar : card.center().y - kBar / 2.0f;
  Rect act{room.right - kAct, top, room.right, top + kBar};
  if (ui.button("drop lost pin", act, say("Unpin"), ui::ButtonLook::Plain)) {
    ui.emit(act::PinStation{lost.pin.key});
  }
  act.left -= kAct + kBetween;
  act.right -= kAct + kBetween;
  if (lost.instead && ui.button("pin instead", act, say("Pin that one"), ui::ButtonLook::Filled)) {
    ui.emit(act::PinInstead{lost.pin.key, lost.instead->key});
  }
  return card.bottom + kBetween;
}

// The bars above the list: one on a wide screen, two on a narrow one. Returns the list's top.
float draw_bars(Ui& ui, const Rect& area, const Shared& shared, const StationsState& list) {
  constexpr float kData = 128.0f, kKinds = 620.0f, kWide = 1080.0f;
  const bool one = area.width() >= kWide;
  Rect kinds{area.left, area.top, area.right, area.top + kBar};
  if (one) kinds.right = area.left + kKinds;
  draw_kinds(ui, kinds, list);
  Rect second = kinds;
  if (one) {
    second = {kinds.right + kBetween, kinds.top, area.right, kinds.bottom};
  } else {
    second.top = kinds.bottom + kBetween;
    second.bottom = second.top + kBar;
  }
  const Rect data{second.right - kData, second.top, second.right, second.bottom};
  Rect field{second.left, second.top, data.left - kBetween, second.bottom};
  const Rect pin_beside{field.center().x, field.top, field.right, field.bottom};
  const bool beside = !list.pinnable.empty() && !one;
  if (beside) field.right = pin_beside.left - kBetween;
  draw_search(ui, field, shared);
  if (beside) draw_pinnable(ui, pin_beside, shared, list);
  draw_data_button(ui, data, shared);
  if (list.pinnable.empty() || !one) return second.bottom + kBetween;
  const Rect pin{area.left, second.bottom + kBetween, area.right, second.bottom + kBetween + kBar};
  draw_pinnable(ui, pin, shared, list);
  return pin.bottom + kBetween;
}

}  // namespace

void draw_station_rows(Ui& ui, Rect view, const Shared& shared, const StationsState& list) {
  if (!shared.stations || shared.findings.listed.empty()) {
    return draw_gap(ui, view, gap_of(shared, list));
  }
  const std::string note =
      ui::shortened(ui.canvas(), list_note(shared, list), Face::Text, view.width());
  ui.canvas().text({view.left, view.top + 22.0f}, note, Face::Text, ui.theme().second_ink);
  view.top += 36.0f;
  GroupList(ui, view, shared, list).draw();
}

void draw_stations(Ui& ui, Rect area, const Shared& shared, const StationsState& list) {
  area.top = draw_bars(ui, area, shared, list);
  if (!list.lost_pins.empty()) area.top = draw_lost_pin(ui, area, list.lost_pins.front());
  draw_station_rows(ui, area, shared, list);
}

}  // namespace mastwise::screens
