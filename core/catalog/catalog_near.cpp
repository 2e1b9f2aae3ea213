#include "core/catalog/catalog_connection.hpp"
#include "core/catalog/catalog_search.hpp"
#include "core/geo/circle_boxes.hpp"
#include "core/geo/geodesic.hpp"
#include "core/stations/note_names.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <tuple>
#include <utility>

namespace mastwise {
namespace {

// A candidate before its record is read.
struct Spot {
  std::int64_t row = 0;
  Position position;
  int rank = 0;  // lower comes first
  // Approximate central angle, only to choose which stations to measure exactly.
  double angle = 0.0;
  PathBetween path = {};
};

Result<Spot> spot_of(const store::Statement& statement) {
  const auto position = Position::at_deg(statement.real(1), statement.real(2));
  if (!position) return position.error();
  return Spot{.row = statement.integer(0), .position = *position};
}

bool nearer(const Spot& a, const Spot& b) {
  return std::tie(a.rank, a.path.distance_m, a.row) < std::tie(b.rank, b.path.distance_m, b.row);
}

// Central angle on a sphere of the geographic coordinates, by the haversine form.
double central_angle(const Position& a, const Position& b) {
  constexpr double kHalfDegree = std::numbers::pi / 360.0;
  const double north = std::sin((a.latitude_deg() - b.latitude_deg()) * kHalfDegree);
  const double east = std::sin((a.longitude_deg() - b.longitude_deg()) * kHalfDegree);
  const double cosines = std::cos(a.latitude_deg() * 2.0 * kHalfDegree) *
                         std::cos(b.latitude_deg() * 2.0 * kHalfDegree);
  return 2.0 * std::asin(std::min(1.0, std::sqrt(north * north + cosines * east * east)));
}

// Keeps those that can be among the nearest `limit`. The ellipsoid's radii of curvature differ by 1
// % (6335 to 6400 km), so a station 2 % beyond the last one on the sphere is out.
void keep_candidates(std::vector<Spot>& spots, std::size_t limit) {
  if (spots.size() <= limit) return;
  const auto roughly_nearer = [](const Spot& a, const Spot& b) {
    return std::tie(a.rank, a.angle) < std::tie(b.rank, b.angle);
  };
  const auto last = spots.begin() + static_cast<std::ptrdiff_t>(limit - 1);
  std::nth_element(spots.begin(), last, spots.end(), roughly_nearer);
  const int rank = last->rank;
  const double angle = last->angle * 1.02;
  spots.erase(std::remove_if(spots.begin(), spots.end(),
                             [&](const Spot& spot) {
                               return spot.rank > rank || (spot.rank == rank && spot.angle > angle);
                             }),
              spots.end());
}

void sort_and_cut(std::vector<Spot>& spots, std::size_t limit) {
  std::sort(spots.begin(), spots.end(), nearer);
  if (spots.size() > limit)
    spots.erase(spots.begin() + static_cast<std::ptrdiff_t>(limit), spots.end());
}

// The record of the newer source, with what only the other knows, and that source as a note.
Station merged(Station kept, Station other) {
  if (other.provenance.source.date > kept.provenance.source.date) std::swap(kept, other);
  for (const auto text : {&Station::facility_id, &Station::name, &Station::network,
                          &Station::multiplex, &Station::city, &Station::state}) {
    if ((kept.*text).empty()) kept.*text = other.*text;
  }
  for (const auto number :
       {&Station::site_amsl_m, &Station::antenna_amsl_m, &Station::haat_m, &Station::erp_kw}) {
    if (!(kept.*number)) kept.*number = other.*number;
  }
  if (!kept.pattern) kept.pattern = other.pattern;
  if (!kept.directional) kept.directional = other.directional;
  if (!kept.standard) kept.standard = other.standard;
  if (kept.polarization == Polarization::unknown) kept.polarization = other.polarization;
  if (kept.programs.empty()) kept.programs = other.programs;
  const Source& source = other.provenance.source;
  kept.notes.push_back({std::string(kAlsoInSource),
                        source.date.empty() ? source.name : source.name + ", " + source.date});
  return kept;
}

// Adds a station, to the record of another source if there is one.
void add_once(NearStation station, std::vector<NearStation>& stations) {
  for (NearStation& known : stations) {
    if (!same_transmitter(known.station, station.station)) continue;
    const bool newer =
        known.station.provenance.source.date < station.station.provenance.source.date;
    if (newer)
      std::tie(known.distance_m, known.bearing) = std::tie(station.distance_m, station.bearing);
    known.station = merged(std::move(known.station), std::move(station.station));
    return;
  }
  stations.push_back(std::move(station));
}

template <class Connection>
Result<std::vector<NearStation>> read_spots(const std::vector<Spot>& spots,
                                            Connection& connection) {
  std::vector<NearStation> stations;
  for (const Spot& spot : spots) {
    auto station = connection.read(spot.row);
    if (!station) return station.error();
    add_once({std::move(station).value(), spot.path.distance_m, spot.path.bearing}, stations);
  }
  return stations;
}

}  // namespace

bool same_transmitter(const Station& a, const Station& b) {
  constexpr double kApart_m = 500.0;
  return a.provenance.source.name != b.provenance.source.name && a.raster == b.raster &&
         a.rf_channel == b.rf_channel &&
         path_between(a.position, b.position).distance_m <= kApart_m;
}

Result<std::vector<NearStation>> Catalog::nearest(const Position& from, double max_distance_m,
                                                  std::size_t limit) {
  if (!(max_distance_m >= 0.0) || limit == 0) return std::vector<NearStation>();
  constexpr double kFarthestM = 20.1e6;  // more than half way around the earth
  constexpr double kFirstRadiusM = 100e3;
  const double farthest_m = std::min(max_distance_m, kFarthestM);

  const auto snapshot = store::Transaction::begin_reading(connection_->database);
  if (!snapshot) return snapshot.error();
  std::vector<Spot> spots;
  // Circles grow until they contain enough: a limit of ten must not measure a continent.
  for (double radius_m = std::min(kFirstRadiusM, farthest_m);; radius_m *= 3.0) {
    radius_m = std::min(radius_m, farthest_m);
    spots.clear();
    auto& in_box = connection_->in_box;
    for (const auto& box : boxes_around(from, radius_m)) {
      in_box.bind(box.south_deg, box.north_deg, box.west_deg, box.east_deg);
      while (true) {
        const auto more = in_box.step();
        if (!more) return more.error();
        if (!*more) break;
        auto spot = spot_of(in_box);
        if (!spot) return spot.error();
        spot->path = path_between(from, spot->position);
        if (spot->path.distance_m <= radius_m) spots.push_back(std::move(spot).value());
      }
    }
    if (spots.size() >= limit || radius_m >= farthest_m) break;
  }
  sort_and_cut(spots, limit);
  return read_spots(spots, *connection_);
}

Result<std::vector<NearStation>> Catalog::search(std::string_view text, const Position& near,
                                                 std::size_t limit) {
  const std::string query = catalog_search::match_query(text);
  if (query.empty() || limit == 0) return std::vector<NearStation>();

  const auto snapshot = store::Transaction::begin_reading(connection_->database);
  if (!snapshot) return snapshot.error();
  std::vector<Spot> spots;
  auto& matching = connection_->matching;
  matching.bind(query);
  while (true) {
    const auto more = matching.step();
    if (!more) return more.error();
    if (!*more) break;
    auto spot = spot_of(matching);
    if (!spot) return spot.error();
    spot->rank = words::same_word(matching.text_view(3), words::trimmed(text)) ? 0 : 1;
    spot->angle = central_angle(near, spot->position);
    spots.push_back(std::move(spot).value());
  }
  keep_candidates(spots, limit);
  for (Spot& spot : spots) spot.path = path_between(near, spot.position);
  sort_and_cut(spots, limit);
  return read_spots(spots, *connection_);
}

Result<std::vector<Station>> Catalog::search(std::string_view text, std::size_t limit) {
  struct Named {
    int rank;
    std::string call_sign;
    std::int64_t row;
    bool operator<(const Named& other) const {
      return std::tie(rank, call_sign, row) < std::tie(other.rank, other.call_sign, other.row);
    }
  };
  std::vector<Station> stations;
  const std::string query = catalog_search::match_query(text);
  if (query.empty()) return stations;

  const auto snapshot = store::Transaction::begin_reading(connection_->database);
  if (!snapshot) return snapshot.error();
  std::vector<Named> found;
  auto& matching = connection_->matching;
  matching.bind(query);
  while (true) {
    const auto more = matching.step();
    if (!more) return more.error();
    if (!*more) break;
    const bool exact = words::same_word(matching.text_view(3), words::trimmed(text));
    found.push_back({exact ? 0 : 1, matching.text(3), matching.integer(0)});
  }
  const std::size_t taken = std::min(limit, found.size());
  std::partial_sort(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(taken), found.end());
  for (std::size_t i = 0; i < taken; ++i) {
    auto station = connection_->read(found[i].row);
    if (!station) return station.error();
    stations.push_back(std::move(station).value());
  }
  return stations;
}

}  // namespace mastwise
