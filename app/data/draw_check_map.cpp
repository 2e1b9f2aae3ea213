#include "app/data/actions.hpp"
#include "app/data/draw_import.hpp"
#include "app/data/findings.hpp"
#include "app/ui/column.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/suspicions.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

// Some stations of a table on a map around their middle, north up, with coasts and borders: a
// wrong sign or column shows at a glance.
namespace mastwise::screens::import {
namespace {

using ui::ButtonLook;
using ui::Column;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

bool meet(const Rect& a, const Rect& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

// Call signs that do not overlap.
class Labels {
 public:
  Labels(Ui& ui, Rect map) : ui_(ui), map_(map) {}

  void put(Point at, const std::string& words) {
    constexpr float kHeight = 30.0f, kApart = 12.0f;
    const float width = ui_.canvas().text_width(words, Face::Text);
    for (const float left : {at.x + kApart, at.x - kApart - width}) {
      const Rect label{left, at.y - kHeight / 2.0f, left + width, at.y + kHeight / 2.0f};
      const bool taken = std::any_of(taken_.begin(), taken_.end(),
                                     [&](const Rect& other) { return meet(label, other); });
      if (taken || label.left < map_.left || label.right > map_.right) continue;
      taken_.push_back(label);
      ui_.canvas().fill(label, ui_.theme().panel);
      ui_.canvas().text({left, at.y + 9.0f}, words, Face::Text, ui_.theme().ink);
      return;
    }
  }
  void keep_free(Rect rect) { taken_.push_back(rect); }

 private:
  Ui& ui_;
  Rect map_;
  std::vector<Rect> taken_;
};

}  // namespace

void draw_check_map(Ui& ui, Rect rect, const CheckMap& map,
                    const std::vector<CheckedStation>& sample, bool miles) {
  const ui::Theme& theme = ui.theme();
  ui::Canvas& canvas = ui.canvas();
  constexpr float kCaption = 38.0f;
  const Rect plot{rect.left, rect.top, rect.right, rect.bottom - kCaption};
  const float side = std::min(plot.width(), plot.height());
  const double scale = side / 2.0 / map.radius_m;
  const auto on_screen = [&](const map::PlanePoint& at) {
    return Point{plot.center().x + static_cast<float>(at.east_m * scale),
                 plot.center().y - static_cast<float>(at.north_m * scale)};
  };
  canvas.fill(rect, theme.panel, 6.0f);
  canvas.push_clip(rect);
  for (const auto& corners : map.squares) {
    const std::array square{on_screen(corners[0]), on_screen(corners[1]), on_screen(corners[2]),
                            on_screen(corners[3])};
    canvas.solid(square, theme.lobe);
    canvas.polyline(square, theme.rule, 1.5f, true);
  }
  // Drawn piece by piece: the miters of a coast in one line would stick out like hairs.
  for (const auto& line : map.lines) {
    for (std::size_t i = 1; i < line.size(); ++i) {
      canvas.line(on_screen(line[i - 1]), on_screen(line[i]), theme.second_ink, 1.5f);
    }
  }
  Labels labels(ui, rect);
  labels.keep_free({rect.left, plot.bottom, rect.right, rect.bottom});
  constexpr float kDisc = 6.0f;
  std::vector<std::pair<Point, std::string>> stations;
  for (const CheckedStation& station : sample) {
    if (!station.at) continue;
    const Point at = on_screen(*station.at);
    stations.emplace_back(at, station.call_sign);
    labels.keep_free({at.x - kDisc, at.y - kDisc, at.x + kDisc, at.y + kDisc});
  }
  for (const auto& [at, call_sign] : stations) labels.put(at, call_sign);
  for (const auto& [at, call_sign] : stations) canvas.disc(at, kDisc, theme.accent);
  const double height_m = plot.height() / side * 2.0 * map.radius_m;
  const auto said = [&](const char* phrase) {
    return words::fill(phrase, {{"distance", words::whole_distance(height_m, miles)}});
  };
  std::string caption = said(words::say("{distance} from top to bottom"));
  constexpr float kBesideKite = 56.0f;
  if (canvas.text_width(caption, Face::Text) > rect.width() - kBesideKite) {
    caption = said(words::say("{distance} high"));
  }
  const float width = canvas.text_width(caption, Face::Text);
  canvas.fill({rect.left, plot.bottom, rect.left + width + kBesideKite, rect.bottom}, theme.panel);
  ui::kite(canvas, {rect.left + 22.0f, rect.bottom - 20.0f}, 14.0f, theme.ink, true);
  canvas.text({rect.left + 46.0f, rect.bottom - 11.0f}, caption, Face::Text, theme.ink);
  canvas.pop_clip();
  canvas.outline(rect, theme.rule, 2.0f, 6.0f);
}

void draw_suspicion(Ui& ui, Rect rect, const Shared& shared, const TableLook& look) {
  const Suspicion& suspicion = *look.suspicion;
  constexpr float kLine = 30.0f;
  rect.top = ui.paragraph({rect.left, rect.top + 26.0f}, rect.width(), kLine,
                          words::suspicion(suspicion), Face::Text, ui.theme().warning) -
             12.0f;
  const auto reading = [&](Rect part, const char* name, CoordinateReading as, const char* act,
                           const char* value, const std::optional<CheckMap>& map,
                           const std::vector<CheckedStation>& sample) {
    const Rect button{part.left, part.bottom - Column::kButton, part.right, part.bottom};
    if (ui.button(name, button, words::say(act), ButtonLook::Plain, true)) {
      ui.emit(act::CorrectReading{"positions", value});
    }
    ui::text_within(ui.canvas(), {part.left, part.top + 28.0f}, part.width(),
                    words::coordinate_reading(as), Face::TextBold, ui.theme().ink);
    part.top += 40.0f;
    part.bottom = button.top - Column::kGap;
    constexpr float kLeastMap = 100.0f;
    if (map && part.height() >= kLeastMap) {
      draw_check_map(ui, part, *map, sample, shared.settings.miles);
    }
  };
  Rect first = rect, second = rect;
  if (suspicion.other) {
    first.right = rect.center().x - Column::kGap / 2.0f;
    second.left = rect.center().x + Column::kGap / 2.0f;
    reading(second, "positions other", *suspicion.other, "Use this reading", kOtherPositions,
            look.map_other, look.sample_other);
  }
  reading(first, "positions as read", CoordinateReading::as_mapped, "They are right",
          kPositionsAsRead, look.map, look.sample);
}

}  // namespace mastwise::screens::import
