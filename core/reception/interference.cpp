#include "core/reception/interference.hpp"

#include "core/reception/path_fields.hpp"
#include "core/reception/protection.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::reception {
namespace {

constexpr double kTooWeakToOverload_db = 40.0;
constexpr double kHalf_db = 3.01;
// Weighted powers this far below the required level take less than 0.01 dB off the margin.
constexpr double kNegligible_db = 27.0;

// Power at the antenna's terminals of a field on its axis, including heading error and
// polarization.
double on_axis_dbm(const Measurement& other, double field_dbuvm) {
  return other.detail.received_dbm + field_dbuvm - *other.outlook.field_dbuvm;
}

// The same as if no obstacle of the ring stood on its side.
double on_axis_unsheltered_dbm(const Measurement& other, double field_dbuvm) {
  return on_axis_dbm(other, field_dbuvm) + other.detail.local.side_db;
}

void keep_worst(std::optional<Disturber>& worst, const Disturber& disturber) {
  if (!worst || disturber.cost_db > worst->cost_db) worst = disturber;
}

bool at_one_site(const Station& a, const Station& b) {
  constexpr double kSameSite_deg = 0.005;
  const double narrowing = std::cos(a.position.latitude_deg() * std::numbers::pi / 180.0);
  const double east_deg =
      std::fabs(a.position.longitude_deg() - b.position.longitude_deg()) * narrowing;
  return std::fabs(a.position.latitude_deg() - b.position.latitude_deg()) < kSameSite_deg &&
         east_deg < kSameSite_deg;
}

// The field's spread over places, evenings and models. An interferer counts when it is strong, so
// evenings vary as from its median to its strongest tenth.
double field_deviation_db(const Measurement& measurement) {
  const Deviations& own = measurement.outlook.deviations;
  const double stronger_db =
      measurement.detail.field_tenth_dbuvm - *measurement.outlook.field_dbuvm;
  const Deviations field = {.location_db = own.location_db,
                            .time_db = std::max(0.0, stronger_db) / kTenthDeviate,
                            .model_db = own.model_db,
                            .ground_db = own.ground_db,
                            .station_db = own.station_db};
  return field.total_db();
}

// Whether another transmitter, of the same call sign or the same single-frequency network, carries
// the wanted station's program on its channel from elsewhere.
bool is_twin(const Station& wanted, const Station& other) {
  const auto shared = [&](std::string Station::*name) {
    return !(wanted.*name).empty() && wanted.*name == other.*name;
  };
  return (shared(&Station::call_sign) || shared(&Station::multiplex)) &&
         !at_one_site(wanted, other);
}

// Whether signals over these distances arrive within the receiver's reach of each other.
bool within_reach(const Measurement& wanted, const Measurement& other) {
  constexpr double kLight_m_per_us = 299.792458;
  const double apart_m = std::fabs(wanted.outlook.distance_m - other.outlook.distance_m);
  return apart_m <= kLight_m_per_us * echo_reach_us(wanted.standard);
}

bool is_helper(std::span<const Station> stations, std::span<const Measurement> measurements,
               std::size_t wanted, std::size_t other) {
  return channel_relation(measurements[wanted].slot, measurements[other].slot) ==
             ChannelRelation::same &&
         is_twin(stations[wanted], stations[other]) &&
         within_reach(measurements[wanted], measurements[other]);
}

// The antenna's response toward the other station while it is aimed at the wanted one.
double toward_db(const LinkBudget& budget, const Measurement& wanted, const Measurement& other) {
  return budget.off_axis_db(other.outlook.band, other.outlook.bearing - wanted.outlook.bearing);
}

Rivals sum_of(std::span<const Disturbance> disturbances, const LinkBudget& budget,
              std::span<const Measurement> measurements, std::size_t wanted,
              std::optional<std::size_t> without, FromElsewhere& elsewhere) {
  const Measurement& own = measurements[wanted];
  const double wanted_mw = milliwatts(own.detail.received_dbm + own.detail.helped_db);
  Rivals rivals{.needed_alone_dbm = own.detail.noise_dbm + own.detail.required_cn_db};
  elsewhere.clear();
  for (const Disturbance& other : disturbances) {
    if (other.station == without) continue;
    const double weighted_dbm = other.on_axis.median_dbm +
                                toward_db(budget, own, measurements[other.station]) +
                                other.ratio_db;
    if (other.same_site) {
      rivals.site.add(milliwatts(weighted_dbm), wanted_mw, other.on_axis.deviation_db);
    } else {
      elsewhere.add(other.station, {weighted_dbm, other.on_axis.deviation_db});
    }
  }
  elsewhere.put_into(rivals);
  return rivals;
}

// Whether interference from the wanted station's site could take 0.01 dB off its margin.
bool matters_at_site(const Measurement& own, double weighted_dbm) {
  return weighted_dbm > own.detail.received_dbm - kNegligible_db;
}

}  // namespace

void find_disturbers(std::span<const Station> stations, std::span<const Measurement> measurements,
                     std::size_t wanted, double needed_dbm, std::vector<Disturbance>& found) {
  const Measurement& own = measurements[wanted];
  const Protection ratios = protection(own.standard, own.detail.required_cn_db);
  found.clear();
  for (std::size_t i = 0; i < measurements.size(); ++i) {
    const Measurement& other = measurements[i];
    if (i == wanted || !other.heard()) continue;
    const ChannelRelation relation = channel_relation(own.slot, other.slot);
    if (relation == ChannelRelation::apart) continue;
    const bool same = relation == ChannelRelation::same;
    const double ratio = ratio_db(ratios, relation);
    const double strongest_dbm = on_axis_unsheltered_dbm(other, other.detail.field_tenth_dbuvm);
    if (strongest_dbm + ratio < needed_dbm - kNegligible_db) continue;
    double median_dbm = on_axis_unsheltered_dbm(other, *other.outlook.field_dbuvm);
    if (at_one_site(stations[wanted], stations[i])) {
      // Both are behind the same obstacle.
      median_dbm -= own.detail.local.side_db;
      if (same || !matters_at_site(own, median_dbm + ratio)) continue;
      found.push_back({.station = i,
                       .same_site = true,
                       .on_axis = {median_dbm, kSameSiteDeviation_db},
                       .ratio_db = ratio});
      continue;
    }
    if (same && is_helper(stations, measurements, wanted, i)) continue;
    found.push_back({.station = i,
                     .same_channel = same,
                     .on_axis = {median_dbm, field_deviation_db(other)},
                     .ratio_db = ratio});
  }
}

void find_helpers(std::span<const Station> stations, std::span<const Measurement> measurements,
                  std::size_t wanted, std::vector<std::size_t>& found) {
  found.clear();
  for (std::size_t i = 0; i < measurements.size(); ++i) {
    if (i == wanted || !measurements[i].heard()) continue;
    if (is_helper(stations, measurements, wanted, i)) found.push_back(i);
  }
}

void FromElsewhere::add(std::size_t station, const Level& weighted) {
  for (Site& site : sites_) {
    if (!at_one_site(stations_[site.station], stations_[station])) continue;
    site.level = joint_sum(site.level, weighted);
    return;
  }
  sites_.push_back({station, weighted});
}

void FromElsewhere::put_into(Rivals& rivals) const {
  rivals.strongest.reset();
  rivals.others.reset();
  const auto tenth_dbm = [](const Site& site) {
    return site.level.median_dbm + kTenthDeviate * site.level.deviation_db;
  };
  // Far below the noise even when strong.
  const auto is_weak = [alone_dbm = rivals.needed_alone_dbm](const Site& site) {
    constexpr double kMostDeviations = 3.0, kFarBelow_db = 15.0;
    return site.level.median_dbm + kMostDeviations * site.level.deviation_db <
           alone_dbm - kFarBelow_db;
  };
  const Site* strongest = nullptr;
  double alone_mw = milliwatts(rivals.needed_alone_dbm);
  for (const Site& site : sites_) {
    if (is_weak(site)) {
      alone_mw += milliwatts(site.level.median_dbm);
    } else if (strongest == nullptr || tenth_dbm(site) > tenth_dbm(*strongest)) {
      strongest = &site;
    }
  }
  if (strongest != nullptr) rivals.strongest = strongest->level;
  for (const Site& site : sites_) {
    if (&site == strongest || is_weak(site)) continue;
    rivals.others = rivals.others ? independent_sum(*rivals.others, site.level) : site.level;
  }
  rivals.needed_alone_dbm = dbm(alone_mw);
}

void Interference::find_strong(std::span<const Measurement> measurements) {
  strong_.clear();
  const Receiver& receiver = budget_.receiver();
  const auto& amplifier = receiver.gear.amplifier;
  towers_dbm_ = gear::near_towers_dbm(receiver.gear.antenna, receiver.towers);
  if (!amplifier) return;
  for (std::size_t i = 0; i < measurements.size(); ++i) {
    if (measurements[i].heard() && measurements[i].detail.unsheltered_dbm() >
                                       amplifier->overload_dbm - kTooWeakToOverload_db) {
      strong_.push_back(i);
    }
  }
}

void Interference::check_overload(std::span<Measurement> measurements, std::size_t wanted) {
  if (strong_.empty() && !towers_dbm_) return;
  Measurement& own = measurements[wanted];
  powers_dbm_.clear();
  for (const std::size_t other : strong_) {
    powers_dbm_.push_back(measurements[other].detail.unsheltered_dbm() +
                          (other == wanted ? 0.0 : toward_db(budget_, own, measurements[other])));
  }
  if (towers_dbm_) powers_dbm_.push_back(*towers_dbm_);
  const auto overload = gear::overload(budget_.receiver().gear, powers_dbm_);
  own.detail.overload_db = overload ? std::max(overload->excess_db(), 0.1) : 0.0;
  own.detail.overload_sum_dbm = overload ? overload->summed_dbm : 0.0;
  // Half of the sum and more.
  own.detail.overload_by_towers =
      overload && towers_dbm_ && *towers_dbm_ > overload->summed_dbm - kHalf_db;
}

double Interference::helped_db(std::span<const Measurement> measurements, std::size_t wanted) {
  const Measurement& own = measurements[wanted];
  find_helpers(stations_, measurements, wanted, helpers_);
  const double own_mw = milliwatts(own.detail.received_dbm);
  double sum_mw = own_mw;
  for (const std::size_t helper : helpers_) {
    sum_mw += milliwatts(measurements[helper].detail.received_dbm +
                         toward_db(budget_, own, measurements[helper]));
  }
  return dbm(sum_mw / own_mw);
}

Rivals rivals_without(const LinkBudget& budget, std::span<const Station> stations,
                      std::span<const Measurement> measurements, std::size_t wanted,
                      std::size_t without) {
  const Detail& own = measurements[wanted].detail;
  std::vector<Disturbance> disturbers;
  find_disturbers(stations, measurements, wanted, own.noise_dbm + own.required_cn_db, disturbers);
  FromElsewhere elsewhere(stations);
  return sum_of(disturbers, budget, measurements, wanted, without, elsewhere);
}

void Interference::add_up(std::span<Measurement> measurements, std::size_t wanted) {
  Measurement& own = measurements[wanted];
  const double needed_dbm = own.detail.noise_dbm + own.detail.required_cn_db;
  own.detail.same_channel.reset();
  own.detail.next_channel.reset();
  own.detail.helped_db = helped_db(measurements, wanted);
  find_disturbers(stations_, measurements, wanted, needed_dbm, disturbers_);
  conclude(own, sum_of(disturbers_, budget_, measurements, wanted, std::nullopt, elsewhere_));
  const double wanted_dbm = own.detail.received_dbm + own.detail.helped_db;
  for (const Disturbance& other : disturbers_) {
    const double power_dbm =
        other.on_axis.median_dbm + toward_db(budget_, own, measurements[other.station]);
    Rivals alone{.needed_alone_dbm = needed_dbm};
    if (other.same_site) {
      alone.site.add(milliwatts(power_dbm + other.ratio_db), milliwatts(wanted_dbm), 0.0);
    } else {
      alone.strongest = Level{power_dbm + other.ratio_db, 0.0};
    }
    keep_worst(other.same_channel ? own.detail.same_channel : own.detail.next_channel,
               {.station = other.station,
                .over_db = wanted_dbm - power_dbm,
                .cost_db = alone.needed_dbm() - needed_dbm});
  }
}

void Interference::weigh(std::span<Measurement> measurements) {
  find_strong(measurements);
  for (std::size_t i = 0; i < measurements.size(); ++i) {
    if (measurements[i].heard()) check_overload(measurements, i);
  }
  // Powers at the antenna are independent of the amplifier, so the order does not matter.
  for (std::size_t i = 0; i < measurements.size(); ++i) {
    Measurement& own = measurements[i];
    if (!own.heard()) continue;
    const bool off = own.detail.overload_db > 0.0;
    if (off != own.outlook.amplifier_off) budget_.apply(stations_[i], own, !off);
    add_up(measurements, i);
  }
}

}  // namespace mastwise::reception
