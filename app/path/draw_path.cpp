#include "app/path/draw.hpp"
#include "app/path/draw_picture.hpp"
#include "app/path/draw_waterfall.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/column.hpp"
#include "app/ui/guide_mark.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/reasons.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "core/stations/note_names.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

// The path from the stop to the station as a lens, where its signal went, and every reason.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;

constexpr float kUnderPractice = 8.0f;  // the mark of the practice area is above the head
constexpr float kPathHead = 72.0f, kPathGap = 16.0f, kPathAct = 152.0f;

// What the chance would gain without a reason; empty if nothing worth showing.
std::string gain_words(const reception::Reason& reason) {
  constexpr double kLeast_percent = 0.5;
  return reason.gain_percent < kLeast_percent ? std::string()
                                              : fmt::format("+{:.0f} %", reason.gain_percent);
}

// Every reason with the gain without it; returns the bottom.
float draw_reasons(Ui& ui, Rect area, const StationRow& row, bool miles) {
  constexpr float kGain = 84.0f, kLine = 32.0f;
  float y = area.top + 26.0f;
  const bool gains = !row.reasons.empty() && !gain_words(row.reasons.front()).empty();
  ui.canvas().text({area.left, y},
                   gains ? words::say("Without each of these the chance would gain:")
                         : words::say("What the forecast rests on:"),
                   Face::TextBold, ui.theme().ink);
  y += kLine + 6.0f;
  for (const reception::Reason& reason : row.reasons) {
    ui.canvas().text({area.left + kGain - 14.0f, y}, gain_words(reason), Face::TextBold,
                     ui.theme().ink, Align::Right);
    y = ui.paragraph({area.left + kGain, y}, area.width() - kGain, kLine,
                     words::sentence(words::reason(reason, miles)), Face::Text, ui.theme().ink) +
        4.0f;
  }
  return y;
}

// The head: whose path, the chance, and the way back. Returns the room below.
Rect draw_head(Ui& ui, const StationRow* row) {
  const ui::Theme& theme = ui.theme();
  Rect page = ui.screen().inset(ui::kMargin);
  page.top += kUnderPractice;
  const Rect close{page.right - kPathAct, page.top, page.right, page.top + kPathHead};
  ui.back_is("close sheet");
  if (ui.button("close sheet", close, words::say("Back"), ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::None});
  }
  const float mark = close.left - kPathGap - ui::kGuideMark;
  ui::guide_button(ui, Guide::Path, {mark, page.top, mark + ui::kGuideMark, close.bottom});
  const Rect below{page.left, close.bottom + kPathGap, page.right, page.bottom};
  if (row == nullptr) {
    ui.canvas().text({page.left, page.top + 54.0f}, words::say("Path"), Face::Matter, theme.ink);
    return below;
  }
  const Rect carries{mark - kPathGap - kPathAct, page.top, mark - kPathGap, close.bottom};
  if (ui.button("carries", carries, words::say("Carries"), ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::Carries});
  }
  const std::string title = words::title(row->station);
  const std::string about = words::fill(
      words::say("{network}, RF {channel}"),
      {{"network", words::carries(row->station)}, {"channel", to_text(row->station.rf_channel)}});
  if (!row->outlook) {
    ui.canvas().text({page.left, page.top + 54.0f}, title, Face::Matter, theme.ink);
    return below;
  }
  const std::string number = words::chance_number(*row->outlook);
  const std::string word = words::chance_word(*row->outlook);
  const bool marked = row->outlook->chance_percent.has_value();
  const float mark_width = page.width() < 1150.0f ? 130.0f : 180.0f;
  const float chance_right = ui.portrait() ? page.right : carries.left - 1.5f * kPathGap;
  const float line = ui.portrait() ? below.top + 44.0f : page.top + 54.0f;
  float x = chance_right;
  if (marked) {
    x -= mark_width;
    ui::draw_chance_mark(ui, {x, line - 26.0f, chance_right, line + 2.0f},
                         reception::chance_word(*row->outlook->chance_percent));
    x -= kPathGap;
    ui.canvas().text({x, line}, word, Face::Text, theme.ink, Align::Right);
    x -= ui.canvas().text_width(word, Face::Text) + 12.0f;
  }
  ui.canvas().text({x, line}, number, Face::Matter, theme.ink, Align::Right);
  const float left_end = x - ui.canvas().text_width(number, Face::Matter) - 2.0f * kPathGap;
  const float title_end = ui.portrait() ? carries.left - kPathGap : left_end;
  ui::text_within(ui.canvas(), {page.left, page.top + 54.0f}, title_end - page.left, title,
                  Face::Matter, theme.ink);
  const float about_left = ui.portrait()
                               ? page.left
                               : page.left + ui.canvas().text_width(title, Face::Matter) + kPathGap;
  const std::string channel =
      words::fill(words::say("RF {channel}"), {{"channel", to_text(row->station.rf_channel)}});
  for (const std::string& words : {about, channel}) {
    if (ui.canvas().text_width(words, Face::Text) > left_end - about_left) continue;
    ui.canvas().text({about_left, line}, words, Face::Text, theme.second_ink);
    break;
  }
  return ui.portrait() ? Rect{below.left, line + 2.0f * kPathGap, below.right, below.bottom}
                       : below;
}

// Why there is no picture.
std::string no_picture_words(const Shared& shared, const StationRow* row) {
  if (!shared.stop.target) return words::say("Pick a station first, under Stations.");
  if (!shared.findings.position) return words::say("Position unknown. Set it under Here.");
  if (shared.stations && !shared.stations->trouble.empty()) {
    return words::sentence(shared.stations->trouble);
  }
  if (!shared.stations || shared.stations->measured < shared.stations->all) {
    return words::say("Computing the path.");
  }
  if (row == nullptr || !row->outlook) return words::say("This station is out of reach.");
  return words::say("No terrain here: the path is a guess over ordinary hills.");
}

// What mends an empty picture, under the thumb.
void draw_mend(Ui& ui, Rect room, const Shared& shared) {
  const bool placed = shared.findings.position.has_value();
  if (placed && shared.stop.target) return;
  const Rect act =
      shared.settings.left_handed
          ? Rect{room.left, room.bottom - kPathHead, room.left + 320.0f, room.bottom}
          : Rect{room.right - 320.0f, room.bottom - kPathHead, room.right, room.bottom};
  if (ui.button("find", act, placed ? words::say("Pick a station") : words::say("Set position"),
                ui::ButtonLook::Filled)) {
    ui.emit(act::OpenSheet{Sheet::None});
    ui.emit(act::Show{placed ? Place::Stations : Place::Here});
  }
}

// What the picture and the figures rest on.
std::string source_words(const StationRow& row, const Shared& shared, Rect picture) {
  const auto& path = shared.stations->target_path;
  std::string words;
  if (shared.findings.position_stale)
    words = words::say("From the last position of the receiver. ");
  if (row.outlook) words += words::sentence(words::models(*row.outlook)) + ". ";
  if (path) {
    words += words::fill(
        words::say("Terrain known for {share} %. Earth 4/3, 0.6 Fresnel zone. Heights {times} "
                   "times taller. "),
        {{"share", fmt::format("{:.0f}", std::floor(100.0 * path->terrain_coverage))},
         {"times", fmt::format("{:.0f}", height_exaggeration(picture, *path))}});
  }
  for (const Note& note : row.station.notes) {
    if (note.column == kRebroadcasts) {
      words += words::fill(words::say("Repeats {station}. "), {{"station", note.text}});
    }
    if (note.column == kAlsoInSource) {
      words += words::fill(words::say("Also in {source}. "), {{"source", note.text}});
    }
  }
  const Provenance& from = row.station.provenance;
  return words + words::fill(words::say("Station from {source}, line {line}, {age}."),
                             {{"source", from.source.name},
                              {"line", std::to_string(from.line)},
                              {"age", words::data_age(from.source.date, shared.findings.today)}});
}

// Right-aligned at the foot of the free room, if it is wide enough; false if not.
bool draw_sources_beside(Ui& ui, Rect free, const std::string& words) {
  constexpr float kLine = 24.0f;
  constexpr std::size_t kMostLines = 4;
  const auto lines = ui.wrapped(words, free.width(), Face::Fine);
  if (free.width() < 280.0f || lines.size() > kMostLines) return false;
  const float apart = ui.line(kLine, Face::Fine);
  float y = free.bottom - apart * static_cast<float>(lines.size() - 1) - 6.0f;
  for (const std::string_view line : lines) {
    ui.canvas().text({free.right, y}, line, Face::Fine, ui.theme().second_ink, Align::Right);
    y += apart;
  }
  return true;
}

// Ground is hatched where it is not known.
void draw_hatch_legend(Ui& ui, Rect picture) {
  const std::string words = words::say("hatched: no terrain data");
  const float right = picture.right - 16.0f;
  ui.canvas().text({right, picture.top + 34.0f}, words, Face::Text, ui.theme().ink, Align::Right);
}

}  // namespace

void draw_path_sheet(Ui& ui, const Shared& shared) {
  const StationRow* row = shared.stop.target && shared.stations
                              ? find_row(*shared.stations, key_of(*shared.stop.target))
                              : nullptr;
  const Rect room = draw_head(ui, row);
  const bool computed = row != nullptr && row->outlook && shared.stations->target_path;
  constexpr float kMoreLine = 44.0f;
  const bool budgeted = row != nullptr && row->outlook && shared.stations->target_budget;
  if (!budgeted) {
    Rect picture = room;
    if (computed) {
      draw_path_picture(ui, picture,
                        {.picture = *shared.stations->target_path, .miles = shared.settings.miles});
    } else {
      picture.bottom = std::min(picture.bottom, picture.top + 0.6f * room.height());
      draw_unknown_path(ui, picture, no_picture_words(shared, row));
      draw_mend(ui, room, shared);
      if (row != nullptr) {
        draw_reasons(ui, {room.left, picture.bottom + kPathGap, room.right, room.bottom}, *row,
                     shared.settings.miles);
      }
    }
    return;
  }
  Rect page = room;
  page.top = ui.begin_page("path", room);
  const reception::SignalBudget& budget = *shared.stations->target_budget;
  const float whole = room.height() - kMoreLine;
  constexpr float kLeastPicture = 0.4f, kMostPicture = 0.58f, kApart = 14.0f;
  const auto steps = waterfall(budget, waterfall_rows((1.0f - kLeastPicture) * whole - kApart));
  const float left_over = whole - kApart - waterfall_height(steps.size());
  const Rect picture{page.left, page.top, page.right,
                     page.top + std::min(left_over, kMostPicture * whole)};
  if (computed) {
    const reception::PathPicture& path = *shared.stations->target_path;
    draw_path_picture(ui, picture,
                      {.picture = path, .steps = steps, .miles = shared.settings.miles});
    if (path.terrain_coverage < 1.0) draw_hatch_legend(ui, picture);
  } else {
    draw_unknown_path(ui, picture, no_picture_words(shared, row));
  }
  const Rect below{page.left, picture.bottom + kApart, page.right, page.top + whole};
  const Rect free = draw_waterfall(ui, below, budget, steps, shared.settings.miles);
  const std::string sources = source_words(*row, shared, picture);
  // Beside the answer, else under it, else after the reasons.
  constexpr float kSourceLine = 24.0f;
  const float under = below.top + waterfall_height(steps.size()) + kSourceLine;
  const auto source_lines =
      static_cast<float>(ui.wrapped(sources, page.width(), Face::Fine).size());
  bool told = draw_sources_beside(ui, free, sources);
  if (!told && under + source_lines * ui.line(kSourceLine, Face::Fine) < below.bottom) {
    ui.paragraph({page.left, under}, page.width(), kSourceLine, sources, Face::Fine,
                 ui.theme().second_ink);
    told = true;
  }
  float bottom = draw_reasons(ui, {page.left, below.bottom + 6.0f, page.right, page.bottom}, *row,
                              shared.settings.miles);
  if (!told) {
    bottom = ui.paragraph({page.left, bottom + 8.0f}, page.width(), kSourceLine, sources,
                          Face::Fine, ui.theme().second_ink);
  }
  ui.end_page("path", page.top, bottom);
}

}  // namespace mastwise::screens
