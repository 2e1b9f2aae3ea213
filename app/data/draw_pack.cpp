#include "app/data/draw_import.hpp"
#include "app/ui/column.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <string>

// A pack before and after its import.
namespace mastwise::screens::import {
namespace {

using ui::Column;
using ui::Face;
using words::fill;
using words::say;

const char* kind_of_data(pack::PartKind kind) {
  switch (kind) {
    case pack::PartKind::terrain:
      return say("Heights");
    case pack::PartKind::landcover:
      return say("Land cover");
    case pack::PartKind::stations:
      break;
  }
  return say("Stations");
}

std::string told(const std::string& text) {
  return text.empty() ? std::string(say("not told")) : text;
}

}  // namespace

void draw_pack(ui::Ui& ui, ui::Rect rect, const PackLook& pack) {
  const float top = ui.begin_page("pack", rect);
  rect.top = top;
  Column column(ui, rect);
  column.plain(pack.name, Face::TextBold);
  column.line(fill(say("Made on {date}. Needs {size} of room."),
                   {{"date", told(pack.made)}, {"size", words::bytes(pack.to_write)}}));
  for (const PackLine& line : pack.lines) {
    column.rule();
    const bool squares = line.kind != pack::PartKind::stations;
    column.pair(
        kind_of_data(line.kind),
        squares ? fill(line.parts == 1 ? say("{number} square, {size}")
                                       : say("{number} squares, {size}"),
                       {{"number", std::to_string(line.parts)}, {"size", words::bytes(line.bytes)}})
                : words::bytes(line.bytes));
    std::string source = told(line.origin.source);
    if (!line.origin.date.empty()) source += ", " + line.origin.date;
    column.line(fill(say("Source: {source}"), {{"source", source}}));
    column.line(fill(say("License: {license}"), {{"license", told(line.origin.license)}}));
  }
  ui.end_page("pack", top, column.bottom() + 16.0f);
}

float draw_pack_report(ui::Ui& ui, ui::Rect rect, const PackReport& pack) {
  Column column(ui, rect);
  column.plain(pack.name, Face::TextBold);
  const auto row = [&](const char* label, std::size_t count) {
    column.pair(label, std::to_string(count));
  };
  row(say("New squares"), pack.tiles_new);
  row(say("Squares already on board"), pack.tiles_same);
  if (pack.tiles_kept_finer > 0) row(say("Finer squares kept"), pack.tiles_kept_finer);
  column.rule();
  row(say("New stations"), pack.stations_added);
  row(say("Changed stations"), pack.stations_changed);
  row(say("Unchanged stations"), pack.stations_unchanged);
  row(say("Gone"), pack.stations_gone);
  return column.bottom();
}

}  // namespace mastwise::screens::import
