#include "app/data/draw_import.hpp"

#include "app/data/actions.hpp"
#include "app/data/draw.hpp"
#include "app/ui/column.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>

#include <fmt/format.h>

// The catalog's sources with their age, and the folders to import from.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::Align;
using ui::ButtonLook;
using ui::Face;

void draw_sources(Column& column, const std::vector<IntakeSource>& sources) {
  for (const IntakeSource& source : sources) {
    column.plain(source.name, Face::WordBold);
    column.line(source.holds + ", " + source.age);
    if (!source.caution.empty()) column.warning(source.caution);
    column.space(12.0f);
  }
}

void draw_places(Column& column, Ui& ui, const std::vector<IntakeEntry>& places) {
  for (const IntakeEntry& place : places) {
    if (column.button("look in " + place.path, place.name, 0, 1)) {
      ui.emit(act::OpenIntakeFolder{place.path});
    }
  }
}

void draw_ground(Column& column, const GroundHeld& ground) {
  const auto tiles = [](std::size_t cells) {
    return cells == 0   ? std::string("None")
           : cells == 1 ? std::string("1 tile of one degree")
                        : fmt::format("{} tiles of one degree", cells);
  };
  column.rule();
  column.heading("GROUND");
  column.pair("Heights", tiles(ground.terrain_cells));
  column.pair("Land cover", tiles(ground.cover_cells));
  for (const std::string& notice : ground.notices) column.line(notice, Face::Small);
  constexpr std::size_t kShown = 3;
  for (std::size_t i = 0; i < std::min(kShown, ground.problems.size()); ++i) {
    column.warning(words::sentence(ground.problems[i]));
  }
  if (ground.problems.size() > kShown) {
    column.warning(fmt::format("And {} more tiles.", ground.problems.size() - kShown));
  }
}

void draw_catalog(Ui& ui, const Intake& data) {
  const Rect room = draw_sheet_head(ui, "Data");
  const float top = ui.begin_page("import", room);
  auto [first, second] = import::halves(ui, room);
  first.top = top;
  const IntakeFindings& found = data.found;
  Column left(ui, first);
  left.heading("STATIONS");
  if (found.stations.empty())
    left.line("None yet. Until you import stations, the practice area is used.");
  draw_sources(left, found.stations);
  if (!found.programs.empty()) {
    left.rule();
    left.heading("PROGRAMS");
    draw_sources(left, found.programs);
  }
  const auto& answer = data.answer;
  if (answer) draw_ground(left, answer->ground);
  second.top = ui.portrait() ? left.bottom() + 32.0f : top;
  Column right(ui, second);
  right.heading("IMPORT OR UPDATE");
  right.line(
      "A table of stations or programs: .csv, .tsv, .txt or .dat, plain or zipped; or joined "
      "tables in a folder or .zip. A raster of heights or land cover: .tif, .img or .dt2.");
  if (answer && !answer->trouble.empty()) right.warning(words::sentence(answer->trouble));
  if (answer) draw_places(right, ui, answer->places);
  right.space(12.0f);
  right.line("Just plugged in a stick or card?");
  if (right.button("look again", "Look again", 0, 1)) ui.emit(act::OpenIntakeFolder{});
  ui.end_page("import", top, std::max(left.bottom(), right.bottom()) + 16.0f);
}

std::string kind_words(const IntakeEntry& entry) {
  switch (entry.kind) {
    case IntakeEntry::Kind::Folder:
      return "Folder";
    case IntakeEntry::Kind::Archive:
      return "Set of tables";
    case IntakeEntry::Kind::Set:
      return "All tables";
    case IntakeEntry::Kind::Table:
    case IntakeEntry::Kind::Raster:
      break;
  }
  constexpr double kKilo = 1e3, kMega = 1e6;
  const auto bytes = static_cast<double>(entry.bytes);
  return bytes < kMega ? fmt::format("{:.0f} kB", std::max(1.0, bytes / kKilo))
                       : fmt::format("{:.1f} MB", bytes / kMega);
}

void draw_entry(Ui& ui, Rect row, const IntakeEntry& entry) {
  const bool folder = entry.kind == IntakeEntry::Kind::Folder;
  const std::string name = (folder ? "folder " : "table ") + entry.name;
  if (ui.touchable(name, row, true, "entries")) {
    ui.emit(folder ? Action(act::OpenIntakeFolder{entry.path})
                   : Action(act::PickTable{entry.path}));
  }
  const ui::Theme& theme = ui.theme();
  const bool lit = ui.pressed(name);
  if (lit) ui.canvas().fill(row.inset(2.0f), theme.lobe, 10.0f);
  constexpr float kKind = 180.0f;
  const float baseline = row.center().y + 9.0f;
  ui.canvas().push_clip({row.left, row.top, row.right - kKind, row.bottom});
  ui.canvas().text({row.left + 12.0f, baseline}, entry.name, folder ? Face::Word : Face::WordBold,
                   theme.ink);
  ui.canvas().pop_clip();
  ui.canvas().text({row.right - 12.0f, baseline}, kind_words(entry), Face::Small,
                   second_ink_on_row(theme, lit), Align::Right);
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
}

void draw_entries(Ui& ui, Rect view, const IntakeFolder& folder) {
  const std::vector<IntakeEntry>& entries = folder.entries;
  constexpr float kRow = 76.0f;
  const float offset =
      ui.begin_scroll("entries " + folder.path, view, kRow * static_cast<float>(entries.size()));
  const auto first = static_cast<std::size_t>(offset / kRow);
  const auto fitting = static_cast<std::size_t>(view.height() / kRow) + 2;
  for (std::size_t i = first; i < std::min(entries.size(), first + fitting); ++i) {
    const float top = view.top + kRow * static_cast<float>(i) - offset;
    draw_entry(ui, {view.left, top, view.right, top + kRow}, entries[i]);
  }
  ui.end_scroll();
}

void draw_folder(Ui& ui, const Intake& data) {
  const auto head = import::draw_head(ui, "Choose a file", "folder up", "Up");
  const auto& answer = data.answer;
  const bool known = answer && answer->question.folder == data.question.folder;
  const IntakeFolder* folder = known && answer->folder ? &*answer->folder : nullptr;
  if (head.tapped) ui.emit(act::OpenIntakeFolder{folder == nullptr ? "" : folder->parent});
  Rect view = head.room;
  ui.canvas().push_clip(view);
  ui.canvas().text({view.left, view.top + 20.0f}, data.question.folder, Face::Small,
                   ui.theme().second_ink);
  ui.canvas().pop_clip();
  view.top += 32.0f;
  ui.canvas().line({view.left, view.top}, {view.right, view.top}, ui.theme().rule, 1.5f);
  const bool failed = known && !answer->trouble.empty();
  if (folder != nullptr && !folder->entries.empty()) {
    draw_entries(ui, view, *folder);
    return;
  }
  ui.paragraph({view.left, view.top + 40.0f}, view.width(), 28.0f,
               failed              ? words::sentence(answer->trouble)
               : folder == nullptr ? "Searching"
                                   : "This folder has no tables, rasters or folders.",
               Face::Word, failed ? ui.theme().warning : ui.theme().ink);
}

}  // namespace

namespace import {

Head draw_head(Ui& ui, const std::string& title, const std::string& act, const std::string& label) {
  constexpr float kClose = 176.0f, kAct = 144.0f;
  const Rect page = ui.screen().inset(ui::kMargin);
  const float right = page.right - kClose - Column::kGap;
  const Rect beside{right - kAct, page.top, right, page.top + Column::kButton};
  const bool tapped = ui.button(act, beside, label, ButtonLook::Plain);
  const float room = beside.left - Column::kGap - page.left;
  ui.canvas().text({page.left, page.top + 44.0f},
                   ui::shortened(ui.canvas(), title, Face::Cardinal, room), Face::Cardinal,
                   ui.theme().ink);
  return {draw_sheet_head(ui, {}), tapped};
}

Halves halves(const Ui& ui, Rect room) {
  Rect first = room, second = room;
  if (!ui.portrait()) {
    constexpr float kBetween = 40.0f;
    first.right = room.center().x - kBetween / 2.0f;
    second.left = room.center().x + kBetween / 2.0f;
  }
  return {first, second};
}

}  // namespace import

void draw_import_sheet(Ui& ui, const Shared& shared, const Intake& data) {
  switch (data.question.step) {
    case IntakeStep::Catalog:
      return draw_catalog(ui, data);
    case IntakeStep::Folder:
      return draw_folder(ui, data);
    case IntakeStep::Table:
      return import::draw_table(ui, shared, data);
    case IntakeStep::TakingIn:
      return import::draw_taking_in(ui, data);
    case IntakeStep::Report:
      return import::draw_report(ui, shared, data);
  }
}

}  // namespace mastwise::screens
