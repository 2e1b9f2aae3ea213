#include "app/data/actions.hpp"
#include "app/data/draw_import.hpp"
#include "app/ui/column.hpp"
#include "app/ui/lit_row.hpp"
#include "app/words/phrases.hpp"

#include <filesystem>

#include <fmt/format.h>

// How Mastwise reads a table: a touch corrects each column and reading; some stations show the
// result.
namespace mastwise::screens::import {
namespace {

using ui::Column;

using ui::Align;
using ui::ButtonLook;
using ui::Face;
using ui::Rect;
using ui::Ui;

constexpr float kRow = 76.0f;

// A row of two lines: the label above, the chosen value below.
bool draw_choice(Ui& ui, Rect rect, const std::string& name, const std::string& label,
                 const std::string& value, const std::string& aside, bool given) {
  const bool tapped = ui.touchable(name, rect, true, "readings");
  const ui::Theme& theme = ui.theme();
  const bool lit = ui.pressed(name);
  if (lit) ui.canvas().fill(rect.inset(2.0f), theme.lobe, 10.0f);
  const ui::Color second = second_ink_on_row(theme, lit);
  const float left = rect.left + 8.0f, right = rect.right - 8.0f, upper = rect.top + 28.0f;
  ui.canvas().text({left, upper}, label, Face::Small, second);
  const float said = left + ui.canvas().text_width(label, Face::Small) + 24.0f;
  if (said + ui.canvas().text_width(aside, Face::Small) <= right) {
    ui.canvas().text({right, upper}, aside, Face::Small, second, Align::Right);
  }
  ui.canvas().push_clip({left, rect.top, right, rect.bottom});
  ui.canvas().text({left, rect.top + 60.0f}, value, given ? Face::WordBold : Face::Word,
                   given ? accent_on_row(theme, lit) : second);
  ui.canvas().pop_clip();
  return tapped;
}

void draw_reading(Ui& ui, Rect rect, const IntakeRow& row) {
  const bool given = !row.value.empty();
  const std::string value = given ? row.value : row.missing ? "choose" : "not in the table";
  std::string aside;
  if (row.column && !row.example.empty()) aside = "such as " + row.example;
  if (draw_choice(ui, rect, "reading " + row.part, row.label, value, aside, given)) {
    ui.emit(row.column ? Action(act::ChooseColumnOf{row.part})
                       : Action(act::CorrectReading{row.part, row.next}));
  }
}

// The rows, each with its doubt below.
void draw_readings(Ui& ui, Rect view, const Intake& data) {
  // Each table starts at the top.
  const std::string page = "readings " + data.question.path;
  const float top = ui.begin_page(page, view);
  float y = top;
  for (const IntakeRow& row : data.found.rows) {
    draw_reading(ui, {view.left, y, view.right, y + kRow}, row);
    y += kRow;
    if (!row.note.empty()) {
      y = ui.paragraph({view.left + 8.0f, y + 16.0f}, view.width() - 16.0f, 24.0f, row.note,
                       Face::Small, row.missing ? ui.theme().warning : ui.theme().ink);
    }
    ui.canvas().line({view.left, y}, {view.right, y}, ui.theme().rule, 1.5f);
  }
  ui.end_page(page, top, y);
}

const IntakeRow* row_of(const Intake& data, const std::string& part) {
  for (const IntakeRow& row : data.found.rows) {
    if (row.part == part) return &row;
  }
  return nullptr;
}

void draw_columns(Ui& ui, Rect view, const IntakeRow& chosen, const TableLook& look) {
  ui.canvas().text({view.left + 8.0f, view.top + 24.0f}, "Which column is it? " + chosen.label,
                   Face::WordBold, ui.theme().ink);
  view.top += 40.0f;
  const float top = ui.begin_page("columns", view);
  float y = top;
  const auto choice = [&](const std::string& value, const std::string& name,
                          const std::string& label, const std::string& said, bool in_use) {
    if (draw_choice(ui, {view.left, y, view.right, y + kRow}, name, label, said, {}, in_use)) {
      ui.emit(act::CorrectReading{chosen.part, value});
    }
    y += kRow;
    ui.canvas().line({view.left, y}, {view.right, y}, ui.theme().rule, 1.5f);
  };
  for (const IntakeColumn& column : look.columns) {
    choice(column.name, "column " + column.name,
           column.example.empty() ? "empty in the first rows" : "such as " + column.example,
           column.name, column.name == chosen.value);
  }
  choice({}, "no column", "no column", "not in the table", chosen.value.empty());
  ui.end_page("columns", top, y);
}

float draw_known_by(Ui& ui, Rect rect, const Intake& data) {
  const TableLook& look = *data.look;
  return ui.paragraph({rect.left, rect.top + 20.0f}, rect.width(), 24.0f, look.known_by,
                      Face::Small, ui.theme().ink) -
         8.0f;
}

std::string rejected_words(const TableLook& look) {
  if (look.rejected == 0) return {};
  return fmt::format("{} of the first {} rows rejected. Line {}: {}", look.rejected, look.rows,
                     look.first_rejected.front().line, look.first_rejected.front().reason);
}

// The sample as text, with the rejected rows.
void draw_sample(Ui& ui, Rect view, const Intake& data) {
  constexpr float kLine = 26.0f;
  const TableLook& look = *data.look;
  const ui::Theme& theme = ui.theme();
  const float top = ui.begin_page("sample", view);
  float y = top + 20.0f;
  const auto said = [&](const std::string& words, ui::Color color) {
    if (!words.empty()) {
      y = ui.paragraph({view.left, y}, view.width(), kLine, words, Face::Small, color);
    }
  };
  const auto line = [&](const std::string& words) {
    ui.canvas().text({view.left, y}, words, Face::Small, theme.ink);
    y += kLine;
  };
  said(words::sentence(data.trouble), theme.warning);
  said(words::sentence(look.trouble), theme.warning);
  for (const CheckedStation& station : look.sample) {
    line(fmt::format("{}  RF {}  {:.4f}, {:.4f}  {}", station.call_sign, station.rf_channel,
                     station.position.latitude_deg(), station.position.longitude_deg(),
                     station.city));
  }
  for (const StationProgram& one : look.programs) {
    line(fmt::format("{}  {}  {}  {}", one.call_sign.empty() ? one.facility_id : one.call_sign,
                     one.program.virtual_channel, one.program.name, one.program.network));
  }
  said(data.found.from_here, theme.second_ink);
  said(rejected_words(look), theme.warning);
  ui.end_page("sample", top, y);
}

void draw_check(Ui& ui, Rect rect, const Shared& shared, const Intake& data) {
  const TableLook& look = *data.look;
  const Rect button{rect.left, rect.bottom - Column::kButton, rect.right, rect.bottom};
  if (ui.button("take in", button, "Import", ButtonLook::Filled, data.found.ready)) {
    ui.emit(act::TakeIn{});
  }
  rect.top = draw_known_by(ui, rect, data);
  rect.bottom = button.top - Column::kGap;
  if (look.map) {
    Rect map = rect;
    if (ui.portrait()) {
      map.right = rect.center().x - Column::kGap / 2.0f;
      rect.left = rect.center().x + Column::kGap / 2.0f;
    } else {
      constexpr float kSample = 132.0f, kPart = 0.62f;
      map.bottom = std::min(rect.bottom - kSample, rect.top + kPart * rect.height());
      rect.top = map.bottom + 8.0f;
    }
    draw_check_map(ui, map, look, shared.settings.miles);
  }
  draw_sample(ui, rect, data);
}

}  // namespace

void draw_table(Ui& ui, const Shared& shared, const Intake& data) {
  const std::filesystem::path path(data.question.path);
  const IntakeRow* chosen = row_of(data, data.choosing);
  const auto head = draw_head(ui, path.filename().string(), "table back", "Back");
  if (head.tapped) {
    ui.emit(chosen != nullptr ? Action(act::ChooseColumnOf{})
                              : Action(act::OpenIntakeFolder{data.question.folder}));
  }
  if (!data.look || !data.reading) {
    ui.canvas().text({head.room.left, head.room.top + 32.0f}, "Reading", Face::Word,
                     ui.theme().ink);
    return;
  }
  Rect readings = head.room, check = head.room;
  if (ui.portrait()) {
    check.bottom = head.room.top + 0.42f * head.room.height();
    readings.top = check.bottom + Column::kGap;
  } else {
    const Halves both = halves(ui, head.room);
    readings = both.first;
    check = both.second;
  }
  if (chosen != nullptr) {
    draw_columns(ui, readings, *chosen, *data.look);
  } else {
    draw_readings(ui, readings, data);
  }
  draw_check(ui, check, shared, data);
}

}  // namespace mastwise::screens::import
