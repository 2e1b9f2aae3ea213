#include "core/reception/area_scan.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/link_budget.hpp"
#include "core/reception/path_fields.hpp"
#include "core/reception/scan_transmitter.hpp"
#include "core/reception/transmitter_height.hpp"
#include "core/reception/unknown_pattern.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include <fmt/format.h>

namespace mastwise::reception {
namespace {

constexpr double kOwnProfile_m = 3'000.0;
constexpr double kRayMiss_m = 5.0;
constexpr double kRayMissOfCell = 0.0625;
constexpr std::size_t kLeastSlice = 256;  // cells
constexpr double kRingReach_m = 30.0;
constexpr double kRingReachOfCell = 0.75;
constexpr double kTurn_rad = 2.0 * std::numbers::pi;

double bearing_rad(const CellPlace& place) {
  const double angle = std::atan2(place.east_m, place.north_m);
  return angle < 0.0 ? angle + kTurn_rad : angle;
}

}  // namespace

struct AreaScan::State {
  using Wanted = AreaScratch::Wanted;

  State(const AreaGrid& area, const Receiver& at, ScanTransmitter from, const Land& land);

  bool in_pass(std::size_t row, std::size_t column) const;
  void sort_by_rays();
  void cut_slices();

  void measure_ray(std::size_t ray, Receiver& at, AreaScratch& scratch);
  bool take_mean(std::size_t cell);
  bool in_ring(std::size_t cell) const;
  void compute_alone(const Wanted& wanted, Receiver& at, Scratch& scratch);
  void compute_along(Receiver& at, AreaScratch& scratch);
  void find_sea(Bearing<True> bearing, double distance_m, GroundCover& cover) const;
  // `rough_m`: the other guess of ground that is partly unknown; empty if it is known.
  void compute(const Wanted& wanted, const itm::TerrainProfile& terrain,
               std::span<const double> rough_m, double known_share, Receiver& at, Scratch& scratch);

  AreaGrid grid;
  Receiver receiver;
  ScanTransmitter transmitter;
  const terrain::TileSource& tiles;
  const landcover::CoverSource* classes;
  std::optional<map::Shore> shore = {};  // around the transmitter
  CellPlaces places;
  Measurement start;  // before the path
  double required_field_dbuvm = 0.0;
  double heading_deviation_db = 0.0;
  double logbook_deviation_db = 0.0;
  double noise_deviation_db = 0.0;
  double chance_cap_percent = 100.0;
  std::size_t rays = 1;  // around the transmitter
  std::size_t first_step = 1;
  std::vector<AreaCell> cells;

  std::size_t step = 0;  // of the pass: it covers each step-th row and column; 0 before the first
  std::size_t covered = 0;
  std::vector<std::uint32_t> order;       // the pass's cells by rays
  std::vector<std::size_t> ray_starts;    // in order, of each ray that has cells, and its end
  std::vector<std::size_t> slice_starts;  // in ray_starts, and its last
};

AreaScan::State::State(const AreaGrid& area, const Receiver& at, ScanTransmitter from,
                       const Land& land)
    : grid(area),
      receiver(at),
      transmitter(std::move(from)),
      tiles(land.tiles),
      classes(land.cover),
      places(area, transmitter.station.position),
      start(start_measurement(transmitter.station)),
      cells(area.size()) {
  // The budget adds the same decibels to any field.
  const LinkBudget budget(receiver);
  Measurement unit = start;
  unit.outlook.field_dbuvm = 0.0;
  budget.apply(transmitter.station, unit, true);
  required_field_dbuvm = -*unit.outlook.margin_db;
  heading_deviation_db = unit.outlook.deviations.heading_db;
  logbook_deviation_db = unit.outlook.deviations.logbook_db;
  noise_deviation_db = unit.outlook.deviations.noise_db;
  if (unit.outlook.decoding != gear::Decoding::possible) {
    chance_cap_percent = kMayNotDecode_percent;
  }

  while (2.0 * static_cast<double>(first_step) * grid.cell_m() <= kFarthestNeighbor_m) {
    first_step *= 2;
  }
  double farthest_m = 0.0;
  const std::size_t last = grid.size() - 1;
  for (const std::size_t corner : {std::size_t{0}, grid.side() - 1, last + 1 - grid.side(), last}) {
    const CellPlace place = places.at(corner);
    farthest_m = std::max(farthest_m, std::hypot(place.east_m, place.north_m));
  }
  if (land.coasts != nullptr) {
    shore = map::Shore::around(*land.coasts, transmitter.station.position, farthest_m);
  }
  const double miss_m = std::max(kRayMiss_m, kRayMissOfCell * grid.cell_m());
  rays = static_cast<std::size_t>(std::ceil(kTurn_rad * farthest_m / (2.0 * miss_m)));
}

bool AreaScan::State::in_pass(std::size_t row, std::size_t column) const {
  if (row % step != 0 || column % step != 0) return false;
  return step == first_step || row % (2 * step) != 0 || column % (2 * step) != 0;
}

// Sorts the cells of the pass by counting those of each ray.
void AreaScan::State::sort_by_rays() {
  std::vector<std::uint32_t> ray_of;
  std::vector<std::uint32_t> unsorted;
  std::vector<std::size_t> starts(rays + 1, 0);
  for (std::size_t row = 0; row < grid.side(); row += step) {
    for (std::size_t column = 0; column < grid.side(); column += step) {
      if (!in_pass(row, column)) continue;
      const std::size_t cell = row * grid.side() + column;
      const double turn = bearing_rad(places.at(cell)) / kTurn_rad;
      const auto ray =
          std::min(static_cast<std::size_t>(turn * static_cast<double>(rays)), rays - 1);
      unsorted.push_back(static_cast<std::uint32_t>(cell));
      ray_of.push_back(static_cast<std::uint32_t>(ray));
      ++starts[ray + 1];
    }
  }
  for (std::size_t ray = 0; ray < rays; ++ray) starts[ray + 1] += starts[ray];
  order.resize(unsorted.size());
  std::vector<std::size_t> next = starts;
  for (std::size_t i = 0; i < unsorted.size(); ++i) order[next[ray_of[i]]++] = unsorted[i];
  ray_starts = std::move(starts);
  ray_starts.erase(std::unique(ray_starts.begin(), ray_starts.end()), ray_starts.end());
}

void AreaScan::State::cut_slices() {
  slice_starts.assign(1, 0);
  for (std::size_t ray = 1; ray < ray_starts.size(); ++ray) {
    const bool last = ray + 1 == ray_starts.size();
    if (last || ray_starts[ray] - ray_starts[slice_starts.back()] >= kLeastSlice) {
      slice_starts.push_back(ray);
    }
  }
}

void AreaScan::State::measure_ray(std::size_t ray, Receiver& at, AreaScratch& scratch) {
  scratch.wanted.clear();
  for (std::size_t i = ray_starts[ray]; i < ray_starts[ray + 1]; ++i) {
    const std::size_t cell = order[i];
    const CellPlace place = places.at(cell);
    cells[cell].state = CellState::unknown;
    const auto position = Position::at_deg(place.latitude_deg, place.longitude_deg);
    const auto ground_m = terrain::ground_height_m(tiles, *position);
    if (!ground_m) continue;
    cells[cell].ground_m = static_cast<float>(*ground_m);
    if (take_mean(cell)) continue;
    const double distance_m = std::hypot(place.east_m, place.north_m);
    const Wanted wanted{cell, place, distance_m, RayPoint::nearest(distance_m)};
    if (distance_m >= kOwnProfile_m) {
      scratch.wanted.push_back(wanted);
    } else if (missing_for_field(transmitter.station, distance_m) == Missing::nothing) {
      compute_alone(wanted, at, scratch.path);
    }
  }
  compute_along(at, scratch);
}

// Cells between rows and columns of the previous pass: two neighbors in its row or column, or four
// if it is between both.
bool AreaScan::State::take_mean(std::size_t cell) {
  if (step == first_step || in_ring(cell)) return false;
  const std::size_t row = cell / grid.side();
  const std::size_t column = cell % grid.side();
  const std::size_t rows_apart = row % (2 * step) != 0 ? step : 0;
  const std::size_t columns_apart = column % (2 * step) != 0 ? step : 0;
  if (row + rows_apart >= grid.side() || column + columns_apart >= grid.side()) return false;
  const std::size_t north = (row - rows_apart) * grid.side();
  const std::size_t south = (row + rows_apart) * grid.side();
  const std::size_t west = column - columns_apart;
  const std::size_t east = column + columns_apart;
  AreaCell mean;
  float least_db = std::numeric_limits<float>::infinity();
  float most_db = -least_db;
  for (const std::size_t neighbor : {north + west, north + east, south + west, south + east}) {
    const AreaCell& beside = cells[neighbor];
    if (!beside.known()) return false;
    mean.margin_db += beside.margin_db / 4.0f;
    mean.deviation_db += beside.deviation_db / 4.0f;
    mean.cap_percent = std::min(mean.cap_percent, beside.cap_percent);
    mean.ground_m += beside.ground_m / 4.0f;
    least_db = std::min(least_db, beside.margin_db);
    most_db = std::max(most_db, beside.margin_db);
  }
  AreaCell& here = cells[cell];
  if (most_db - least_db > kSmooth_db || std::fabs(here.ground_m - mean.ground_m) > kLevel_m) {
    return false;
  }
  here.margin_db = mean.margin_db;
  here.deviation_db = mean.deviation_db;
  here.cap_percent = mean.cap_percent;
  here.state = CellState::between;
  return true;
}

// Whether what stands around the stop stands around the cell too.
bool AreaScan::State::in_ring(std::size_t cell) const {
  return !receiver.ring.clear() &&
         grid.distance_m(cell) <= std::max(kRingReach_m, kRingReachOfCell * grid.cell_m());
}

void AreaScan::State::compute_alone(const Wanted& wanted, Receiver& at, Scratch& scratch) {
  const auto position = Position::at_deg(wanted.place.latitude_deg, wanted.place.longitude_deg);
  terrain::PathProfile& profile = scratch.profile;
  terrain::cut_profile(tiles, transmitter.station.position, *position, profile,
                       terrain::ProfileDetail::k90m);
  lay_clutter(classes, profile, scratch.cover);
  find_sea(profile.bearing_at_start, profile.distance_m, scratch.cover);
  lay_sea(scratch.cover.sea, false, profile);
  if (profile.complete()) {
    compute(wanted, {profile.spacing_m, profile.heights_m}, {}, 1.0, at, scratch);
  } else if (guess_ground(profile, transmitter.foot_m, scratch.guess)) {
    compute(wanted, {profile.spacing_m, scratch.guess.smooth_m}, scratch.guess.rough_m,
            profile.coverage(), at, scratch);
  }
}

void AreaScan::State::compute_along(Receiver& at, AreaScratch& scratch) {
  if (scratch.wanted.empty()) return;
  std::array<std::size_t, RayPoint::kSets> last_points{};
  double bearings_rad = 0.0;
  for (const Wanted& wanted : scratch.wanted) {
    bearings_rad += bearing_rad(wanted.place);
    std::size_t& last = last_points[wanted.at.set];
    last = std::max(last, wanted.at.point);
  }
  const auto mean = Bearing<True>::degrees(
      bearings_rad / static_cast<double>(scratch.wanted.size()) * 360.0 / kTurn_rad);
  scratch.behind_unknown.clear();
  for (std::size_t set = 0; set < RayPoint::kSets; ++set) {
    if (last_points[set] == 0) continue;
    scratch.ray.cut(tiles, transmitter.station.position, transmitter.foot_m, mean, set,
                    last_points[set]);
    lay_clutter(classes, scratch.ray.profile(), scratch.path.cover);
    for (const Wanted& wanted : scratch.wanted) {
      if (wanted.at.set != set) continue;
      const auto ground = scratch.ray.to(wanted.at.point, wanted.distance_m,
                                         static_cast<double>(cells[wanted.cell].ground_m));
      if (!ground) {
        scratch.behind_unknown.push_back(wanted);
        continue;
      }
      find_sea(mean, wanted.distance_m, scratch.path.cover);
      compute(wanted, *ground, {}, 1.0, at, scratch.path);
    }
  }
  for (const Wanted& wanted : scratch.behind_unknown) compute_alone(wanted, at, scratch.path);
}

void AreaScan::State::find_sea(Bearing<True> bearing, double distance_m, GroundCover& cover) const {
  if (shore) shore->sea_toward(bearing, distance_m, cover.sea);
}

void AreaScan::State::compute(const Wanted& wanted, const itm::TerrainProfile& terrain,
                              std::span<const double> rough_m, double known_share, Receiver& at,
                              Scratch& scratch) {
  at.position = *Position::at_deg(wanted.place.latitude_deg, wanted.place.longitude_deg);
  Measurement measurement = start;
  measurement.outlook.distance_m = wanted.distance_m;
  const bool ringed = in_ring(wanted.cell);
  at.ring = ringed ? receiver.ring : ObstacleRing();
  if (ringed) {
    measurement.outlook.bearing = path_between(at.position, transmitter.station.position).bearing;
  }
  std::optional<AlongShore> along;
  if (shore) {
    along.emplace(
        AlongShore{.shore = *shore,
                   .bearing = Bearing<True>::degrees(bearing_rad(wanted.place) * 360.0 / kTurn_rad),
                   .center_is_last_point = false});
  }
  const PathGround ground = with_cover(terrain, along, scratch.cover);
  if (rough_m.empty()) {
    compute_on_profile(transmitter.station, at, ground, transmitter.height_m, measurement,
                       scratch.p1812);
  } else {
    compute_on_guesses(transmitter.station, at, ground, rough_m, transmitter.height_m, measurement,
                       scratch.p1812);
  }
  if (!measurement.outlook.field_dbuvm) return;
  measurement.outlook.deviations.heading_db = heading_deviation_db;
  measurement.outlook.deviations.logbook_db = logbook_deviation_db;
  measurement.outlook.deviations.noise_db = noise_deviation_db;
  AreaCell& cell = cells[wanted.cell];
  cell.margin_db = static_cast<float>(*measurement.outlook.field_dbuvm - required_field_dbuvm);
  const Spread spread = own_spread(measurement.outlook.deviations);
  cell.deviation_db = static_cast<float>(spread.deviation_db);
  const double rough_percent = reception::chance_percent(
      static_cast<double>(cell.margin_db) - measurement.detail.rough_ground_db, spread);
  cell.cap_percent = static_cast<float>(reception::chance_cap_percent(known_share, rough_percent));
  cell.state = CellState::computed;
}

AreaScan::AreaScan(std::unique_ptr<State> state) : state_(std::move(state)) {}
AreaScan::AreaScan(AreaScan&&) noexcept = default;
AreaScan& AreaScan::operator=(AreaScan&&) noexcept = default;
AreaScan::~AreaScan() = default;

Result<AreaScan> AreaScan::of(const AreaGrid& grid, const Receiver& receiver,
                              const Station& station, const Land& land) {
  const BroadcastStandard standard = standard_of(station);
  if (gear::decoding(receiver.gear.decoders, station, standard) == gear::Decoding::impossible) {
    return Error{.what = fmt::format("the TV cannot decode {}", to_text(standard)),
                 .where = station.call_sign,
                 .remedy = "set what the TV decodes, or choose another station"};
  }
  auto transmitter = scan_transmitter(station, land.tiles);
  if (!transmitter) return transmitter.error();
  return AreaScan(std::make_unique<State>(grid, receiver, *std::move(transmitter), land));
}

bool AreaScan::next_pass() {
  if (state_->step == 1) return false;
  state_->step = state_->step == 0 ? state_->first_step : state_->step / 2;
  state_->sort_by_rays();
  state_->cut_slices();
  state_->covered += state_->order.size();
  return true;
}

std::size_t AreaScan::slices() const {
  return state_->slice_starts.empty() ? 0 : state_->slice_starts.size() - 1;
}

void AreaScan::measure(std::size_t slice, AreaScratch& scratch) {
  Receiver at = state_->receiver;
  for (std::size_t ray = state_->slice_starts[slice]; ray < state_->slice_starts[slice + 1];
       ++ray) {
    state_->measure_ray(ray, at, scratch);
  }
}

std::size_t AreaScan::covered() const {
  return state_->covered;
}

const AreaGrid& AreaScan::grid() const {
  return state_->grid;
}

const Station& AreaScan::station() const {
  return state_->transmitter.station;
}

const std::vector<AreaCell>& AreaScan::cells() const {
  return state_->cells;
}

std::optional<double> AreaScan::chance_percent(const AreaCell& cell) const {
  if (!cell.known()) return std::nullopt;
  const Spread spread{.deviation_db = cell.deviation_db,
                      .unknown_pattern = has_unknown_pattern(state_->transmitter.station)};
  return std::min({state_->chance_cap_percent, static_cast<double>(cell.cap_percent),
                   reception::chance_percent(cell.margin_db, spread)});
}

double AreaScan::required_field_dbuvm() const {
  return state_->required_field_dbuvm;
}

}  // namespace mastwise::reception
