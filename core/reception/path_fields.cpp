#include "core/reception/path_fields.hpp"

#include "core/geo/geodesic.hpp"
#include "core/reception/air.hpp"
#include "core/reception/calibration.hpp"
#include "core/reception/obstacles.hpp"
#include "core/reception/partial_ground.hpp"
#include "core/reception/transmitter_height.hpp"
#include "core/reception/unknown_pattern.hpp"

#include <algorithm>
#include <cmath>

namespace mastwise::reception {
namespace {

constexpr double kLeastDistance_m = 250.0;  // P.1812, section 1

// Basic transmission losses of a path in one model, dB.
struct Losses {
  double median_db = 0.0;
  double tenth_db = 0.0;   // not exceeded for 10 % of time
  double fading_db = 0.0;  // from the median to the loss not exceeded for 90 % of time
};

// From spot to spot around the computed one: K + 1.3 log f, f in GHz, with K 4.4 in the
// country, 4.9 near the clutter's height and 5.1 below it among buildings [Recommendation ITU-R
// P.1812-4, location variability, from memory; the same as P.1546 annex 5 section 12]. Forest
// counts as buildings.
double location_deviation_db(Surroundings surroundings, double frequency_mhz) {
  double k = 4.4;
  switch (surroundings) {
    case Surroundings::open:
    case Surroundings::scrub:
      break;
    case Surroundings::scattered_trees:
    case Surroundings::houses:
      k = 4.9;
      break;
    case Surroundings::forest:
    case Surroundings::town:
      k = 5.1;
      break;
  }
  return k + 1.3 * std::log10(frequency_mhz / 1000.0);
}

// What the terrain model takes for a path mostly over the sea; ground constants of sea water [TR
// 82-100, table of electrical ground constants, from memory].
void over_sea(itm::Link& link) {
  const bool temperate = link.climate == itm::Climate::continental_temperate ||
                         link.climate == itm::Climate::maritime_temperate_over_land;
  const Air air = air_of(temperate ? itm::Climate::maritime_temperate_over_sea
                                   : itm::Climate::maritime_subtropical);
  link.climate = air.climate;
  link.sea_level_refractivity = air.surface_n;
  link.relative_permittivity = 81.0;
  link.conductivity_s_per_m = 5.0;
}

class PathComputer {
 public:
  PathComputer(const Station& station, const Receiver& receiver, Measurement& measurement)
      : station_(station),
        receiver_(receiver),
        outlook_(measurement.outlook),
        detail_(measurement.detail),
        stop_height_m_(calculated_height_m(receiver.surroundings, receiver.gear.height_m)),
        air_(air_of(climate_at(receiver.position))) {}

  void on_profile(const PathGround& ground, double transmitter_height_m, p1812::Scratch& scratch);
  void on_guesses(const PathGround& smooth, std::span<const double> rough_m,
                  double transmitter_height_m, p1812::Scratch& scratch);
  void in_area(double transmitter_height_m);

 private:
  // Both models on one profile.
  struct OnGround {
    Losses p1812 = {}, itm = {};
    double situation_deviation_db = 0.0;
    double free_space_loss_db = 0.0;
    double median_db() const { return (p1812.median_db + itm.median_db) / 2.0; }
  };
  std::optional<OnGround> losses(const PathGround& ground, double transmitter_height_m,
                                 p1812::Scratch& scratch);
  void conclude(PathMode mode, const OnGround& found, double transmitter_height_m);
  std::optional<Losses> p1812_losses(const PathGround& ground, double transmitter_height_m,
                                     p1812::Scratch& scratch);
  std::optional<Losses> itm_losses(const Result<itm::Path>& path, itm::Prediction& median);
  itm::Link itm_link(double transmitter_height_m, double sea_share) const;
  void fail() { detail_.missing = Missing::model; }
  void set_fields(Knowledge knowledge, const std::optional<Losses>& p1812, const Losses& itm);
  GroundAhead ahead_on(const PathGround& ground, double transmitter_height_m) const;
  void set_local_loss();

  const Station& station_;
  const Receiver& receiver_;
  Outlook& outlook_;
  Detail& detail_;
  double stop_height_m_;
  Air air_;
  GroundAhead ahead_ = {};
};

std::optional<Losses> PathComputer::p1812_losses(const PathGround& ground,
                                                 double transmitter_height_m,
                                                 p1812::Scratch& scratch) {
  const bool vertical = station_.polarization == Polarization::vertical;
  const p1812::Link link = {
      .frequency_mhz = outlook_.frequency_mhz,
      .polarization = vertical ? p1812::Polarization::vertical : p1812::Polarization::horizontal,
      .transmitter_height_m = transmitter_height_m,
      .receiver_height_m = stop_height_m_,
      .path_latitude_deg =
          (station_.position.latitude_deg() + receiver_.position.latitude_deg()) / 2.0,
      .refractivity = air_.refractivity,
      .transmitter_coast_km = ground.station_coast_km,
      .receiver_coast_km = ground.stop_coast_km};
  const auto path = p1812::analyze_path({.spacing_km = ground.terrain.spacing_m / 1000.0,
                                         .heights_m = ground.terrain.heights_m,
                                         .clutter_m = ground.clutter_m,
                                         .zones = ground.zones},
                                        link, scratch);
  if (!path) return std::nullopt;
  const auto median = p1812::loss_for(*path, {.time_percent = 50.0});
  const auto tenth = p1812::loss_for(*path, {.time_percent = 10.0});
  if (!median || !tenth) return std::nullopt;
  const double rise_db = median->basic_loss_db - tenth->basic_loss_db;
  return Losses{median->basic_loss_db, tenth->basic_loss_db, rise_db};
}

itm::Link PathComputer::itm_link(double transmitter_height_m, double sea_share) const {
  const bool vertical = station_.polarization == Polarization::vertical;
  itm::Link link = {
      .frequency_mhz = outlook_.frequency_mhz,
      .transmitter_height_m = transmitter_height_m,
      .receiver_height_m = stop_height_m_,
      .polarization = vertical ? itm::Polarization::vertical : itm::Polarization::horizontal,
      .climate = air_.climate,
      .sea_level_refractivity = air_.surface_n};
  if (sea_share > 0.5) over_sea(link);
  return link;
}

std::optional<Losses> PathComputer::itm_losses(const Result<itm::Path>& path,
                                               itm::Prediction& median) {
  if (!path) return std::nullopt;
  const auto middle = itm::predict(*path, {}, {});
  const auto strong = itm::predict(*path, {}, {.time = 10});
  const auto weak = itm::predict(*path, {}, {.time = 90});
  if (!middle || !strong || !weak) return std::nullopt;
  median = *middle;
  detail_.itm_warnings = path->warnings;
  return Losses{middle->loss_db, strong->loss_db, weak->loss_db - middle->loss_db};
}

std::optional<PathComputer::OnGround> PathComputer::losses(const PathGround& ground,
                                                           double transmitter_height_m,
                                                           p1812::Scratch& scratch) {
  const auto p1812 = p1812_losses(ground, transmitter_height_m, scratch);
  const auto path =
      itm::point_to_point(itm_link(transmitter_height_m, ground.sea_share), ground.terrain);
  itm::Prediction median;
  const auto itm = itm_losses(path, median);
  if (!p1812 || !itm) return std::nullopt;
  return OnGround{*p1812, *itm, median.situation_deviation_db, path->free_space_loss_db};
}

void PathComputer::conclude(PathMode mode, const OnGround& found, double transmitter_height_m) {
  outlook_.mode = mode;
  outlook_.transmitter_height_m = transmitter_height_m;
  outlook_.deviations.location_db =
      location_deviation_db(receiver_.surroundings, outlook_.frequency_mhz);
  outlook_.deviations.model_db = found.situation_deviation_db;
  detail_.excess_db = found.median_db() - found.free_space_loss_db;
  set_fields(Knowledge::profile, found.p1812, found.itm);
}

void PathComputer::on_profile(const PathGround& ground, double transmitter_height_m,
                              p1812::Scratch& scratch) {
  const auto found = losses(ground, transmitter_height_m, scratch);
  if (!found) return fail();
  ahead_ = ahead_on(ground, transmitter_height_m);
  conclude(PathMode::point_to_point, *found, transmitter_height_m);
}

Losses mean(const Losses& a, const Losses& b) {
  return {(a.median_db + b.median_db) / 2.0, (a.tenth_db + b.tenth_db) / 2.0,
          (a.fading_db + b.fading_db) / 2.0};
}

void PathComputer::on_guesses(const PathGround& smooth, std::span<const double> rough_m,
                              double transmitter_height_m, p1812::Scratch& scratch) {
  PathGround raised = smooth;
  raised.terrain.heights_m = rough_m;
  const auto low = losses(smooth, transmitter_height_m, scratch);
  const auto rough = losses(raised, transmitter_height_m, scratch);
  if (!low || !rough) return fail();
  OnGround middle = *low;
  middle.p1812 = mean(low->p1812, rough->p1812);
  middle.itm = mean(low->itm, rough->itm);
  outlook_.deviations.ground_db = std::fabs(rough->median_db() - low->median_db()) / 2.0;
  detail_.rough_ground_db = std::max(0.0, rough->median_db() - middle.median_db());
  ahead_ = ahead_on(smooth, transmitter_height_m);
  conclude(PathMode::partial, middle, transmitter_height_m);
}

void PathComputer::in_area(double transmitter_height_m) {
  constexpr double kLowMountains_m = 300.0;
  const itm::Link link = itm_link(transmitter_height_m, 0.0);
  itm::Prediction median;
  const auto rough =
      itm_losses(itm::area(link, {.delta_h_m = kLowMountains_m}, outlook_.distance_m), median);
  const auto path = itm::area(link, {}, outlook_.distance_m);
  const auto itm = itm_losses(path, median);
  if (!itm || !rough) return fail();
  detail_.rough_ground_db = std::max(0.0, rough->median_db - itm->median_db);
  outlook_.mode = PathMode::area;
  outlook_.transmitter_height_m = transmitter_height_m;
  outlook_.deviations.location_db =
      std::max(location_deviation_db(receiver_.surroundings, outlook_.frequency_mhz),
               median.location_deviation_db);
  outlook_.deviations.model_db = median.situation_deviation_db;
  detail_.excess_db = itm->median_db - path->free_space_loss_db;
  set_fields(Knowledge::irregularity_only, std::nullopt, *itm);
}

GroundAhead PathComputer::ahead_on(const PathGround& ground, double transmitter_height_m) const {
  const auto& heights_m = ground.terrain.heights_m;
  return {heights_m, ground.terrain.spacing_m, heights_m.front() + transmitter_height_m,
          heights_m.back() + receiver_.gear.height_m};
}

// Surroundings and the obstacle on the signal's side are one shield: the stronger one counts.
void PathComputer::set_local_loss() {
  detail_.local = local_loss(receiver_.surroundings, receiver_.leaves_m, receiver_.gear.height_m,
                             outlook_.frequency_mhz, receiver_.in_leaf);
  if (receiver_.ring.clear()) return;
  const RingLoss ring = ring_loss(receiver_.ring, outlook_.bearing, ahead_, receiver_.gear.height_m,
                                  outlook_.frequency_mhz, receiver_.in_leaf);
  detail_.local.side_db = std::max(0.0, ring.loss_db - detail_.local.blocked_db);
  detail_.side = ring.side;
  outlook_.side_db = detail_.local.side_db;
}

void PathComputer::set_fields(Knowledge knowledge, const std::optional<Losses>& p1812,
                              const Losses& itm) {
  set_local_loss();
  Deviations& deviations = outlook_.deviations;
  if (station_.pattern) {
    detail_.station_pattern_db =
        station_.pattern->loss_db(path_between(station_.position, receiver_.position).bearing);
    detail_.station_pattern_known = true;
  } else if (has_unknown_pattern(station_)) {
    detail_.station_pattern_db = kUnknownPatternMean_db;
    deviations.station_db = kUnknownPatternDeviation_db;
  }
  const double correction_db =
      above_measured_curves_db(knowledge, outlook_.frequency_mhz, outlook_.distance_m);
  detail_.excess_db += correction_db;
  deviations.model_db = std::hypot(deviations.model_db, remaining_deviation_db(knowledge));
  const double without_path_db = 10.0 * std::log10(*station_.erp_kw) - correction_db -
                                 detail_.station_pattern_db - detail_.local.total_db();
  const auto field = [&](double loss_db) {
    return without_path_db + field_per_kilowatt_dbuvm(loss_db, outlook_.frequency_mhz);
  };
  outlook_.field_itm_dbuvm = field(itm.median_db);
  if (!p1812) {
    outlook_.field_dbuvm = outlook_.field_itm_dbuvm;
    detail_.field_tenth_dbuvm = field(itm.tenth_db);
    deviations.time_db = itm.fading_db / kTenthDeviate;
    return;
  }
  outlook_.field_p1812_dbuvm = field(p1812->median_db);
  outlook_.field_dbuvm = field((p1812->median_db + itm.median_db) / 2.0);
  outlook_.spread_db = std::fabs(p1812->median_db - itm.median_db);
  detail_.field_tenth_dbuvm = field((p1812->tenth_db + itm.tenth_db) / 2.0);
  deviations.time_db = (p1812->fading_db + itm.fading_db) / 2.0 / kTenthDeviate;
  deviations.model_db = std::hypot(deviations.model_db, *outlook_.spread_db / 2.0);
}

void note_obstacles(const terrain::PathProfile& profile, const Receiver& receiver,
                    Outlook& outlook) {
  // The same line for all surroundings: a ridge does not sink because trees stand at the stop.
  const double stop_height_m = calculated_height_m(Surroundings::open, receiver.gear.height_m);
  outlook.obstacles =
      find_obstacles(profile, profile.heights_m.front() + *outlook.transmitter_height_m,
                     profile.heights_m.back() + stop_height_m, outlook.frequency_mhz);
}

}  // namespace

double field_per_kilowatt_dbuvm(double loss_db, double frequency_mhz) {
  return 199.36 + 20.0 * std::log10(frequency_mhz / 1000.0) - loss_db;
}

Missing missing_for_field(const Station& station, double distance_m) {
  if (!station.erp_kw || *station.erp_kw <= 0.0) return Missing::power;
  return distance_m < kLeastDistance_m ? Missing::distance : Missing::nothing;
}

void compute_on_profile(const Station& station, const Receiver& receiver, const PathGround& ground,
                        double transmitter_height_m, Measurement& measurement,
                        p1812::Scratch& scratch) {
  PathComputer(station, receiver, measurement).on_profile(ground, transmitter_height_m, scratch);
}

void compute_on_guesses(const Station& station, const Receiver& receiver, const PathGround& smooth,
                        std::span<const double> rough_m, double transmitter_height_m,
                        Measurement& measurement, p1812::Scratch& scratch) {
  PathComputer(station, receiver, measurement)
      .on_guesses(smooth, rough_m, transmitter_height_m, scratch);
}

void compute_path(const Station& station, const Receiver& receiver, const Land& land,
                  const map::Shore* shore, Measurement& measurement, Scratch& scratch) {
  terrain::PathProfile& profile = scratch.profile;
  terrain::cut_profile(land.tiles, station.position, receiver.position, scratch.profile);
  lay_clutter(land.cover, profile, scratch.cover);
  std::optional<AlongShore> along;
  if (shore != nullptr) {
    along.emplace(AlongShore{.shore = *shore, .bearing = profile.bearing_back});
    shore->sea_toward(profile.bearing_back, profile.distance_m, scratch.cover.sea);
    lay_sea(scratch.cover.sea, true, profile);
  }
  Outlook& outlook = measurement.outlook;
  Detail& detail = measurement.detail;
  outlook.distance_m = profile.distance_m;
  outlook.bearing = profile.bearing_back;
  outlook.terrain_coverage = profile.coverage();
  detail.without_terrain_m = profile.without_terrain_m();
  if (detail.missing != Missing::nothing) return;
  detail.missing = missing_for_field(station, outlook.distance_m);
  if (detail.missing != Missing::nothing) return;
  const auto over_tile_m = height_over_tile_m(station, land.tiles);
  if (profile.complete() && over_tile_m) {
    const PathGround ground =
        with_cover({profile.spacing_m, profile.heights_m}, along, scratch.cover);
    compute_on_profile(station, receiver, ground, *over_tile_m, measurement, scratch.p1812);
    if (outlook.mode != PathMode::none) note_obstacles(profile, receiver, outlook);
    return;
  }
  PathComputer computer(station, receiver, measurement);
  const bool partial = !profile.complete();
  if (partial) {
    detail.missing_tile = cell_of_longest_gap(profile, station.position);
  }
  if (partial && guess_ground(profile, station.site_amsl_m, scratch.guess)) {
    profile.heights_m = scratch.guess.smooth_m;
    const auto height_m =
        over_tile_m ? over_tile_m : height_over_ground_m(station, profile.heights_m.front());
    if (height_m) {
      const PathGround ground =
          with_cover({profile.spacing_m, profile.heights_m}, along, scratch.cover);
      computer.on_guesses(ground, scratch.guess.rough_m, *height_m, scratch.p1812);
      if (outlook.mode != PathMode::none) note_obstacles(profile, receiver, outlook);
      return;
    }
  }
  if (const auto height_m = height_over_country_m(station)) return computer.in_area(*height_m);
  detail.missing = Missing::height;
}

}  // namespace mastwise::reception
