#include "app/logbook/actions.hpp"
#include "app/logbook/draw.hpp"
#include "app/ui/column.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/phrases.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

// Exports the logbook to a folder or stick and imports another tablet's.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::Face;

constexpr float kBetween = 48.0f;

struct GiveOut {
  LogbookTask task;
  const char* label;
};
constexpr std::array kGiveOut{GiveOut{LogbookTask::GiveTable, "Table"},
                              GiveOut{LogbookTask::GiveWaypoints, "Waypoints"},
                              GiveOut{LogbookTask::GiveBackup, "Backup"}};

const LogbookFolder* folder_to_write(const LogbookFiles& files) {
  if (!files.answer || files.folder >= files.answer->folders.size()) return nullptr;
  return &files.answer->folders[files.folder];
}

void draw_said(Column& column, const LogbookFiles& files) {
  if (files.working()) {
    column.line("Working.");
  } else if (files.answer && !files.answer->trouble.empty()) {
    column.warning(words::sentence(files.answer->trouble));
  } else if (files.answer) {
    for (const std::string& line : files.answer->said) column.plain(words::sentence(line));
  }
}

void draw_give_out(Ui& ui, Rect view, const LogbookFiles& files) {
  Rect page = view;
  page.top = ui.begin_page("logbook given out", view);
  Column column(ui, page);
  column.heading("EXPORT");
  column.line(
      "A table (CSV) to read, waypoints (GPX) for maps, or a full backup for another tablet.");
  const LogbookFolder* folder = folder_to_write(files);
  const bool free = folder != nullptr && !files.working();
  if (column.button("logbook folder", folder == nullptr ? "No folder" : "Into " + folder->name, 0,
                    1, free && files.answer->folders.size() > 1)) {
    ui.emit(act::NextLogbookFolder{});
  }
  for (std::size_t i = 0; i < kGiveOut.size(); ++i) {
    if (column.button(std::string("give out ") + kGiveOut[i].label, kGiveOut[i].label,
                      static_cast<int>(i), static_cast<int>(kGiveOut.size()), free)) {
      ui.emit(act::AskLogbookFiles{kGiveOut[i].task, {}});
    }
  }
  draw_said(column, files);
  ui.end_page("logbook given out", page.top, column.bottom() + 16.0f);
}

std::string size_words(std::uint64_t bytes) {
  constexpr double kKilo = 1000.0;
  const double kilobytes = static_cast<double>(bytes) / kKilo;
  return kilobytes < kKilo ? fmt::format("{:.0f} kB", std::ceil(kilobytes))
                           : fmt::format("{:.1f} MB", kilobytes / kKilo);
}

void draw_file(Ui& ui, Rect row, const std::string& target, const LogbookFile& file, bool free) {
  const ui::Theme& theme = ui.theme();
  if (ui.touchable(target, row, free, "logbooks found")) {
    ui.emit(act::AskMerge{file.path});
  }
  const bool lit = ui.pressed(target);
  if (lit) ui.canvas().fill(row.inset(2.0f), theme.lobe, 10.0f);
  const ui::Color second = second_ink_on_row(theme, lit);
  ui.canvas().text({row.left + 16.0f, row.top + 36.0f}, file.name, Face::WordBold,
                   free ? theme.ink : second);
  ui.canvas().text({row.left + 16.0f, row.top + 66.0f},
                   "in " + file.folder + ", " + size_words(file.bytes), Face::Small, second);
  ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
}

void draw_take_in(Ui& ui, Rect view, const LogbookFiles& files) {
  constexpr float kFileRow = 84.0f;
  Column column(ui, view);
  column.heading("IMPORT ANOTHER TABLET'S");
  const bool any = files.answer && !files.answer->files.empty();
  column.line(any ? "Touch a file. Nothing is lost or doubled: the later entry is kept."
                  : "No logbook found in this tablet's folders or on a stick or card.");
  if (column.button("look again", "Look again", 0, 1, !files.working())) {
    ui.emit(act::AskLogbookFiles{LogbookTask::Look, {}});
  }
  if (!any) return;
  view.top = column.bottom() + Column::kGap;
  const auto& found = files.answer->files;
  const float offset =
      ui.begin_scroll("logbooks found", view, kFileRow * static_cast<float>(found.size()));
  for (std::size_t i = 0; i < found.size(); ++i) {
    const float top = view.top + kFileRow * static_cast<float>(i) - offset;
    if (top + kFileRow < view.top || top > view.bottom) continue;
    draw_file(ui, {view.left, top, view.right, top + kFileRow}, fmt::format("logbook {}", i + 1),
              found[i], !files.working());
  }
  ui.end_scroll();
}

}  // namespace

void draw_logbook_files_sheet(Ui& ui, const LogbookState& logbook) {
  const Rect view = draw_sheet_head(ui, "Export and import");
  Rect out = view, in = view;
  if (ui.portrait()) {
    out.bottom = view.center().y - Column::kGap;
    in.top = view.center().y;
  } else {
    out.right = view.center().x - kBetween / 2.0f;
    in.left = view.center().x + kBetween / 2.0f;
  }
  draw_give_out(ui, out, logbook.files);
  draw_take_in(ui, in, logbook.files);
}

}  // namespace mastwise::screens
