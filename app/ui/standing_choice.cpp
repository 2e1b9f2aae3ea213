#include "app/ui/standing_choice.hpp"

#include "app/ui/choice.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <vector>

namespace mastwise::ui {
namespace {

using words::say;

constexpr float kStroke = 3.0f, kGround = 26.0f;

// A rig from the side, its wheels on the ground and its tail at `x`.
void rig_from_side(Canvas& canvas, float x, float ground, Color color) {
  canvas.outline({x, ground - 30.0f, x + 42.0f, ground - 6.0f}, color, kStroke, 5.0f);
  canvas.disc({x + 10.0f, ground - 5.0f}, 5.0f, color);
  canvas.disc({x + 32.0f, ground - 5.0f}, 5.0f, color);
}

void person(Canvas& canvas, float x, float feet, Color color) {
  canvas.disc({x, feet - 26.0f}, 4.5f, color);
  canvas.line({x, feet - 21.0f}, {x, feet - 9.0f}, color, kStroke);
  canvas.line({x, feet - 17.0f}, {x + 9.0f, feet - 17.0f}, color, kStroke);
  canvas.line({x, feet - 9.0f}, {x - 4.0f, feet}, color, kStroke);
  canvas.line({x, feet - 9.0f}, {x + 4.0f, feet}, color, kStroke);
}

void table(Canvas& canvas, float x, float ground, Color color) {
  canvas.line({x, ground - 13.0f}, {x + 22.0f, ground - 13.0f}, color, kStroke);
  canvas.line({x + 4.0f, ground - 13.0f}, {x + 1.0f, ground}, color, kStroke);
  canvas.line({x + 18.0f, ground - 13.0f}, {x + 21.0f, ground}, color, kStroke);
}

void steps(Canvas& canvas, float from, float to, float ground, Color color) {
  for (float x = from; x < to; x += 9.0f) {
    canvas.line({x, ground - 1.0f}, {x + 4.0f, ground - 1.0f}, color, 2.0f);
  }
}

void draw_standing(Canvas& canvas, Rect room, Color color, Standing standing) {
  const Point c = room.center();
  const float ground = c.y + kGround;
  switch (standing) {
    case Standing::beside_rig:
      rig_from_side(canvas, c.x - 34.0f, ground, color);
      person(canvas, c.x + 20.0f, ground, color);
      return;
    case Standing::on_roof:
      rig_from_side(canvas, c.x - 21.0f, ground, color);
      person(canvas, c.x, ground - 30.0f, color);
      return;
    case Standing::picnic_table:
      person(canvas, c.x - 20.0f, ground, color);
      table(canvas, c.x - 8.0f, ground, color);
      return;
    case Standing::few_steps_off:
      rig_from_side(canvas, c.x - 46.0f, ground, color);
      steps(canvas, c.x + 2.0f, c.x + 24.0f, ground, color);
      person(canvas, c.x + 32.0f, ground, color);
      return;
    case Standing::well_clear:
      rig_from_side(canvas, room.left + 4.0f, ground, color);
      steps(canvas, room.left + 52.0f, room.right - 16.0f, ground, color);
      person(canvas, room.right - 10.0f, ground, color);
      return;
  }
}

std::vector<Option> standing_options(bool miles) {
  std::vector<Option> options;
  for (const Standing standing : kStandings) {
    options.push_back({std::string(short_name(standing)), standing_words(standing, miles),
                       [standing](Canvas& canvas, Rect room, Color color) {
                         draw_standing(canvas, room, color, standing);
                       }});
  }
  return options;
}

}  // namespace

std::string standing_words(Standing standing, bool miles) {
  switch (standing) {
    case Standing::beside_rig:
      return say("By rig");
    case Standing::on_roof:
      return say("On roof");
    case Standing::picnic_table:
      return say("At table");
    case Standing::few_steps_off:
    case Standing::well_clear:
      return words::fill(say("{distance} off"),
                         {{"distance", words::height(from_rig_m(standing), miles)}});
  }
  return {};
}

float standing_choice_height(Ui& ui, float width, bool miles) {
  return choice_height(ui, standing_options(miles), width, 118.0f);
}

std::optional<Standing> standing_choice(Ui& ui, const std::string& name, Rect rect, bool miles,
                                        std::optional<Standing> chosen) {
  const auto index = chosen ? std::optional(static_cast<std::size_t>(*chosen)) : std::nullopt;
  const auto touched = segmented(ui, name, rect, standing_options(miles), index);
  return touched ? std::optional(kStandings[*touched]) : std::nullopt;
}

}  // namespace mastwise::ui
