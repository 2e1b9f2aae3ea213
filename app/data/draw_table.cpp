#include "app/data/actions.hpp"
#include "app/data/draw_import.hpp"
#include "app/data/findings.hpp"
#include "app/ui/column.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/slip.hpp"
#include "app/words/language.hpp"
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

constexpr float kRow = 88.0f;

// A row of two lines, the label above the value, that leads to another page.
bool draw_choice(Ui& ui, Rect rect, const std::string& name, const std::string& label,
                 const std::string& value, const std::string& aside, bool given) {
  // As far from its neighbors as a slip.
  const bool tapped =
      ui::onward(ui, name, {rect.left, rect.top + 8.0f, rect.right, rect.bottom - 8.0f});
  const ui::Theme& theme = ui.theme();
  const bool lit = ui.pressed(name);
  const ui::Color second = second_ink_on_row(theme, lit);
  const float left = rect.left + 8.0f, right = rect.right - 8.0f - ui::kChevron;
  const float upper = rect.top + 32.0f;
  ui::text_within(ui.canvas(), {left, upper}, right - left, label, Face::Text, second);
  const float said = left + ui.canvas().text_width(label, Face::Text) + 24.0f;
  const std::string example = ui::shortened(ui.canvas(), aside, Face::Text, right - said);
  ui.canvas().text({right, upper}, example, Face::Text, second, Align::Right);
  const Face face = given ? Face::TextBold : Face::Text;
  ui::text_within(ui.canvas(), {left, rect.top + 66.0f}, right - left, value, face,
                  given ? theme.ink : second);
  return tapped;
}

// A column leads to the list of columns; what has few values is edited in place.
void draw_reading(Ui& ui, Rect rect, const IntakeRow& row) {
  const bool given = !row.value.empty();
  const std::string value = given         ? row.value
                            : row.missing ? std::string(words::say("choose"))
                                          : std::string(words::say("not in the table"));
  const std::string name = "reading " + row.part, label = words::say(row.label.c_str());
  if (!row.column) {
    const Rect slip{rect.left, rect.top + 8.0f, rect.right, rect.bottom - 8.0f};
    if (ui::slip(ui, name, slip, label, value)) {
      ui.emit(act::CorrectReading{row.part, row.next});
    }
    return;
  }
  const std::string aside = row.example.empty() ? std::string()
                                                : words::fill(words::say("such as {example}"),
                                                              {{"example", row.example}});
  if (draw_choice(ui, rect, name, label, value, aside, given)) {
    ui.emit(act::ChooseColumnOf{row.part});
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
      y = ui.paragraph({view.left + 8.0f, y + 20.0f}, view.width() - 16.0f, 30.0f, row.note,
                       Face::Text, row.missing ? ui.theme().warning : ui.theme().ink) -
          8.0f;
    }
    // A slip has its own edge.
    if (row.column) ui.canvas().line({view.left, y}, {view.right, y}, ui.theme().rule, 1.5f);
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
  const std::string question = words::fill(words::say("Which column is it? {part}"),
                                           {{"part", words::say(chosen.label.c_str())}});
  ui::text_within(ui.canvas(), {view.left + 8.0f, view.top + 26.0f}, view.width() - 8.0f, question,
                  Face::TextBold, ui.theme().ink);
  view.top += 44.0f;
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
           column.example.empty()
               ? std::string(words::say("empty in the first rows"))
               : words::fill(words::say("such as {example}"), {{"example", column.example}}),
           column.name, column.name == chosen.value);
  }
  choice({}, "no column", words::say("no column"), words::say("not in the table"),
         chosen.value.empty());
  ui.end_page("columns", top, y);
}

float draw_known_by(Ui& ui, Rect rect, const Intake& data) {
  const TableLook& look = *data.look;
  return ui.paragraph({rect.left, rect.top + 26.0f}, rect.width(), 30.0f, look.known_by, Face::Text,
                      ui.theme().ink) -
         12.0f;
}

std::string rejected_words(const TableLook& look) {
  if (look.rejected == 0) return {};
  const RejectedRow& first = look.first_rejected.front();
  return words::fill(words::say("{number} of the first {all} rows rejected. Line {line}: {why}"),
                     {{"number", std::to_string(look.rejected)},
                      {"all", std::to_string(look.rows)},
                      {"line", std::to_string(first.line)},
                      {"why", first.reason}});
}

// The sample as text, with the rejected rows.
void draw_sample(Ui& ui, Rect view, const Intake& data) {
  constexpr float kLine = 31.0f;
  const TableLook& look = *data.look;
  const ui::Theme& theme = ui.theme();
  const float top = ui.begin_page("sample", view);
  float y = top + 24.0f;
  const auto said = [&](const std::string& words, ui::Color color) {
    if (!words.empty()) {
      y = ui.paragraph({view.left, y}, view.width(), kLine, words, Face::Text, color);
    }
  };
  const auto line = [&](const std::string& words) {
    ui::text_within(ui.canvas(), {view.left, y}, view.width(), words, Face::Text, theme.ink);
    y += kLine;
  };
  said(words::sentence(data.trouble), theme.warning);
  said(words::sentence(look.trouble), theme.warning);
  for (const std::string& remark : look.remarks) said(words::sentence(remark), theme.second_ink);
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
  if (ui.button("take in", button, words::say("Import"), ButtonLook::Filled, data.found.ready)) {
    ui.emit(act::TakeIn{});
  }
  rect.top = draw_known_by(ui, rect, data);
  rect.bottom = button.top - Column::kGap;
  if (suspected(data)) return draw_suspicion(ui, rect, shared, look);
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
    draw_check_map(ui, map, *look.map, look.sample, shared.settings.miles);
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
    ui.canvas().text({head.room.left, head.room.top + 32.0f}, words::say("Reading"), Face::TextBold,
                     ui.theme().ink);
    return;
  }
  Rect readings = head.room, check = head.room;
  if (ui.portrait()) {
    check.bottom = head.room.top + 0.42f * head.room.height();
    readings.top = check.bottom + Column::kGap;
  } else {
    const ui::Halves both = ui::halves(ui, head.room);
    readings = both.first;
    check = both.second;
  }
  if (data.look->pack) {
    draw_pack(ui, readings, *data.look->pack);
  } else if (chosen != nullptr) {
    draw_columns(ui, readings, *chosen, *data.look);
  } else {
    draw_readings(ui, readings, data);
  }
  draw_check(ui, check, shared, data);
}

}  // namespace mastwise::screens::import
