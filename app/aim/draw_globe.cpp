#include "app/aim/draw_globe.hpp"

#include "app/words/language.hpp"

#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace mastwise::screens {
namespace {

using ui::Align;
using ui::Canvas;
using ui::Face;
using ui::Point;
using ui::Theme;
using ui::Ui;
using words::say;

constexpr double kGlobeRadian = std::numbers::pi / 180.0;
// The view is centered on the person's meridian at this latitude, so that the pole, the zones
// around it and the person are all on the near side.
constexpr double kCenterLatitude_deg = 60.0;

// The orthographic projection of a sphere; from memory: J. P. Snyder, Map Projections: A Working
// Manual, USGS Professional Paper 1395 (1987), (20-3) and (20-4).
class GlobeView {
 public:
  GlobeView(Point center, float radius, double latitude_deg, double longitude_deg)
      : center_(center),
        radius_(radius),
        latitude_(latitude_deg * kGlobeRadian),
        longitude_(longitude_deg * kGlobeRadian) {}

  struct Seen {
    Point at;
    bool near_side;
  };
  // What lies beyond the edge is drawn on it.
  Seen see(const Position& position) const {
    const double latitude = position.latitude_deg() * kGlobeRadian;
    const double east = position.longitude_deg() * kGlobeRadian - longitude_;
    const double toward = std::sin(latitude_) * std::sin(latitude) +
                          std::cos(latitude_) * std::cos(latitude) * std::cos(east);
    double x = std::cos(latitude) * std::sin(east);
    double y = std::cos(latitude_) * std::sin(latitude) -
               std::sin(latitude_) * std::cos(latitude) * std::cos(east);
    const bool near_side = toward >= 0.0;
    if (const double off = std::hypot(x, y); !near_side && off > 0.0) {
      x /= off;
      y /= off;
    }
    return {
        {center_.x + radius_ * static_cast<float>(x), center_.y - radius_ * static_cast<float>(y)},
        near_side};
  }

 private:
  Point center_;
  float radius_;
  double latitude_, longitude_;
};

// A parallel or a meridian, as far as it is on the near side.
template <class At>
void draw_grid_line(Ui& ui, const GlobeView& view, int from_deg, int to_deg, float width, At at) {
  constexpr int kStep_deg = 5;
  std::optional<Point> last;
  for (int degrees = from_deg; degrees <= to_deg; degrees += kStep_deg) {
    const GlobeView::Seen seen = view.see(at(degrees));
    if (seen.near_side && last) ui.canvas().line(*last, seen.at, ui.theme().rule, width);
    last = seen.near_side ? std::optional(seen.at) : std::nullopt;
  }
}

void draw_grid(Ui& ui, const GlobeView& view) {
  for (int latitude_deg = -60; latitude_deg <= 60; latitude_deg += 30) {
    draw_grid_line(ui, view, -180, 180, latitude_deg == 0 ? 3.0f : 1.5f, [&](int longitude_deg) {
      return *Position::at_deg(latitude_deg, longitude_deg);
    });
  }
  for (int longitude_deg = -180; longitude_deg < 180; longitude_deg += 30) {
    draw_grid_line(ui, view, -90, 90, 1.5f, [&](int latitude_deg) {
      return *Position::at_deg(latitude_deg, longitude_deg);
    });
  }
}

void draw_zone(Ui& ui, const GlobeView& view, const Position& pole,
               const std::vector<Position>& outline, bool full) {
  std::vector<Point> edge;
  for (const Position& position : outline) edge.push_back(view.see(position).at);
  ui.canvas().fan(view.see(pole).at, edge, full ? ui.theme().ink : ui.theme().lobe);
  ui.canvas().polyline(edge, ui.theme().ink, 2.0f, true);
}

}  // namespace

void draw_globe(Ui& ui, Point center, float radius, const Position& here,
                const std::array<WeakField, 2>& weak) {
  const Theme& theme = ui.theme();
  Canvas& canvas = ui.canvas();
  const bool north = here.latitude_deg() >= 0.0;
  const GlobeView view(center, radius, north ? kCenterLatitude_deg : -kCenterLatitude_deg,
                       here.longitude_deg());
  canvas.disc(center, radius, theme.panel);
  draw_grid(ui, view);
  for (const WeakField& one : weak) {
    if (!view.see(one.pole).near_side) continue;
    draw_zone(ui, view, one.pole, one.caution, false);
    draw_zone(ui, view, one.pole, one.blackout, true);
  }
  canvas.circle(center, radius, theme.ink, 3.0f);
  const Point person = view.see(here).at;
  canvas.disc(person, 13.0f, theme.paper);
  canvas.circle(person, 12.0f, theme.accent, 4.0f);
  canvas.disc(person, 5.0f, theme.accent);
  // Below the dot in the north, where the zones are above it.
  canvas.text({person.x, person.y + (north ? 40.0f : -24.0f)}, say("You are here"), Face::TextBold,
              theme.ink, Align::Center);
}

}  // namespace mastwise::screens
