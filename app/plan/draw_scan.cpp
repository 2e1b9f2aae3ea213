#include "app/plan/actions.hpp"
#include "app/plan/draw.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/chances.hpp"
#include "app/words/scans.hpp"
#include "app/words/units.hpp"

#include <fmt/format.h>

// The channels to enter at this heading, the expected stations, and the found ones.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Face;

const char* tick_words(ScanTick tick) {
  switch (tick) {
    case ScanTick::found:
      return "Found";
    case ScanTick::not_found:
      return "Missing";
    case ScanTick::not_tried:
      break;
  }
  return "Tick";
}

// "509 MHz, 83 %, Public".
std::string about_words(const ScanLine& line) {
  std::string words;
  const auto add = [&](const std::string& more) {
    if (!more.empty()) words += (words.empty() ? "" : ", ") + more;
  };
  if (line.channel.center_mhz) add(fmt::format("{:.0f} MHz", *line.channel.center_mhz));
  if (line.channel.chance_percent) add(words::chance_number(*line.channel.chance_percent));
  add(line.carries);
  return words;
}

std::string heading_words(const Shared& shared, const PlanState& plan) {
  const Bearing<True> heading = plan.scan.heading;
  const auto magnetic = on_compass_here(shared, heading);
  if (!magnetic) return words::whole_degrees(heading) + " true";
  return words::whole_degrees(*magnetic) + " magnetic";
}

void draw_channel(Ui& ui, Rect area, float& y, const ScanLine& line) {
  constexpr float kRow = 88.0f, kTick = 144.0f;
  const ui::Theme& theme = ui.theme();
  ui.canvas().text({area.left, y + 54.0f}, "RF " + to_text(line.channel.rf_channel), Face::Cardinal,
                   theme.ink);
  const float text = area.left + 136.0f;
  ui.canvas().push_clip({text, y, area.right - kTick - 16.0f, y + kRow});
  ui.canvas().text({text, y + 38.0f}, words::expected(line.channel), Face::Value, theme.ink);
  ui.canvas().text({text, y + 68.0f}, about_words(line), Face::Small, theme.second_ink);
  ui.canvas().pop_clip();
  const Rect tick{area.right - kTick, y + 8.0f, area.right, y + kRow - 8.0f};
  if (ui.button("tick " + line.key.id, tick, tick_words(line.tick),
                line.tick == ScanTick::found ? ButtonLook::Filled : ButtonLook::Plain)) {
    ui.emit(act::TickStation{line.key});
  }
  y += kRow;
  ui.canvas().line({area.left, y}, {area.right, y}, theme.rule, 1.5f);
}

}  // namespace

void draw_scan_sheet(Ui& ui, const Shared& shared, const PlanState& plan) {
  const ScanList& scan = plan.scan;
  const Rect view = draw_sheet_head(ui, "Scan at " + heading_words(shared, plan));
  Rect page = view;
  page.top = ui.begin_page("scan", view);
  float y = page.top + 24.0f;
  const auto write = [&](const std::string& text, Face face, ui::Color color) {
    y = ui.paragraph({page.left, y}, page.width(), 28.0f, text, face, color) + 2.0f;
  };
  write(words::scan_choice(scan.which), Face::Word, ui.theme().ink);
  const Rect entry{page.left, y - 16.0f, page.left + 420.0f, y + 56.0f};
  if (ui.button("channel entry", entry,
                shared.settings.channels_by_hand ? "Enter channels by hand" : "Scan only",
                ui::ButtonLook::Plain)) {
    ui.emit(act::NextSetting{"channels_by_hand"});
  }
  y += 96.0f;
  write(words::scan_state(scan.state), Face::WordBold, ui.theme().accent);
  for (const Twins& twins : scan.twins) {
    write(words::twins(twins, shared.settings.miles), Face::WordBold, ui.theme().warning);
  }
  y -= 16.0f;
  for (const ScanLine& line : scan.lines) draw_channel(ui, page, y, line);
  ui.end_page("scan", page.top, y + 16.0f);
}

}  // namespace mastwise::screens
