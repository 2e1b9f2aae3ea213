#include "app/aim/draw_sight.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace mastwise::screens {
namespace {

using ui::Face;
using ui::Point;
using ui::Rect;
using words::fill;
using words::say;

// From above: a person, and the line over the mast, on which the boom lies.
void draw_line(ui::Ui& ui, Rect room) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  const float y = room.center().y, mast = room.left + 0.55f * room.width();
  constexpr float kDash = 12.0f, kGap = 8.0f, kHead = 16.0f;
  for (float x = room.left + 24.0f; x < room.right - kHead; x += kDash + kGap) {
    canvas.line({x, y}, {x + kDash, y}, theme.second_ink, 3.0f);
  }
  const std::array head{Point{room.right, y}, Point{room.right - kHead, y - 9.0f},
                        Point{room.right - kHead, y + 9.0f}};
  canvas.polygon(head, theme.second_ink);
  canvas.disc({room.left + 12.0f, y}, 11.0f, theme.ink);
  canvas.line({room.left + 12.0f, y}, {room.left + 28.0f, y}, theme.ink, 5.0f);
  canvas.line({mast - 34.0f, y}, {mast + 34.0f, y}, theme.ink, 6.0f);
  constexpr std::array kElements{std::array{-30.0f, 30.0f}, std::array{-10.0f, 26.0f},
                                 std::array{10.0f, 23.0f}, std::array{30.0f, 20.0f}};
  for (const auto& [at, half] : kElements) {
    canvas.line({mast + at, y - half}, {mast + at, y + half}, theme.ink, 3.0f);
  }
  canvas.disc({mast, y}, 9.0f, theme.ink);
}

}  // namespace

float draw_sight(ui::Ui& ui, Rect area, float y, const Shared& shared) {
  constexpr float kWide = 250.0f, kHigh = 92.0f, kBetween = 24.0f;
  const bool miles = shared.settings.miles;
  draw_line(ui, {area.left, y + 12.0f, area.left + kWide, y + 12.0f + kHigh});
  const double off_m = from_rig_m(shared.stop.standing.value_or(Standing::well_clear));
  const float left = area.left + kWide + kBetween;
  const std::string words =
      fill(say("Walk until the mast is on the line. Turn the antenna until its boom is end-on. A "
               "mark {offset} aside must be {distance} away or more."),
           {{"offset", words::height(off_m, miles)},
            {"distance", words::distance(least_mark_m(off_m), miles)}});
  const float below =
      ui.paragraph({left, y + 32.0f}, area.right - left, 28.0f, words, Face::Text, ui.theme().ink);
  return std::max(y + kHigh + 24.0f, below - 8.0f);
}

}  // namespace mastwise::screens
