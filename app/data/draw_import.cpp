#include "app/data/draw_import.hpp"

#include "app/data/actions.hpp"
#include "app/data/draw.hpp"
#include "app/data/draw_ground.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/act_row.hpp"
#include "app/ui/column.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>

#include <fmt/format.h>

// The ground and the sources on board, and the folders to import from.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::ActRow;
using ui::Align;
using ui::ButtonLook;
using ui::Face;

// Bytes on the disk, and what is free.
void draw_disk(Ui& ui, Rect row, const DiskUse& disk) {
  const ui::Theme& theme = ui.theme();
  const float third = row.width() / 3.0f;
  const auto part = [&](int index, const std::string& value, const char* what) {
    const float left = row.left + static_cast<float>(index) * third;
    ui.canvas().text({left, row.top + 30.0f}, value, Face::Value, theme.ink);
    ui.canvas().text({left, row.top + 62.0f}, what, Face::Text, theme.second_ink);
  };
  part(0, words::bytes(disk.ground_bytes), words::say("ground"));
  part(1, words::bytes(disk.station_bytes), words::say("stations"));
  part(2, disk.free_bytes ? words::bytes(*disk.free_bytes) : "?", words::say("free"));
}

// Tiles that cannot be used, and the notices that licenses ask for.
float draw_remarks(Ui& ui, Rect area, const IntakeAnswer& answer) {
  const ui::Theme& theme = ui.theme();
  float y = area.top + 24.0f;
  const auto line = [&](const std::string& words, Face face, ui::Color color) {
    const float step = face == Face::Fine ? 24.0f : 30.0f;
    y = ui.paragraph({area.left, y}, area.width(), step, words, face, color);
  };
  if (!answer.trouble.empty()) line(words::sentence(answer.trouble), Face::Text, theme.warning);
  if (answer.ground.terrain_cells + answer.ground.cover_cells > 0)
    line(words::fill(words::say("{heights} squares of heights, {cover} of land cover"),
                     {{"heights", std::to_string(answer.ground.terrain_cells)},
                      {"cover", std::to_string(answer.ground.cover_cells)}}),
         Face::Text, theme.second_ink);
  constexpr std::size_t kShown = 3;
  const auto& problems = answer.ground.problems;
  for (std::size_t i = 0; i < std::min(kShown, problems.size()); ++i) {
    line(words::sentence(problems[i]), Face::Text, theme.warning);
  }
  if (problems.size() > kShown) {
    line(words::fill(words::say("And {number} more tiles."),
                     {{"number", std::to_string(problems.size() - kShown)}}),
         Face::Text, theme.warning);
  }
  for (const std::string& notice : answer.ground.notices) {
    line(notice, Face::Fine, theme.second_ink);
  }
  return y;
}

std::string catalog_title(const Intake& data) {
  if (!data.answer) return words::say("Data");
  if (!data.found.squares) return words::say("Data");
  const SquaresCounted& squares = *data.found.squares;
  const std::pair<words::Phrase, std::string> all{"all", std::to_string(squares.all)};
  if (squares.missing == 0) return words::fill(words::say("All {all} squares on board"), {all});
  return words::fill(words::say("{number} of {all} squares missing"),
                     {{"number", std::to_string(squares.missing)}, all});
}

// The part of the ground that is missing.
std::string ground_words(const Shared& shared, const Intake& data) {
  if (!data.found.squares) return {};
  const SquaresCounted& squares = *data.found.squares;
  const std::string reach = words::whole_distance(kNearGround_m, shared.settings.miles);
  if (squares.missing == 0) {
    return words::fill(words::say("Heights within {distance} of your way"), {{"distance", reach}});
  }
  return words::fill(
      words::say("{number} % of the ground within {distance} of your way"),
      {{"number", fmt::format("{:.0f}", 100.0 * squares.missing_part)}, {"distance", reach}});
}

// The squares whose heights are missing, by name, and how to get them.
float draw_missing_squares(Ui& ui, Rect area, const Intake& data) {
  if (!data.found.squares || data.found.squares->missing == 0) return area.top;
  constexpr std::size_t kNamed = 9;
  const std::string names = import::squares_words(data.found.squares->missing_cells, kNamed);
  return ui.paragraph({area.left, area.top + 26.0f}, area.width(), 30.0f,
                      words::fill(words::say("Missing: {squares}. Get data fetches them."),
                                  {{"squares", names}}),
                      Face::Text, ui.theme().ink) -
         8.0f;
}

// Sources, disk and remarks, as a page that scrolls where it is long.
void draw_board(Ui& ui, Rect view, const Shared& shared, const Intake& data) {
  Rect page = view;
  page.top = ui.begin_page("import", view);
  const float top = page.top;
  page.top = import::draw_sources(ui, page, shared, data) + 8.0f;
  page.top = draw_missing_squares(ui, page, data);
  if (data.report) {
    Column column(ui, page);
    if (column.button("last report", words::say("Last import"), 0, 1)) {
      ui.emit(act::ShowLastReport{});
    }
    page.top = column.bottom() + 16.0f;
  }
  if (data.answer && data.answer->disk) {
    ui.canvas().line({page.left, page.top}, {page.right, page.top}, ui.theme().rule, 1.5f);
    draw_disk(ui, page, *data.answer->disk);
    page.top += 76.0f;
  }
  if (data.answer) page.top = draw_remarks(ui, page, *data.answer);
  ui.end_page("import", top, page.top);
}

void draw_catalog(Ui& ui, const Shared& shared, const Intake& data) {
  const ui::Theme& theme = ui.theme();
  Rect room = draw_sheet_head(ui, catalog_title(data), Sheet::None, Guide::Data);
  const std::string words = ground_words(shared, data);
  room.top = ui.paragraph({room.left, room.top + 8.0f}, room.width(), 30.0f, words, Face::Text,
                          theme.ink) -
             8.0f;
  const bool left = shared.settings.left_handed;
  auto [first, second] = ui::halves(ui, room);
  if (!ui.portrait()) {
    constexpr float kMap = 0.54f, kBetween = 40.0f;
    const float width = kMap * room.width();
    (left ? first.left : first.right) = left ? room.right - width : room.left + width;
    (left ? second.right : second.left) = left ? first.left - kBetween : first.right + kBetween;
    (left ? first.right : first.left) = left ? room.right : room.left;
    (left ? second.left : second.right) = left ? room.left : room.right;
  } else {
    constexpr float kMap = 0.5f;
    first.bottom = room.top + kMap * room.height();
    second.top = first.bottom + 16.0f;
  }
  import::draw_ground(ui, first, shared, data);
  const float act_width = std::min(200.0f, (second.width() - ActRow::kGap) / 2.0f);
  const Rect acts{second.left, second.bottom - ActRow::kHeight, second.right, second.bottom};
  second.bottom = acts.top - ActRow::kGap;
  ActRow row(acts, left);
  const bool missing = data.found.squares && data.found.squares->missing > 0;
  if (ui.button("import data", row.next(act_width), words::say("Import"),
                missing ? ButtonLook::Plain : ButtonLook::Filled)) {
    ui.emit(act::ShowImportPlaces{});
  }
  if (ui.button("get data", row.next(act_width), words::say("Get data"),
                missing ? ButtonLook::Filled : ButtonLook::Plain)) {
    ui.emit(act::ShowOffers{});
  }
  draw_board(ui, second, shared, data);
}

// Back to the folders to begin with.
Action places_of(const Intake& data) {
  return data.question.for_route ? Action(act::ShowRoutePlaces{}) : Action(act::ShowImportPlaces{});
}

// The folders to begin with.
void draw_start_folders(Ui& ui, const Shared& shared, const Intake& data) {
  const auto head =
      import::draw_head(ui, words::say(data.question.for_route ? "A way from" : "Import from"),
                        "places back", "Back");
  if (head.tapped) ui.emit(act::OpenIntakeFolder{});
  const ui::Theme& theme = ui.theme();
  Rect view = head.room;
  const Rect acts{view.left, view.bottom - ActRow::kHeight, view.right, view.bottom};
  constexpr float kAct = 184.0f, kRow = 84.0f;
  if (ui.button("look again", ActRow(acts, shared.settings.left_handed).next(kAct),
                words::say("Look again"), ButtonLook::Plain)) {
    ui.emit(places_of(data));
  }
  view.bottom = acts.top - ActRow::kGap;
  const float top = ui.begin_page("start folders", view);
  float y = top;
  const auto& answer = data.answer;
  if (answer && !answer->trouble.empty()) {
    y = ui.paragraph({view.left, y + 28.0f}, view.width(), 30.0f, words::sentence(answer->trouble),
                     Face::Text, theme.warning);
  }
  if (answer && answer->places.empty()) {
    y = ui.paragraph({view.left, y + 28.0f}, view.width(), 30.0f,
                     words::say("No folder, stick or card found."), Face::TextBold, theme.ink);
  }
  for (const IntakeEntry& place : answer ? answer->places : std::vector<IntakeEntry>()) {
    const Rect row{view.left, y, view.right, y + kRow};
    if (import::row_onward(ui, "look in " + place.path, row, "start folders", place.name,
                           place.path)) {
      ui.emit(act::OpenIntakeFolder{place.path});
    }
    y = row.bottom;
  }
  const char* const kinds =
      data.question.for_route
          ? words::say(
                "Routes, tracks and places (.gpx); tables of places with the columns name, "
                "latitude and longitude (.csv).")
          : words::say(
                "Tables of stations or programs (.csv, .tsv, .txt, .dat), plain, "
                "zipped or joined; heights or land cover (.tif, .img, .dt2); packs "
                "(.mwpack).");
  y = ui.paragraph({view.left, y + 44.0f}, view.width(), 30.0f, kinds, Face::Text,
                   theme.second_ink);
  ui.end_page("start folders", top, y);
}

std::string kind_words(const IntakeEntry& entry) {
  switch (entry.kind) {
    case IntakeEntry::Kind::Folder:
      return words::say("Folder");
    case IntakeEntry::Kind::Archive:
      return words::say("Set of tables");
    case IntakeEntry::Kind::Set:
      return words::say("All tables");
    case IntakeEntry::Kind::Pack:
      return words::fill(words::say("Pack, {size}"), {{"size", words::bytes(entry.bytes)}});
    case IntakeEntry::Kind::Table:
    case IntakeEntry::Kind::Raster:
    case IntakeEntry::Kind::Route:
      break;
  }
  return words::bytes(entry.bytes);
}

void draw_entry(Ui& ui, Rect row, const IntakeEntry& entry) {
  const bool folder = entry.kind == IntakeEntry::Kind::Folder;
  const std::string name = (folder ? "folder " : "table ") + entry.name;
  if (ui::onward(ui, name, row, "entries")) {
    const bool route = entry.kind == IntakeEntry::Kind::Route;
    ui.emit(folder  ? Action(act::OpenIntakeFolder{entry.path})
            : route ? Action(act::PickRoute{entry.path})
                    : Action(act::PickTable{entry.path}));
  }
  const ui::Theme& theme = ui.theme();
  const float baseline = row.center().y + 9.0f, right = row.right - ui::kChevron - 12.0f;
  const std::string kind = kind_words(entry);
  ui.canvas().text({right, baseline}, kind, Face::Text, second_ink_on_row(theme, ui.pressed(name)),
                   Align::Right);
  const float room = right - ui.canvas().text_width(kind, Face::Text) - 24.0f - row.left;
  const Face face = folder ? Face::Text : Face::TextBold;
  ui::text_within(ui.canvas(), {row.left + 12.0f, baseline}, room, entry.name, face, theme.ink);
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
}

void draw_entries(Ui& ui, Rect view, const IntakeFolder& folder) {
  const std::vector<IntakeEntry>& entries = folder.entries;
  constexpr float kRow = 76.0f;
  const float offset =
      ui.begin_scroll("entries " + folder.path, view, kRow * static_cast<float>(entries.size()));
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const float top = view.top + kRow * static_cast<float>(i) - offset;
    if (!ui.in_reach(top, top + kRow)) continue;
    draw_entry(ui, {view.left, top, view.right, top + kRow}, entries[i]);
  }
  ui.end_scroll();
}

void draw_folder(Ui& ui, const Intake& data) {
  const auto head = import::draw_head(ui, words::say("Choose a file"), "folder up", "Up");
  const auto& answer = data.answer;
  const bool known = answer && answer->question.folder == data.question.folder;
  const IntakeFolder* folder = known && answer->folder ? &*answer->folder : nullptr;
  if (head.tapped) {
    const bool top = folder == nullptr || folder->parent.empty();
    ui.emit(top ? places_of(data) : Action(act::OpenIntakeFolder{folder->parent}));
  }
  Rect view = head.room;
  ui::text_within(ui.canvas(), {view.left, view.top + 22.0f}, view.width(), data.question.folder,
                  Face::Text, ui.theme().second_ink);
  view.top += 36.0f;
  ui.canvas().line({view.left, view.top}, {view.right, view.top}, ui.theme().rule, 1.5f);
  const bool failed = known && !answer->trouble.empty();
  if (folder != nullptr && !folder->entries.empty()) {
    draw_entries(ui, view, *folder);
    return;
  }
  ui.paragraph({view.left, view.top + 40.0f}, view.width(), 30.0f,
               failed              ? words::sentence(answer->trouble)
               : folder == nullptr ? words::say("Searching")
               : data.question.for_route
                   ? words::say("This folder has no routes, tables or folders.")
                   : words::say("This folder has no tables, rasters, packs or folders."),
               Face::Text, failed ? ui.theme().warning : ui.theme().ink);
}

}  // namespace

namespace import {

Head draw_head(Ui& ui, const std::string& title, const std::string& act, const char* label) {
  constexpr float kClose = 176.0f, kAct = 144.0f;
  const Rect page = ui.screen().inset(ui::kMargin);
  const float right = page.right - kClose - Column::kGap;
  const Rect beside{right - kAct, page.top, right, page.top + Column::kButton};
  const bool tapped = ui.button(act, beside, words::say(label), ButtonLook::Plain);
  const float room = beside.left - Column::kGap - page.left;
  ui::text_within(ui.canvas(), {page.left, page.top + 44.0f}, room, title, Face::Cardinal,
                  ui.theme().ink);
  const Rect room_below = draw_sheet_head(ui, {});
  ui.back_is(act);
  return {room_below, tapped};
}

bool row_onward(Ui& ui, const std::string& name, Rect row, const std::string& page,
                const std::string& title, const std::string& line) {
  const ui::Theme& theme = ui.theme();
  const bool tapped = ui::onward(ui, name, row, page);
  const float room = row.width() - ui::kChevron - 16.0f;
  ui::text_within(ui.canvas(), {row.left + 8.0f, row.top + 36.0f}, room, title, Face::TextBold,
                  theme.ink);
  ui::text_within(ui.canvas(), {row.left + 8.0f, row.top + 68.0f}, room, line, Face::Text,
                  second_ink_on_row(theme, ui.pressed(name)));
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
  return tapped;
}

std::string squares_words(const std::vector<std::string>& cells, std::size_t most) {
  const auto end = cells.begin() + static_cast<std::ptrdiff_t>(std::min(most, cells.size()));
  std::string names = fmt::format("{}", fmt::join(cells.begin(), end, ", "));
  if (cells.size() > most) {
    names += " " + words::fill(words::say("and {number} more"),
                               {{"number", std::to_string(cells.size() - most)}});
  }
  return names;
}

}  // namespace import

void draw_import_sheet(Ui& ui, const Shared& shared, const Intake& data) {
  switch (data.question.step) {
    case IntakeStep::Catalog:
      return draw_catalog(ui, shared, data);
    case IntakeStep::Places:
      return draw_start_folders(ui, shared, data);
    case IntakeStep::Folder:
      return draw_folder(ui, data);
    case IntakeStep::Table:
      return import::draw_table(ui, shared, data);
    case IntakeStep::TakingIn:
    case IntakeStep::Fetching:
      return import::draw_taking_in(ui, data);
    case IntakeStep::Offers:
      return import::draw_offers(ui, shared, data);
    case IntakeStep::Route:
      return import::draw_routes(ui, shared, data);
    case IntakeStep::Report:
      return import::draw_report(ui, shared, data);
  }
}

}  // namespace mastwise::screens
