#include "app/ui/mini_dial.hpp"

#include "app/ui/kite.hpp"
#include "app/ui/rig_symbol.hpp"

namespace mastwise::ui {

void draw_mini_dial(Ui& ui, const MiniDial& dial) {
  Canvas& canvas = ui.canvas();
  const Theme& theme = ui.theme();
  const Point center = dial.center;
  const float radius = dial.radius;
  const Bearing<True> up = dial.nose ? dial.nose->nose() : Bearing<True>();
  const auto angle = [&](Bearing<True> bearing) { return (bearing - up).clockwise_deg(); };
  canvas.disc(center, radius, theme.paper);
  canvas.circle(center, radius, theme.rule, 2.0f);
  constexpr int kStep_deg = 30;
  const float tick = 0.09f * radius;
  for (int degrees = 0; degrees < 360; degrees += kStep_deg) {
    canvas.line(around(center, radius - tick, degrees), around(center, radius, degrees), theme.ink,
                1.8f);
  }
  kite(canvas, around(center, radius - 2.0f * tick - 5.0f, angle(Bearing<True>())), 0.1f * radius,
       theme.ink, true, angle(Bearing<True>()));
  draw_rig(canvas, theme, center, dial.nose ? std::optional(Turn()) : std::nullopt,
           0.82f * radius / kRigLength);
  const double to_deg = angle(dial.heading);
  canvas.line(center, around(center, 0.86f * radius, to_deg), theme.ink, 0.06f * radius + 1.0f);
  canvas.disc(around(center, 0.92f * radius, to_deg), 0.13f * radius, theme.accent);
  if (!dial.slack) return;
  canvas.arc(center, radius + 8.0f, static_cast<float>(to_deg - dial.slack->left_deg),
             static_cast<float>(to_deg + dial.slack->right_deg), theme.accent, 8.0f);
}

}  // namespace mastwise::ui
