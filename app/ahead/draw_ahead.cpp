#include "app/ahead/actions.hpp"
#include "app/ahead/draw.hpp"
#include "app/ahead/draw_route.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/column.hpp"
#include "app/ui/layout.hpp"
#include "app/words/chances.hpp"
#include "app/words/phrases.hpp"
#include "app/words/places.hpp"
#include "app/words/units.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>

#include <fmt/format.h>

// Possible stops side by side, compared by the wanted networks.
namespace mastwise::screens {
namespace {

using ui::Column;

using ui::Align;
using ui::ButtonLook;
using ui::Face;

constexpr float kRow = 124.0f, kName = 270.0f, kRemove = 104.0f, kGap = 16.0f;

std::size_t columns_that_fit(Rect area, std::size_t networks) {
  constexpr float kLeast = 136.0f;
  const float room = area.width() - kName - kRemove - 2.0f * kGap;
  return std::min(networks, static_cast<std::size_t>(room / kLeast));
}

void draw_offer(Ui& ui, Rect cell, const std::optional<AheadOffer>& offer) {
  const ui::Theme& theme = ui.theme();
  if (!offer) {
    ui.canvas().text({cell.left, cell.top + 40.0f}, "unknown", Face::Small, theme.second_ink);
    return;
  }
  ui.canvas().text({cell.left, cell.top + 40.0f}, words::chance_number(offer->chance_percent),
                   Face::Value, theme.ink);
  ui::draw_chance_mark(ui, {cell.left, cell.top + 50.0f, cell.right - kGap, cell.top + 64.0f},
                       reception::chance_word(offer->chance_percent));
  ui.canvas().text({cell.left, cell.top + 92.0f},
                   offer->call_sign + " " + words::whole_degrees(offer->bearing), Face::Small,
                   theme.second_ink);
}

class Table {
 public:
  Table(Ui& ui, Rect area, const Shared& shared, const AheadState& ahead)
      : ui_(ui),
        shared_(shared),
        ahead_(ahead),
        area_(area),
        table_(*shared.stations->ahead),
        columns_(columns_that_fit(area, table_.networks.size())) {
    width_ = (area.width() - kName - kRemove - 2.0f * kGap) /
             static_cast<float>(std::max<std::size_t>(1, columns_));
  }
  float draw(float y);

 private:
  Rect cell(float y, std::size_t column) const {
    const float left = area_.left + kName + kGap + static_cast<float>(column) * width_;
    return {left, y, left + width_, y + kRow};
  }
  void place(float y, const AheadPlace& place);
  void name(float y, const AheadPlace& place);

  Ui& ui_;
  const Shared& shared_;
  const AheadState& ahead_;
  Rect area_;
  const AheadTable& table_;
  std::size_t columns_;
  float width_ = 0.0f;
};

// A near town, else the position; then the distance.
void Table::name(float y, const AheadPlace& place) {
  const ui::Theme& theme = ui_.theme();
  constexpr float kLine = 27.0f;
  const places::NearPlace* near = near_place_of(shared_, place.position);
  const std::string said = near != nullptr
                               ? words::sentence(words::near_place(*near, shared_.settings.miles))
                               : format_position(place.position, Notation::Decimal);
  y = ui_.paragraph({area_.left, y + 32.0f}, kName, kLine, said, Face::WordBold, theme.ink);
  std::string away = "here";
  if (!place.here && shared_.findings.position) {
    const PathBetween way = path_between(*shared_.findings.position, place.position);
    away = words::distance(way.distance_m, shared_.settings.miles) + " " +
           words::octant(way.bearing) + " of here";
  }
  ui_.canvas().text({area_.left, y}, away, Face::Small, theme.second_ink);
}

void Table::place(float y, const AheadPlace& place) {
  const ui::Theme& theme = ui_.theme();
  const bool here = place.here;
  name(y, place);
  for (std::size_t i = 0; i < columns_; ++i) draw_offer(ui_, cell(y, i), place.offers[i]);
  const auto& asked = ahead_.places;
  const auto found = std::find(asked.begin(), asked.end(), place.position);
  if (!here && found != asked.end()) {
    const auto index = static_cast<std::size_t>(found - asked.begin());
    const Rect remove{area_.right - kRemove, y + 20.0f, area_.right, y + 20.0f + Column::kButton};
    if (ui_.button("remove place " + std::to_string(index), remove, "Remove", ButtonLook::Plain)) {
      ui_.emit(act::DropPlace{index});
    }
  }
  ui_.canvas().line({area_.left, y + kRow}, {area_.right, y + kRow}, theme.rule, 1.5f);
}

float Table::draw(float y) {
  for (std::size_t i = 0; i < columns_; ++i) {
    const Rect head = cell(y, i);
    ui_.canvas().push_clip({head.left, y, head.right - 8.0f, y + 40.0f});
    ui_.canvas().text({head.left, y + 28.0f}, table_.networks[i], Face::WordBold,
                      ui_.theme().second_ink);
    ui_.canvas().pop_clip();
  }
  y += 40.0f;
  for (const AheadPlace& one : table_.places) {
    place(y, one);
    y += kRow;
  }
  return y;
}

}  // namespace

void draw_ahead(Ui& ui, Rect area, const Shared& shared, const AheadState& ahead) {
  Rect page = area;
  page.top = ui.begin_page("ahead", area);
  Column column(ui, page);
  column.heading("WHERE TO STOP");
  column.line(
      "Compares places by the networks you pinned, or by all networks likely here. The place "
      "with the best weakest network comes first.");
  if (column.button("add place", "Add a place", 0, 3, true, ButtonLook::Filled)) {
    ui.emit(act::OpenField{Field::AheadPlace});
  }
  if (column.button("along", "Along the way", 1, 3, !ahead.places.empty() || ahead.along,
                    ahead.along ? ButtonLook::Filled : ButtonLook::Plain)) {
    ui.emit(act::SwitchAlong{});
  }
  if (column.button("drop places", "Remove all", 2, 3, !ahead.places.empty())) {
    ui.emit(act::DropAllPlaces{});
  }
  column.space(8.0f);
  float bottom = column.bottom();
  if (ahead.along) {
    bottom = draw_route(ui, {page.left, bottom, page.right, area.bottom}, shared, ahead);
  } else if (shared.stations && shared.stations->ahead &&
             shared.stations->ahead->networks.empty()) {
    column.line("No network is likely here. Pin a station that you want.");
    bottom = column.bottom() + 30.0f;
  } else if (shared.stations && shared.stations->ahead) {
    bottom = Table(ui, page, shared, ahead).draw(bottom);
  } else {
    column.line(shared.findings.position ? "Computing the paths."
                                         : "Position unknown. Set it under Here.");
    bottom = column.bottom() + 30.0f;
  }
  ui.end_page("ahead", page.top, bottom + 16.0f);
}

}  // namespace mastwise::screens
