#include "app/aim/actions.hpp"
#include "app/aim/draw.hpp"
#include "app/aim/draw_protractor.hpp"
#include "app/aim/draw_sight.hpp"
#include "app/aim/draw_sky.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/column.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/standing_choice.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/language.hpp"
#include "app/words/needle.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>

#include <fmt/format.h>

// All ways to point at the heading, each with its error, and the classic mistake.
namespace mastwise::screens {
namespace {

using ui::Face;
using words::fill;
using words::say;

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
  ui.canvas().text({area.left, y}, words::way_title(way.kind), Face::Text, theme.second_ink);
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
  const Rect drawing{area.left, y, area.right - kError, area.bottom};
  if (const auto* shadow = std::get_if<FromShadow>(&way.said_as); shadow && shadow->angle) {
    y = draw_protractor(ui, drawing, say("The shadow"), shadow->angle->now);
  }
  if (const auto* landmark = std::get_if<FromLandmark>(&way.said_as)) {
    y = draw_protractor(ui, drawing, say("The landmark"), landmark->aside);
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

// Where one stands decides whether a compass tells anything, so it comes first.
float draw_standing_row(Ui& ui, Rect page, float y, const Shared& shared) {
  const ui::Theme& theme = ui.theme();
  const bool miles = shared.settings.miles;
  ui.canvas().text({page.left, y + 30.0f}, say("Where do you read the compass?"), Face::TextBold,
                   theme.ink);
  y += 42.0f;
  const float height = ui::standing_choice_height(ui, page.width(), miles);
  const auto touched = ui::standing_choice(ui, "stand", {page.left, y, page.right, y + height},
                                           miles, shared.stop.standing);
  if (touched) ui.emit(act::StandAt{*touched});
  y += height;
  const auto& field = shared.findings.field;
  const auto& standing = shared.stop.standing;
  if (!standing || !field || !refuses_compass(*standing)) return y;
  const double pull_deg = deviation_sigma_deg(*standing, field->horizontal_nt);
  return ui.paragraph(
             {page.left, y + 34.0f}, page.width(), 28.0f,
             fill(say("No compass here: the rig's steel turns a needle by ± {degrees}° or so. Walk "
                      "{distance} off, or use another way."),
                  {{"degrees", fmt::format("{:.0f}", pull_deg)},
                   {"distance", words::height(from_rig_m(Standing::well_clear), miles)}}),
             Face::TextBold, theme.warning) -
         20.0f;
}

// Asked once: a needle made for another zone may drag or stick here.
float draw_needle_row(Ui& ui, Rect page, float y, const Shared& shared) {
  const auto& field = shared.findings.field;
  if (!field) return y;
  const auto& made_for = shared.settings.needle;
  const NeedleHere here = needle_here(made_for, field->inclination_deg);
  const bool warns = here.swing != NeedleSwing::free;
  constexpr float kWide = 280.0f, kHigh = 72.0f, kBetween = 24.0f;
  const Rect button{page.left, y, page.left + kWide, y + kHigh};
  if (ui.button("needle", button, made_for ? say("The needle") : say("Made for which zone?"),
                warns && !made_for ? ui::ButtonLook::Filled : ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::Needle});
  }
  const float left = button.right + kBetween;
  const std::string words =
      warns ? words::needle_swing(made_for, here)
            : fill(say("The field {dip}: {zone}."), {{"dip", words::dip(field->inclination_deg)},
                                                     {"zone", words::needle_zone(here.zone)}});
  const float below = ui.paragraph({left, y + 30.0f}, page.right - left, 28.0f, words,
                                   warns ? Face::TextBold : Face::Text,
                                   warns ? ui.theme().warning : ui.theme().ink);
  return std::max(button.bottom, below - 20.0f) + 20.0f;
}

// The tablet's own compass, and whether it can be used.
float draw_tablet_row(Ui& ui, Rect page, float y, const Shared& shared) {
  const bool learned = !shared.settings.tablet_points.empty();
  const bool in_use = shared.settings.pointing == PointingMethod::tablet_magnetometer;
  constexpr float kWide = 280.0f, kHigh = 72.0f, kBetween = 24.0f;
  const Rect button{page.left, y, page.left + kWide, y + kHigh};
  if (ui.button("tablet", button, say("The tablet's compass"), ui::ButtonLook::Plain)) {
    ui.emit(act::OpenSheet{Sheet::Tablet});
  }
  const float left = button.right + kBetween;
  const char* words = in_use ? say("You point by it: hold it up before you.")
                      : learned
                          ? say("It knows its own iron and can point.")
                          : say("It must first learn its own iron, if it has a magnetometer.");
  const float below =
      ui.paragraph({left, y + 30.0f}, page.right - left, 28.0f, words, Face::Text, ui.theme().ink);
  return std::max(button.bottom, below - 20.0f) + 8.0f;
}

// An adjustable compass keeps the setting of the last stop until somebody turns its ring.
float draw_setting(Ui& ui, Rect area, float y, const Shared& shared, const AimState& aim) {
  if (!shared.findings.field) return y;
  const std::string here = words::declination(shared.findings.field->declination);
  const auto& set = shared.settings.compass_set;
  if (set) {
    const std::string was = words::declination(Declination::east_deg(set->east_deg));
    y = ui.paragraph({area.left, y + 30.0f}, area.width(), 28.0f,
                     aim.ring_turn ? fill(say("Last set for {was}, here {here}: turn its ring."),
                                          {{"was", was}, {"here", here}})
                                   : std::string(say("It is set for here.")),
                     aim.ring_turn ? Face::TextBold : Face::Text,
                     aim.ring_turn ? ui.theme().warning : ui.theme().second_ink) -
        20.0f;
  }
  if (set && !aim.ring_turn) return y;
  constexpr float kWide = 440.0f, kHigh = 72.0f;
  const Rect button{area.left, y + 4.0f, area.left + std::min(kWide, area.width()),
                    y + 4.0f + kHigh};
  if (ui.button("compass set", button, fill(say("I have set it for {here}"), {{"here", here}}),
                ui::ButtonLook::Plain)) {
    ui.emit(act::CompassIsSet{});
  }
  return button.bottom + 8.0f;
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
  if (!aim.ways.empty()) {
    y = draw_standing_row(ui, page, y, shared);
    y = draw_sight(ui, page, y, shared);
    y = draw_needle_row(ui, page, y, shared);
    y = draw_tablet_row(ui, page, y, shared);
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
    if (way.kind == SayingKind::set_compass) y = draw_setting(ui, page, y, shared, aim);
  }
  for (const LeftOut& out : aim.ways_left_out) {
    y = ui.paragraph({page.left, y + 32.0f}, page.width(), 26.0f,
                     std::string(words::way_title(out.kind)) + ": " + say(out.why.what) + "; " +
                         say(out.why.remedy),
                     Face::Text, theme.second_ink) -
        26.0f;
  }
  ui.end_page("ways", page.top, y + 16.0f);
}

}  // namespace mastwise::screens
