#include "app/logbook/actions.hpp"
#include "app/logbook/draw.hpp"
#include "app/ui/act_row.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/ui/texture.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <array>

// Exports the logbook to a folder or stick and imports another tablet's.
namespace mastwise::screens {
namespace {

using ui::ActRow;
using ui::ButtonLook;
using ui::Face;

constexpr float kBetween = 48.0f, kLine = 30.0f, kHead = 44.0f;

struct Form {
  LogbookTask task;
  const char* key;
  const char* label;
  const char* what;
};
constexpr std::array kForms{
    Form{LogbookTask::GiveTable, "Table", "Export table", "to read, as .csv"},
    Form{LogbookTask::GiveWaypoints, "Waypoints", "Export waypoints", "for maps, as .gpx"},
    Form{LogbookTask::GiveBackup, "Backup", "Export backup", "for another tablet"}};

const LogbookFolder* folder_to_write(const LogbookFiles& files) {
  if (!files.answer || files.folder >= files.answer->folders.size()) return nullptr;
  return &files.answer->folders[files.folder];
}

void draw_head(Ui& ui, Rect& view, const char* words) {
  ui.canvas().text({view.left, view.top + 28.0f}, words::say(words), Face::Value, ui.theme().ink);
  view.top += kHead;
}

void draw_result(Ui& ui, Rect view, const LogbookFiles& files) {
  const ui::Theme& theme = ui.theme();
  float y = view.top + 28.0f;
  const auto line = [&](const std::string& words, ui::Color color) {
    y = ui.paragraph({view.left, y}, view.width(), kLine, words, Face::Text, color);
  };
  if (files.working()) {
    line(words::say("Working"), theme.ink);
    const Rect bar{view.left, y - 12.0f, view.right, y};
    ui::dotted(ui.canvas(), {bar.left, bar.center().y}, {bar.right, bar.center().y}, theme.ink,
               4.0f);
  } else if (files.answer && !files.answer->trouble.empty()) {
    line(words::sentence(files.answer->trouble), theme.warning);
  } else if (files.answer) {
    for (const std::string& words : files.answer->said) line(words::sentence(words), theme.ink);
  }
}

void draw_export(Ui& ui, Rect view, const LogbookFiles& files) {
  const float top = ui.begin_page("logbook given out", view);
  Rect page = view;
  page.top = top;
  draw_head(ui, page, "Export");
  const LogbookFolder* folder = folder_to_write(files);
  const bool free = folder != nullptr && !files.working();
  const auto next_row = [&] {
    const Rect row{page.left, page.top, page.right, page.top + ActRow::kHeight};
    page.top = row.bottom + ActRow::kGap;
    return row;
  };
  if (ui::slip(ui, "logbook folder", next_row(), words::say("Into"),
               folder == nullptr ? words::say("no folder") : folder->name,
               free && files.answer->folders.size() > 1)) {
    ui.emit(act::NextLogbookFolder{});
  }
  for (const Form& form : kForms) {
    Rect row = next_row();
    constexpr float kAct = 0.56f;
    const Rect act{row.left, row.top, row.left + kAct * row.width(), row.bottom};
    if (ui.button(std::string("give out ") + form.key, act, words::say(form.label),
                  ButtonLook::Plain, free)) {
      ui.emit(act::AskLogbookFiles{form.task, {}});
    }
    const float left = act.right + ActRow::kGap;
    const std::string what = words::say(form.what);
    const auto lines = ui.wrapped(what, row.right - left, Face::Text).size();
    ui.paragraph({left, row.center().y + 9.0f -
                            0.5f * ui.line(28.0f, Face::Text) * static_cast<float>(lines - 1)},
                 row.right - left, 28.0f, what, Face::Text, ui.theme().second_ink);
  }
  draw_result(ui, page, files);
  const float lines = 1.0f + (files.answer ? static_cast<float>(files.answer->said.size()) : 0.0f);
  ui.end_page("logbook given out", top, page.top + lines * kLine + 60.0f);
}

void draw_file(Ui& ui, Rect row, const std::string& target, const LogbookFile& file) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  if (ui::onward(ui, target, row, "logbooks found")) ui.emit(act::AskMerge{file.path});
  const ui::Color second = second_ink_on_row(theme, ui.pressed(target));
  const float left = row.left + 8.0f, room = row.width() - 16.0f - ui::kChevron;
  ui::text_within(canvas, {left, row.top + 36.0f}, room, file.name, Face::TextBold, theme.ink);
  const std::string about = file.folder + ", " + words::bytes(file.bytes);
  ui::text_within(canvas, {left, row.top + 68.0f}, room, about, Face::Text, second);
  canvas.line({row.left, row.bottom}, {row.right, row.bottom}, theme.rule, 1.5f);
}

void draw_import(Ui& ui, Rect view, const LogbookFiles& files, bool left_handed) {
  constexpr float kRow = 88.0f, kAct = 184.0f;
  const Rect acts{view.left, view.bottom - ActRow::kHeight, view.right, view.bottom};
  if (ui.button("look again", ActRow(acts, left_handed).next(kAct), words::say("Look again"),
                ButtonLook::Plain, !files.working())) {
    ui.emit(act::AskLogbookFiles{LogbookTask::Look, {}});
  }
  view.bottom = acts.top - ActRow::kGap;
  draw_head(ui, view, "Import another tablet's");
  const bool any = files.answer && !files.answer->files.empty();
  const char* const words = any               ? "The later entry of two is kept; nothing is lost."
                            : files.working() ? "Looking for logbooks"
                                              : "No logbook in the folders, or on a stick or card.";
  view.top = ui.paragraph({view.left, view.top + 24.0f}, view.width(), kLine, words::say(words),
                          Face::Text, ui.theme().second_ink) -
             8.0f;
  if (!any) {
    ui::dotted(ui.canvas(), Rect{view.left, view.top + 8.0f, view.right, view.top + kRow},
               ui.theme().rule, 2.0f);
    return;
  }
  const auto& found = files.answer->files;
  const float offset =
      ui.begin_scroll("logbooks found", view, kRow * static_cast<float>(found.size()));
  for (std::size_t i = 0; i < found.size(); ++i) {
    const float top = view.top + kRow * static_cast<float>(i) - offset;
    if (!ui.in_reach(top, top + kRow)) continue;
    draw_file(ui, {view.left, top, view.right, top + kRow}, "logbook " + std::to_string(i + 1),
              found[i]);
  }
  ui.end_scroll();
}

}  // namespace

void draw_logbook_files_sheet(Ui& ui, const Shared& shared, const LogbookState& logbook) {
  const Rect view = draw_sheet_head(ui, words::say("Export or import"));
  Rect out = view, in = view;
  if (ui.portrait()) {
    out.bottom = view.center().y - ActRow::kGap;
    in.top = view.center().y;
  } else {
    out.right = view.center().x - kBetween / 2.0f;
    in.left = view.center().x + kBetween / 2.0f;
  }
  draw_export(ui, out, logbook.files);
  draw_import(ui, in, logbook.files, shared.settings.left_handed);
}

}  // namespace mastwise::screens
