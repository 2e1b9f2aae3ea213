#include "app/aim/actions.hpp"
#include "app/aim/draw.hpp"
#include "app/aim/draw_sky.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <fmt/format.h>

// All ways to point at the heading, each with its error, and the classic mistake.
namespace mastwise::screens {
namespace {

using ui::Face;
using words::fill;
using words::say;

const char* way_title(SayingKind kind) {
  switch (kind) {
    case SayingKind::true_bearing:
      return say("True bearing");
    case SayingKind::grid_bearing:
      return say("On a map, from its grid lines");
    case SayingKind::magnetic_bearing:
      return say("On a plain compass");
    case SayingKind::set_compass:
      return say("On a compass set to the declination");
    case SayingKind::rig_sides:
      return say("By the sides of the rig");
    case SayingKind::handle:
      return say("On the ceiling handle");
    case SayingKind::sun_shadow:
      return say("By the shadow of a plumb line");
    case SayingKind::star:
      return say("By a star, a planet or the moon");
    case SayingKind::landmark:
      return say("By a landmark");
    case SayingKind::walked_line:
      return say("By a line walked with the receiver");
  }
  return "";
}

std::string budget_words(const std::vector<ErrorLine>& lines) {
  std::string words;
  for (const ErrorLine& line : lines) {
    if (!words.empty()) words += ", ";
    words += fmt::format("{} {:.1f}°", words::say(to_text(line.kind)), line.sigma_deg);
  }
  return words;
}

// A touch selects this way to point; the chance then uses its error.
void draw_way(Ui& ui, Rect area, float& y, const Saying& way, const Shared& shared) {
  const ui::Theme& theme = ui.theme();
  const bool chosen = way.method == shared.settings.pointing;
  constexpr float kError = 150.0f;
  const float top = y;
  // Ways to choose from have a ring, the present one a filled ring.
  const Point mark{area.right - 24.0f, y + 66.0f};
  y += 34.0f;
  ui.canvas().text({area.left, y}, way_title(way.kind), Face::Text, theme.second_ink);
  ui.canvas().text({area.right, y}, fmt::format("± {:.1f}°", way.sigma_deg), Face::Value, theme.ink,
                   ui::Align::Right);
  y = ui.paragraph({area.left, y + 32.0f}, area.width() - kError, 32.0f,
                   words::sentence(words::heading(way.said_as, shared.settings.miles,
                                                  *shared.findings.zone.clocks)),
                   Face::Value, theme.ink);
  y = ui.paragraph({area.left, y}, area.width() - kError, 30.0f, budget_words(way.budget.lines),
                   Face::Text, theme.second_ink) -
      6.0f;
  const auto* stars = std::get_if<FromStars>(&way.said_as);
  if (stars && shared.findings.card) {
    y = draw_sky(ui, {area.left, y, area.right - kError, area.bottom},
                 shared.findings.card->bearing_true, *stars);
  }
  ui.canvas().line({area.left, y}, {area.right, y}, theme.rule, 1.5f);
  // A bearing alone does not point the antenna.
  const bool points = way.method != PointingMethod::bearing_alone;
  if (points) {
    ui.canvas().circle(mark, 16.0f, theme.ink, 3.0f);
    if (chosen) ui.canvas().disc(mark, 9.0f, theme.ink);
  }
  if (ui.touchable(std::string("way ") + std::string(to_text(way.kind)),
                   {area.left, top, area.right, y}, points, "ways")) {
    ui.emit(act::ChoosePointing{way.method});
  }
}

}  // namespace

void draw_ways_sheet(Ui& ui, const Shared& shared, const AimState& aim) {
  const ui::Theme& theme = ui.theme();
  const std::string title = shared.stop.target
                                ? fill(say("Ways to point at {station}"),
                                       {{"station", words::title(*shared.stop.target)}})
                                : std::string(say("Ways to point"));
  const Rect view = draw_sheet_head(ui, title);
  Rect page = view;
  page.top = ui.begin_page("ways", view);
  float y = page.top;
  if (aim.ways.empty()) {
    y = ui.paragraph({page.left, y + 34.0f}, page.width(), 30.0f,
                     say("No heading yet: choose a station and set the position."), Face::Text,
                     theme.ink);
  }
  if (aim.mistake) {
    y = ui.paragraph({page.left, y + 30.0f}, page.width(), 28.0f,
                     fill(say("The classic mistake: {mistake}"),
                          {{"mistake", words::north_mistake(*aim.mistake)}}),
                     Face::TextBold, theme.warning) -
        8.0f;
  }
  if (!aim.ways.empty()) {
    y = ui.paragraph({page.left, y + 30.0f}, page.width(), 26.0f,
                     say("Touch the way you point. Chance and tolerance then use its error."),
                     Face::Text, theme.second_ink) -
        16.0f;
  }
  for (const Saying& way : aim.ways) {
    draw_way(ui, page, y, way, shared);
  }
  for (const LeftOut& out : aim.ways_left_out) {
    y = ui.paragraph({page.left, y + 32.0f}, page.width(), 26.0f,
                     std::string(way_title(out.kind)) + ": " + say(out.why.what) + "; " +
                         say(out.why.remedy),
                     Face::Text, theme.second_ink) -
        26.0f;
  }
  ui.end_page("ways", page.top, y + 16.0f);
}

}  // namespace mastwise::screens
