#include "app/ahead/draw_way.hpp"

#include "app/ahead/actions.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/kite.hpp"
#include "app/ui/onward.hpp"
#include "app/ui/shortened.hpp"
#include "app/ui/texture.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/records.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>

namespace mastwise::screens::ahead_page {
namespace {

using ui::Align;
using ui::Face;
using ui::Point;
using ui::Rect;
using ui::Ui;

constexpr float kName = 204.0f, kHead = 112.0f, kLeastRow = 68.0f, kMostRow = 96.0f;
constexpr float kDot = 13.0f, kBar = 12.0f, kRoomForCallSign = 336.0f;

class Way {
 public:
  Way(Ui& ui, Rect area, const Shared& shared, const AheadState& ahead)
      : ui_(ui),
        canvas_(ui.canvas()),
        theme_(ui.theme()),
        area_(area),
        shared_(shared),
        found_(ahead.found),
        columns_(columns_in({area.left + kName, area.top, area.right, area.bottom}, ahead.found,
                            ahead.first_shown)),
        miles_(shared.settings.miles) {
    const auto rows = static_cast<float>(std::max<std::size_t>(1, found_.rows.size()));
    row_ = std::clamp((area.height() - kHead) / rows, kLeastRow, kMostRow);
  }

  void draw();

 private:
  void boxes();
  void head(Rect box, const AheadColumn& column);
  void axis();
  void corner();
  void paging();
  void rows();
  void row(Rect rect, std::size_t index);
  void cell(Rect box, float baseline, const AheadColumn& column, std::size_t network);
  void offer(Rect box, float baseline, const AheadColumn& column, const AheadOffer& offer);
  void bar(float middle, const AheadRow& row);
  void missing(float middle, float height);

  const AheadColumn& column(std::size_t shown) const {
    return found_.columns[columns_.first + shown];
  }
  bool is_chosen(const AheadColumn& column) const {
    return column.place && &column == &found_.columns[found_.chosen];
  }

  Ui& ui_;
  ui::Canvas& canvas_;
  const ui::Theme& theme_;
  Rect area_;
  const Shared& shared_;
  const AheadFound& found_;
  Columns columns_;
  bool miles_;
  float row_ = kLeastRow;
};

// A touch on a place's column chooses it.
void Way::boxes() {
  for (std::size_t i = 0; i < columns_.boxes.size(); ++i) {
    const AheadColumn& one = column(i);
    const Rect box = columns_.boxes[i];
    const std::string name =
        one.place ? "place ahead " + std::to_string(*one.place) : std::string();
    if (one.place && ui_.touchable(name, box)) ui_.emit(act::ChoosePlace{*one.place});
    canvas_.fill(box, one.place && ui_.pressed(name) ? theme_.lobe : theme_.panel, 14.0f);
    const bool chosen = is_chosen(one);
    canvas_.outline(box.inset(1.5f), chosen ? theme_.accent : theme_.rule, chosen ? 4.0f : 2.0f,
                    14.0f);
    head(box, one);
  }
}

void Way::head(Rect box, const AheadColumn& column) {
  const std::string title = title_of(shared_, column);
  const float room = box.width() - 16.0f, middle = box.center().x;
  ui::text_within(canvas_, {middle, box.top + 30.0f}, room, title, Face::TextBold, theme_.ink,
                  Align::Center);
  const std::string count =
      column.computed ? words::of_all(column.holding, found_.rows.size()) : "...";
  const std::string at = column.place ? words::along(column.at_km, miles_) : std::string();
  const float width = canvas_.text_width(count, Face::TextBold);
  const float both = width + (at.empty() ? 0.0f : 12.0f + canvas_.text_width(at, Face::Text));
  const bool fits = both <= room && !at.empty();
  const float left = middle - (fits ? both : width) / 2.0f;
  canvas_.text({left, box.top + 62.0f}, count, Face::TextBold, theme_.ink);
  if (fits) {
    canvas_.text({left + width + 12.0f, box.top + 62.0f}, at, Face::Text, theme_.second_ink);
  }
}

// Hatched where heights are missing, dotted where nothing is surveyed yet.
void Way::missing(float middle, float height) {
  for (const RoutePart& part : found_.without_terrain) {
    const float from = columns_.at(part.from_km), to = columns_.at(part.to_km);
    if (to <= from) continue;
    const Rect lane{from, middle - height / 2.0f, to, middle + height / 2.0f};
    canvas_.fill(lane, theme_.panel);
    ui::hatch(canvas_, lane, theme_.ink, 8.0f);
  }
}

void Way::axis() {
  const float y = area_.top + 90.0f;
  const Point from{columns_.axis_left, y}, to{columns_.axis_right, y};
  canvas_.line(from, to, theme_.ink, 5.0f);
  missing(y, 14.0f);
  if (found_.hold_to_km && *found_.hold_to_km > columns_.from_km) {
    const float end = columns_.at(*found_.hold_to_km);
    canvas_.line(from, {end, y}, theme_.accent, 12.0f);
    canvas_.line({end, y - 13.0f}, {end, y + 13.0f}, theme_.accent, 4.0f);
  }
  for (std::size_t i = 0; i < columns_.boxes.size(); ++i) {
    const Rect box = columns_.boxes[i];
    const float x = columns_.at(column(i).at_km);
    // A place that gave way to its neighbors is joined to its column.
    const float edge = std::clamp(x, box.left + 8.0f, box.right - 8.0f);
    if (edge != x) canvas_.line({x, y}, {edge, box.top + 70.0f}, theme_.ink, 2.0f);
    canvas_.disc({x, y}, kDot, column(i).place ? theme_.panel : theme_.ink);
    canvas_.circle({x, y}, kDot, theme_.ink, 4.0f);
  }
}

// Left of the axis: to other places where not all fit, else to the heights that are missing.
void Way::corner() {
  if (columns_.pages(found_.columns.size())) return paging();
  if (found_.without_terrain.empty()) return;
  const Rect rect{area_.left, area_.top + 8.0f, area_.left + kName - 20.0f,
                  area_.top + kHead - 8.0f};
  if (ui::onward(ui_, "ground ahead", rect)) ui_.emit(act::OpenSheet{Sheet::Import});
  const RoutePart& first = found_.without_terrain.front();
  const Rect swatch{rect.left, rect.top + 60.0f, rect.right - ui::kChevron, rect.top + 78.0f};
  ui::hatch(canvas_, swatch, theme_.ink, 8.0f);
  ui::text_within(canvas_, {rect.left, rect.top + 24.0f}, rect.width(), words::say("No heights"),
                  Face::TextBold, theme_.ink);
  ui::text_within(canvas_, {rect.left, rect.top + 52.0f}, rect.width(),
                  words::stretch(first.from_km, found_.without_terrain.back().to_km, miles_),
                  Face::Text, theme_.ink);
}

void Way::paging() {
  const std::size_t all = found_.columns.size(), shown = columns_.boxes.size();
  constexpr float kSide = 72.0f;
  const Rect back{area_.left, area_.top + 20.0f, area_.left + kSide, area_.top + 20.0f + kSide};
  const Rect on{back.right + 16.0f, back.top, back.right + 16.0f + kSide, back.bottom};
  const auto arrow = [&](const char* name, Rect rect, float side, bool enabled, std::size_t to) {
    if (ui_.button(name, rect, "", ui::ButtonLook::Plain, enabled)) {
      ui_.emit(act::ShowPlacesFrom{to});
    }
    const Point at = rect.center();
    const std::array chevron{Point{at.x - 7.0f * side, at.y - 13.0f},
                             Point{at.x + 7.0f * side, at.y},
                             Point{at.x - 7.0f * side, at.y + 13.0f}};
    canvas_.polyline(chevron, enabled ? theme_.accent : theme_.rule, 4.5f);
  };
  arrow("places before", back, -1.0f, columns_.first > 0,
        columns_.first > 0 ? columns_.first - 1 : 0);
  arrow("places beyond", on, 1.0f, columns_.first + shown < all, columns_.first + 1);
}

void Way::bar(float middle, const AheadRow& row) {
  const float left = columns_.axis_left, right = columns_.axis_right;
  if (right <= left) return;
  const float surveyed = columns_.at(found_.surveyed_km);
  if (surveyed > left) canvas_.line({left, middle}, {surveyed, middle}, theme_.rule, 3.0f);
  if (surveyed < right) ui::dotted(canvas_, {surveyed, middle}, {right, middle}, theme_.rule, 3.0f);
  missing(middle, kBar + 2.0f);
  constexpr float kLeast = 4.0f;  // a stretch of one place has zero length
  for (const reception::Stretch& stretch : row.stretches) {
    if (stretch.to_km < columns_.from_km || stretch.from_km > columns_.to_km) continue;
    const float from = std::max(left, columns_.at(stretch.from_km) - kLeast);
    const float to = std::min(right, columns_.at(stretch.to_km) + kLeast);
    canvas_.fill({from, middle - kBar / 2.0f, to, middle + kBar / 2.0f}, theme_.ink);
  }
}

void Way::offer(Rect box, float baseline, const AheadColumn& column, const AheadOffer& offer) {
  constexpr float kInset = 10.0f, kChance = 72.0f, kMarkHeight = 22.0f;
  constexpr float kMost = 92.0f, kMostChosen = 84.0f;
  constexpr float kHeading = 100.0f, kCallSign = 88.0f;  // with the room before them
  const bool chosen = is_chosen(column) && column.declination;
  const bool named = chosen && box.width() >= kRoomForCallSign;
  const float left = box.left + kInset, right = box.right - kInset;
  canvas_.text({left, baseline}, words::chance_number(offer.chance_percent), Face::TextBold,
               theme_.ink);
  float mark_right = std::min(right, left + kChance + (chosen ? kMostChosen : kMost));
  if (chosen) mark_right = std::min(mark_right, right - kHeading - (named ? kCallSign : 0.0f));
  ui::draw_chance_mark(ui_,
                       {left + kChance, baseline - kMarkHeight + 2.0f, mark_right, baseline + 2.0f},
                       reception::chance_word(offer.chance_percent));
  if (!chosen) return;
  const std::string heading = words::whole_degrees(to_magnetic(offer.bearing, *column.declination));
  const float width = canvas_.text_width(heading, Face::TextBold);
  canvas_.text({right, baseline}, heading, Face::TextBold, theme_.ink, Align::Right);
  ui::kite(canvas_, {right - width - 14.0f, baseline - 9.0f}, 11.0f, theme_.ink, false);
  if (!named) return;
  const float room = right - kHeading - mark_right - 8.0f;
  ui::text_within(canvas_, {mark_right + 8.0f, baseline}, room, offer.call_sign, Face::Text,
                  theme_.ink);
}

void Way::cell(Rect box, float baseline, const AheadColumn& column, std::size_t network) {
  if (!column.computed) {
    ui::dotted(canvas_, {box.left + 10.0f, baseline - 8.0f}, {box.right - 10.0f, baseline - 8.0f},
               theme_.second_ink, 2.0f);
    return;
  }
  const auto& one = column.offers[network];
  if (one) return offer(box, baseline, column, *one);
  canvas_.text({box.left + 10.0f, baseline}, words::say("none"), Face::Text, theme_.second_ink);
}

void Way::row(Rect rect, std::size_t index) {
  const AheadRow& row = found_.rows[index];
  const float baseline = rect.center().y - 2.0f;
  ui::text_within(ui_.canvas(), {area_.left, baseline}, kName - 12.0f, row.network, Face::TextBold,
                  theme_.ink);
  for (std::size_t i = 0; i < columns_.boxes.size(); ++i) {
    cell(columns_.boxes[i], baseline, column(i), index);
  }
  bar(baseline + 20.0f, row);
}

void Way::rows() {
  const Rect view{area_.left, area_.top + kHead, area_.right, area_.bottom - 4.0f};
  const float offset =
      ui_.begin_scroll("ahead rows", view, row_ * static_cast<float>(found_.rows.size()));
  for (std::size_t i = 0; i < found_.rows.size(); ++i) {
    const float top = view.top + row_ * static_cast<float>(i) - offset;
    if (!ui_.in_reach(top, top + row_)) continue;
    row({view.left, top, view.right, top + row_}, i);
  }
  ui_.end_scroll();
}

void Way::draw() {
  boxes();
  axis();
  corner();
  rows();
}

}  // namespace

std::string title_of(const Shared& shared, const AheadColumn& column) {
  if (!column.place) return words::say("Here");
  if (!column.name.empty()) return column.name;
  const places::NearPlace* near = near_place_of(shared, column.position);
  if (near != nullptr) return words::place_title(*near, shared.settings.miles);
  return format_position(column.position, Notation::Decimal);
}

bool pages(Rect area, const AheadState& ahead) {
  return columns_in({area.left + kName, area.top, area.right, area.bottom}, ahead.found,
                    ahead.first_shown)
      .pages(ahead.found.columns.size());
}

void draw_way(Ui& ui, Rect area, const Shared& shared, const AheadState& ahead) {
  const auto rows = static_cast<float>(ahead.found.rows.size());
  area.bottom = std::min(area.bottom, area.top + kHead + kMostRow * std::max(1.0f, rows) + 8.0f);
  Way(ui, area, shared, ahead).draw();
}

}  // namespace mastwise::screens::ahead_page
