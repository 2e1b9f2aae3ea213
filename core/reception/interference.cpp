#include "core/reception/interference.hpp"

#include "core/reception/protection.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mastwise::reception {
namespace {

constexpr double kTooWeakToOverload_db = 40.0;
// Weighted powers this far below the required level take less than 0.01 dB off the margin.
constexpr double kNegligible_db = 27.0;

// Power at the antenna's terminals of a field on its axis, including heading error and
// polarization.
double on_axis_dbm(const Measurement& other, double field_dbuvm) {
  return other.detail.received_dbm + field_dbuvm - *other.outlook.field_dbuvm;
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

bool same_transmitter(const Station& a, const Station& b) {
  return (!a.call_sign.empty() && a.call_sign == b.call_sign) || at_one_site(a, b);
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
    const double strongest_dbm = on_axis_dbm(other, other.detail.field_tenth_dbuvm);
    if (strongest_dbm + ratio < needed_dbm - kNegligible_db) continue;
    if (same && same_transmitter(stations[wanted], stations[i])) continue;
    if (at_one_site(stations[wanted], stations[i])) {
      const double median_dbm = on_axis_dbm(other, *other.outlook.field_dbuvm);
      if (!matters_at_site(own, median_dbm + ratio)) continue;
      found.push_back({.station = i,
                       .same_site = true,
                       .on_axis_dbm = median_dbm,
                       .ratio_db = ratio,
                       .deviation_db = kSameSiteDeviation_db});
      continue;
    }
    found.push_back({.station = i,
                     .same_channel = same,
                     .on_axis_dbm = strongest_dbm,
                     .ratio_db = ratio,
                     .deviation_db = std::hypot(other.outlook.deviations.location_db,
                                                other.outlook.deviations.model_db)});
  }
}

double Interference::toward_db(const Measurement& wanted, const Measurement& other) const {
  return budget_.off_axis_db(other.outlook.band, other.outlook.bearing - wanted.outlook.bearing);
}

void Interference::find_strong(std::span<const Measurement> measurements) {
  strong_.clear();
  const auto& amplifier = budget_.receiver().gear.amplifier;
  if (!amplifier) return;
  for (std::size_t i = 0; i < measurements.size(); ++i) {
    if (measurements[i].heard() &&
        measurements[i].detail.received_dbm > amplifier->overload_dbm - kTooWeakToOverload_db) {
      strong_.push_back(i);
    }
  }
}

void Interference::check_overload(std::span<Measurement> measurements, std::size_t wanted) {
  if (strong_.empty()) return;
  Measurement& own = measurements[wanted];
  powers_dbm_.clear();
  for (const std::size_t other : strong_) {
    powers_dbm_.push_back(measurements[other].detail.received_dbm +
                          (other == wanted ? 0.0 : toward_db(own, measurements[other])));
  }
  const auto overload = gear::overload(budget_.receiver().gear, powers_dbm_);
  own.detail.overload_db = overload ? std::max(overload->excess_db(), 0.1) : 0.0;
  own.detail.overload_sum_dbm = overload ? overload->summed_dbm : 0.0;
}

void Interference::add_up(std::span<Measurement> measurements, std::size_t wanted) {
  Measurement& own = measurements[wanted];
  const double needed_dbm = own.detail.noise_dbm + own.detail.required_cn_db;
  const double needed_mw = milliwatts(needed_dbm);
  double sum_mw = 0.0;
  double spread = 0.0;  // sum of squares of weighted power times deviation
  const double wanted_mw = milliwatts(own.detail.received_dbm);
  SameSite site;
  own.detail.same_channel.reset();
  own.detail.next_channel.reset();
  find_disturbers(stations_, measurements, wanted, needed_dbm, disturbers_);
  for (const Disturbance& other : disturbers_) {
    const double power_dbm = other.on_axis_dbm + toward_db(own, measurements[other.station]);
    const double weighted_mw = milliwatts(power_dbm + other.ratio_db);
    double cost_db = 0.0;
    if (other.same_site) {
      SameSite alone;
      alone.add(weighted_mw, wanted_mw, other.deviation_db);
      cost_db = dbm(alone.factor());
      site.add(weighted_mw, wanted_mw, other.deviation_db);
    } else {
      sum_mw += weighted_mw;
      spread += weighted_mw * weighted_mw * other.deviation_db * other.deviation_db;
      cost_db = dbm(1.0 + weighted_mw / needed_mw);
    }
    keep_worst(other.same_channel ? own.detail.same_channel : own.detail.next_channel,
               {.station = other.station,
                .over_db = own.detail.received_dbm - power_dbm,
                .cost_db = cost_db});
  }
  const double against_mw = needed_mw + sum_mw;
  conclude(own, sum_mw, std::sqrt(spread) / against_mw, site);
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
