#include "app/map/clusters.hpp"
#include "app/map/draw_frame.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/rig_symbol.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

// What stands on the ground: stations, towns, states, the rig.
namespace mastwise::screens {

using ui::Face;
using ui::Point;
using ui::Rect;

namespace {

constexpr float kMarkRadius = 19.0f;  // radius

// What a compass shows toward a station, and its name.
std::string compass_heading(const Shared& shared, Bearing<True> bearing) {
  const auto magnetic = on_compass_here(shared, bearing);
  return magnetic ? words::whole_degrees(*magnetic) : std::string();
}

// A state's name in spaced capitals. The names of the USA are ASCII.
std::string spaced(const std::string& name) {
  std::string words;
  for (const char letter : name) {
    if (!words.empty()) words += ' ';
    words += static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
  }
  return words;
}

}  // namespace

struct MapFrame::Mark {
  Point at;
  Cluster cluster;
};

struct MapFrame::Label {
  std::string heading, name;
  Rect plate;
  Point mark, leader;
  bool target = false, likely = false;
};

void MapFrame::draw_other_stations() {
  if (!map_.sheet) return;
  std::vector<Point> dots;
  for (const map::PlanePoint point : map_.sheet->stations) {
    const Point dot = at(point);
    if (seen(dot)) dots.push_back(dot);
  }
  canvas_.squares(dots, 4.0f, theme_.second_ink);
}

void MapFrame::draw_mark(Point at, const StationRow& row) {
  const StationKey key = key_of(row.station);
  ui::draw_chance_ring(canvas_, theme_, ui_.look(), at, row.outlook->chance_percent,
                       is_pinned(shared_.stop, key));
  if (map_.selected == key) canvas_.circle(at, kMarkRadius + 7.0f, theme_.accent, 4.0f);
}

std::vector<MapFrame::Mark> MapFrame::place_marks() {
  std::vector<Mark> marks;
  for (Cluster& cluster : clusters(map_.view, shared_, map_.selected)) {
    const Point center = area_.center();
    const Point place{center.x + static_cast<float>(cluster.at.right),
                      center.y + static_cast<float>(cluster.at.down)};
    if (!seen(place, kMarkRadius)) continue;
    field_.block_mark(place, kMarkRadius);
    marks.push_back({place, std::move(cluster)});
  }
  return marks;
}

std::vector<MapFrame::Label> MapFrame::place_labels(const std::vector<Mark>& marks) {
  constexpr std::size_t kMostNames = 24;
  constexpr float kHeight = 34.0f, kMargin = 16.0f, kLikely_percent = 40.0f;
  std::vector<Label> labels;
  for (const auto& [place, cluster] : marks) {
    if (labels.size() == kMostNames) break;
    const StationRow& row = cluster.first();
    const StationKey key = key_of(row.station);
    Label label{.heading = compass_heading(shared_, row.outlook->bearing),
                .name = " " + row.station.call_sign,
                .plate = {},
                .mark = place,
                .leader = {},
                .target = shared_.stop.target && key_of(*shared_.stop.target) == key,
                .likely = row.outlook->chance_percent.value_or(0.0) >= kLikely_percent};
    if (cluster.rows.size() > 1) label.name += fmt::format(" +{}", cluster.rows.size() - 1);
    const float width = canvas_.text_width(label.heading, Face::TextBold) +
                        canvas_.text_width(label.name, label.target ? Face::TextBold : Face::Text) +
                        kMargin;
    const auto room = field_.beside(place, kMarkRadius, width, kHeight);
    if (!room) continue;
    label.plate = room->plate;
    label.leader = room->leader;
    labels.push_back(std::move(label));
  }
  return labels;
}

void MapFrame::draw_label(const Label& label) {
  const Point way = label.leader - label.mark;
  const Point edge = label.mark + way * (kMarkRadius / touch::length(way));
  canvas_.line(edge, label.leader, theme_.ink, 2.0f);
  canvas_.fill(label.plate, theme_.panel, 6.0f);
  if (label.target) canvas_.outline(label.plate.inset(-1.5f), theme_.accent, 3.0f, 7.0f);
  const Point from{label.plate.left + 8.0f, label.plate.bottom - 8.0f};
  canvas_.text(from, label.heading, Face::TextBold, theme_.ink);
  canvas_.text({from.x + canvas_.text_width(label.heading, Face::TextBold), from.y}, label.name,
               label.target ? Face::TextBold : Face::Text,
               label.target || label.likely ? theme_.ink : theme_.second_ink);
}

// The target beyond the edge of the map: a wedge on the way there.
void MapFrame::draw_target_beyond() {
  const auto& card = shared_.findings.card;
  if (!card || !shared_.stop.target) return;
  const Point place = at(plane_point(card->distance_m, card->bearing_true));
  if (seen(place)) return;
  constexpr float kInset = 22.0f, kLength = 22.0f, kHalf = 11.0f, kHeight = 34.0f;
  const Rect room = area_.inset(kInset);
  const Point center = area_.center(), way = place - center;
  const float part = std::min(room.width() / 2.0f / std::max(1.0f, std::fabs(way.x)),
                              room.height() / 2.0f / std::max(1.0f, std::fabs(way.y)));
  const Point tip = center + way * part;
  const double turned = std::atan2(way.x, -way.y) * 180.0 / std::numbers::pi;
  const Point foot = ui::around(tip, kLength, turned + 180.0);
  field_.block_mark(tip, kLength);
  const std::array wedge{tip, ui::around(foot, kHalf, turned + 90.0),
                         ui::around(foot, kHalf, turned - 90.0)};
  canvas_.polygon(wedge, theme_.ink);
  const std::string words = fmt::format(
      "{} {}, {}", compass_heading(shared_, card->bearing_true), shared_.stop.target->call_sign,
      words::whole_distance(card->distance_m, shared_.settings.miles));
  const float width = canvas_.text_width(words, Face::TextBold) + 16.0f;
  const auto found = field_.beside(tip, kLength, width, kHeight);
  if (!found) return;
  canvas_.fill(found->plate, theme_.panel, 6.0f);
  canvas_.text({found->plate.left + 8.0f, found->plate.bottom - 8.0f}, words, Face::TextBold,
               theme_.ink);
}

// Squares by size, the largest towns first; a name beside each that has room.
void MapFrame::draw_towns() {
  if (!map_.sheet) return;
  constexpr std::size_t kMost = 24;
  constexpr float kHeight = 32.0f, kGap = 5.0f, kApart = 90.0f;
  constexpr std::uint32_t kCity = 100'000, kTown = 10'000;
  std::vector<Point> named;
  for (const MapTown& town : map_.sheet->towns) {
    if (named.size() == kMost) break;
    const Point place = at(town.at);
    if (!seen(place)) continue;
    const float half = town.people >= kCity ? 7.0f : town.people >= kTown ? 5.5f : 4.0f;
    const Face face = town.people >= kCity ? Face::TextBold : Face::Text;
    const auto near = [&](Point other) { return touch::distance(other, place) < kApart; };
    if (std::any_of(named.begin(), named.end(), near)) continue;
    const Rect square{place.x - half, place.y - half, place.x + half, place.y + half};
    if (!field_.is_free(square)) continue;
    const float width = canvas_.text_width(town.name, face);
    const float top = place.y - kHeight / 2.0f, right = square.right + kGap,
                left = square.left - kGap - width, middle = place.x - width / 2.0f;
    for (const Point corner :
         {Point{right, top}, Point{left, top}, Point{middle, square.top - kGap - kHeight},
          Point{middle, square.bottom + kGap}}) {
      const Rect plate{corner.x, corner.y, corner.x + width, corner.y + kHeight};
      if (!field_.is_free(plate)) continue;
      field_.block(plate);
      field_.block(square);
      canvas_.fill(plate.inset(-2.0f), theme_.paper, 5.0f);
      canvas_.fill(square, theme_.panel);
      if (town.people >= kCity) canvas_.fill(square.inset(3.5f), theme_.ink);
      canvas_.outline(square, theme_.ink, 2.2f);
      canvas_.text({plate.left, plate.bottom - 8.0f}, town.name, face, theme_.ink);
      named.push_back(place);
      break;
    }
  }
}

// A state's name where there is room, as near to the middle of the map as may be.
void MapFrame::draw_regions() {
  if (!map_.sheet) return;
  constexpr float kHeight = 30.0f;
  for (const MapRegion& region : map_.sheet->regions) {
    const std::string words = spaced(region.name);
    const float width = canvas_.text_width(words, Face::Text);
    std::vector<Point> places;
    for (const map::PlanePoint& within : region.within) places.push_back(at(within));
    std::sort(places.begin(), places.end(), [&](Point a, Point b) {
      return touch::distance(a, area_.center()) < touch::distance(b, area_.center());
    });
    for (const Point place : places) {
      const Rect plate{place.x - width / 2.0f, place.y - kHeight / 2.0f, place.x + width / 2.0f,
                       place.y + kHeight / 2.0f};
      if (!field_.is_free(plate)) continue;
      field_.block(plate);
      canvas_.fill(plate.inset(-2.0f), theme_.paper, 5.0f);
      canvas_.text({place.x, plate.bottom - 7.0f}, words, Face::Text, theme_.second_ink,
                   ui::Align::Center);
      break;
    }
  }
}

void MapFrame::draw_spots() {
  if (!map_.area_sheet || !map_.area_sheet->trouble.empty()) return;
  constexpr float kRadius = 16.0f, kHeight = 34.0f;
  for (const AreaSpot& spot : map_.area_sheet->spots) {
    const Point place = at(plane_point(spot.distance_m, spot.bearing));
    if (!seen(place)) continue;
    canvas_.circle(place, 12.0f, theme_.panel, 8.0f);
    canvas_.circle(place, 12.0f, theme_.ink, 4.0f);
    field_.block_mark(place, kRadius);
    const std::string words = words::chance_number(spot.chance_percent);
    const float width = canvas_.text_width(words, Face::TextBold) + 16.0f;
    const auto found = field_.beside(place, kRadius, width, kHeight);
    if (!found) continue;
    canvas_.fill(found->plate, theme_.panel, 6.0f);
    canvas_.text({found->plate.left + 8.0f, found->plate.bottom - 8.0f}, words, Face::TextBold,
                 theme_.ink);
  }
}

void MapFrame::draw_rig() {
  constexpr float kScale = 0.42f, kRig = 34.0f;
  const auto& nose = shared_.findings.nose;
  ui::draw_rig(canvas_, theme_, stop(),
               nose ? std::optional(nose->nose() - map_.view.up) : std::nullopt, kScale);
  field_.block_mark(stop(), kRig);
}

void MapFrame::draw_marks() {
  draw_rig();
  if (map_.spot) {
    const Point place = at(plane_point(map_.spot->distance_m, map_.spot->bearing));
    canvas_.circle(place, 14.0f, theme_.panel, 9.0f);
    canvas_.circle(place, 14.0f, theme_.accent, 4.0f);
    canvas_.disc(place, 4.0f, theme_.accent);
    field_.block_mark(place, 18.0f);
  }
  if (map_.area) {
    draw_spots();
    place_ring_names();
    draw_distances({});
    return;
  }
  draw_other_stations();
  const std::vector<Mark> marks = place_marks();
  const std::vector<Label> labels = place_labels(marks);
  place_ring_names();
  std::vector<Rect> plates;
  for (const Label& label : labels) plates.push_back(label.plate);
  draw_distances(plates);
  draw_target_beyond();
  draw_towns();
  draw_regions();
  // The likeliest last, on top.
  for (auto mark = marks.rbegin(); mark != marks.rend(); ++mark) {
    draw_mark(mark->at, mark->cluster.first());
  }
  for (const Label& label : labels) draw_label(label);
}

}  // namespace mastwise::screens
