#include "app/plan/actions.hpp"
#include "app/plan/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/scans.hpp"
#include "app/words/units.hpp"

#include <array>

#include <fmt/format.h>

// The channels to enter at this heading, the expected stations, and the found ones.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Face;

// "509 MHz, Public".
std::string about_words(const ScanLine& line) {
  std::string words;
  const auto add = [&](const std::string& more) {
    if (!more.empty()) words += (words.empty() ? "" : ", ") + more;
  };
  if (line.channel.center_mhz) add(fmt::format("{:.0f} MHz", *line.channel.center_mhz));
  add(line.carries);
  return words;
}

std::string scan_title(const Shared& shared, const PlanState& plan) {
  const Bearing<True> heading = plan.scan.heading;
  const auto magnetic = on_compass_here(shared, heading);
  return words::fill(
      magnetic ? words::say("Scan at {degrees} magnetic") : words::say("Scan at {degrees} true"),
      {{"degrees", magnetic ? words::whole_degrees(*magnetic) : words::whole_degrees(heading)}});
}

// Found or missing; a touch on the chosen one takes it back.
void draw_tick(Ui& ui, Rect rect, const ScanLine& line) {
  const std::array options{ui::Option{"found", words::say("Found")},
                           ui::Option{"missing", words::say("Missing")}};
  std::optional<std::size_t> chosen;
  if (line.tick != ScanTick::not_tried) chosen = line.tick == ScanTick::found ? 0 : 1;
  const auto touched = ui::segmented(ui, "tick " + line.key.id, rect, options, chosen);
  if (!touched) return;
  const ScanTick tick = *touched == 0 ? ScanTick::found : ScanTick::not_found;
  ui.emit(act::SetTick{line.key, touched == chosen ? ScanTick::not_tried : tick});
}

void draw_channel(Ui& ui, Rect area, float& y, const ScanLine& line) {
  constexpr float kLine = 96.0f, kTick = 252.0f, kChannel = 128.0f, kChance = 96.0f;
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  canvas.text({area.left, y + 44.0f}, to_text(line.channel.rf_channel), Face::Matter, theme.ink);
  canvas.text({area.left, y + 78.0f}, words::say("RF"), Face::Text, theme.second_ink);
  const float text = area.left + kChannel - 40.0f;
  const Rect tick{area.right - kTick, y + 12.0f, area.right, y + 12.0f + 72.0f};
  const float chance_right = tick.left - 24.0f;
  // On a tall screen the second line has the chance.
  const bool upright = ui.portrait();
  const float chance_line = y + (upright ? 78.0f : 44.0f);
  if (line.channel.chance_percent) {
    canvas.text({chance_right, chance_line}, words::chance_number(*line.channel.chance_percent),
                Face::Value, theme.ink, Align::Right);
  }
  const float beside = chance_right - kChance - text, whole = chance_right - text;
  ui::text_within(canvas, {text, y + 44.0f}, upright ? whole : beside,
                  words::expected(line.channel), Face::Value, theme.ink);
  ui::text_within(canvas, {text, y + 78.0f}, upright ? beside : whole, about_words(line),
                  Face::Text, theme.second_ink);
  draw_tick(ui, tick, line);
  y += kLine;
  canvas.line({area.left, y}, {area.right, y}, theme.rule, 1.5f);
}

}  // namespace

void draw_scan_sheet(Ui& ui, const Shared& shared, const PlanState& plan) {
  constexpr float kChoice = 72.0f, kLabel = 30.0f;
  const ScanList& scan = plan.scan;
  const Rect view = draw_sheet_head(ui, scan_title(shared, plan), Sheet::Plan);
  const ui::Theme& theme = ui.theme();
  Rect page = view;
  page.top = ui.begin_page("scan", view);
  float y = page.top + 24.0f;
  const bool side = !ui.portrait();
  const Rect entry{side ? page.right - 460.0f : page.left, side ? page.top : page.top + 34.0f,
                   page.right, (side ? page.top : page.top + 34.0f) + kChoice};
  if (!side) {
    ui.canvas().text({page.left, page.top + 24.0f}, words::say("This TV takes channels"),
                     Face::Text, theme.second_ink);
    y = entry.bottom + 36.0f;
  }
  const auto by_hand = ui::on_off(ui, "channel entry", entry, shared.settings.channels_by_hand,
                                  words::say("Only by scan"), words::say("By hand, too"));
  if (by_hand && *by_hand != shared.settings.channels_by_hand) {
    ui.emit(act::NextSetting{"channels_by_hand"});
  }
  const float width = side ? entry.left - page.left - 24.0f : page.width();
  const auto write = [&](const std::string& text, Face face, ui::Color color) {
    y = ui.paragraph({page.left, y}, width, kLabel, text, face, color) + 4.0f;
  };
  write(words::scan_choice(scan.which), Face::Text, theme.ink);
  write(words::scan_state(scan.state), Face::TextBold, theme.accent);
  for (const Twins& twins : scan.twins) {
    write(words::twins(twins, shared.settings.miles), Face::TextBold, theme.warning);
  }
  y = std::max(y - 12.0f, entry.bottom + 12.0f);
  if (scan.lines.empty()) {
    y += 24.0f;
    write(words::say("No channel is likely at this heading."), Face::Value, theme.ink);
  }
  for (const ScanLine& line : scan.lines) draw_channel(ui, page, y, line);
  ui.end_page("scan", page.top, y + 16.0f);
}

}  // namespace mastwise::screens
