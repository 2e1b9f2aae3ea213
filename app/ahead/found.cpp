#include "app/ahead/found.hpp"

#include "app/ahead/update.hpp"
#include "app/ahead/way.hpp"
#include "core/geo/geodesic.hpp"

#include <algorithm>

namespace mastwise {
namespace {

constexpr double kKilometer_m = 1000.0;

class Finder {
 public:
  Finder(const AheadState& state, const Shared& shared, const World& world)
      : state_(state), shared_(shared), world_(world) {}

  AheadFound found() {
    found_.floor_percent = kPlanFloors[state_.floor];
    found_.wants = compares_pinned(state_, shared_) ? AheadWants::Pinned : AheadWants::Networks;
    if (!shared_.findings.position) return found_;
    add_columns();
    add_table();
    add_route();
    choose();
    return std::move(found_);
  }

 private:
  void add_columns();
  void add_table();
  void add_route();
  void add_hold();
  void choose();

  bool of_this_stop() const {
    return state_.table && state_.table_from &&
           same_stop(*state_.table_from, *shared_.findings.position);
  }

  const AheadState& state_;
  const Shared& shared_;
  const World& world_;
  AheadFound found_;
};

void Finder::add_columns() {
  const Position here = *shared_.findings.position;
  found_.columns.push_back({.position = here});
  if (shared_.findings.field) found_.columns[0].declination = shared_.findings.field->declination;
  const WayAhead way = way_ahead(state_, here);
  double at_km = 0.0;
  std::size_t point = 0;
  for (std::size_t i = 0; i < state_.places.size(); ++i) {
    for (; point < way.places[i]; ++point) {
      at_km += path_between(way.points[point], way.points[point + 1]).distance_m / kKilometer_m;
    }
    const Position to = state_.places[i];
    found_.columns.push_back(
        {.position = to,
         .name = name_from_file(state_, to),
         .place = i,
         .at_km = at_km,
         .declination = world_.magnetic.at(to, shared_.findings.date).declination});
  }
  found_.length_km = at_km;
}

void Finder::add_table() {
  if (!of_this_stop()) return;
  found_.compared = true;
  for (const std::string& network : state_.table->networks) {
    found_.rows.push_back({.network = network});
  }
  for (AheadColumn& column : found_.columns) {
    for (const AheadPlace& place : state_.table->places) {
      if (place.here != !column.place) continue;
      if (column.place && place.position != column.position) continue;
      column.computed = true;
      column.offers = place.offers;
    }
    for (const auto& offer : column.offers) {
      column.holding += offer && offer->chance_percent >= found_.floor_percent ? 1 : 0;
    }
  }
  found_.holding_here = found_.columns.front().holding;
}

// The answer of the worker, if it is for this way.
void Finder::add_route() {
  if (!state_.route || state_.places.empty()) return;
  const RouteSheet& sheet = *state_.route;
  const auto& points = sheet.question.points;
  const auto way = way_ahead(state_, *shared_.findings.position).points;
  const bool same = points.size() == way.size() && same_stop(points.front(), way.front()) &&
                    std::equal(points.begin() + 1, points.end(), way.begin() + 1);
  if (!same) return;
  found_.trouble = sheet.trouble;
  found_.without_terrain = sheet.without_terrain;
  for (AheadRow& row : found_.rows) {
    const auto surveyed =
        std::find_if(sheet.rows.begin(), sheet.rows.end(),
                     [&](const RouteRow& one) { return one.network == row.network; });
    if (surveyed == sheet.rows.end() || surveyed->chances.empty()) continue;
    row.stretches = reception::stretches_above(surveyed->chances, found_.floor_percent);
    found_.surveyed_km = surveyed->chances.back().at_km;
  }
  add_hold();
}

void Finder::add_hold() {
  if (found_.holding_here == 0 || found_.surveyed_km == 0.0) return;
  double hold_to_km = found_.surveyed_km;
  for (std::size_t i = 0; i < found_.rows.size(); ++i) {
    const auto& offer = found_.columns.front().offers[i];
    if (!offer || offer->chance_percent < found_.floor_percent) continue;
    const auto& stretches = found_.rows[i].stretches;
    const bool from_here = !stretches.empty() && stretches.front().from_km == 0.0;
    hold_to_km = std::min(hold_to_km, from_here ? stretches.front().to_km : 0.0);
  }
  found_.hold_to_km = hold_to_km;
}

// The place that was touched, else the first with the most networks.
void Finder::choose() {
  for (std::size_t i = 1; i < found_.columns.size(); ++i) {
    if (state_.chosen == found_.columns[i].position) {
      found_.chosen = i;
      return;
    }
    const bool more = found_.columns[i].holding > found_.columns[found_.chosen].holding;
    if (found_.chosen == 0 || more) found_.chosen = i;
  }
}

}  // namespace

AheadFound ahead_found(const AheadState& state, const Shared& shared, const World& world) {
  return Finder(state, shared, world).found();
}

}  // namespace mastwise
