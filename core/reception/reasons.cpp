#include "core/reception/reasons.hpp"

#include "core/gear/modes.hpp"
#include "core/reception/ground_costs.hpp"
#include "core/reception/interference.hpp"
#include "core/reception/path_fields.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise::reception {
namespace {

constexpr double kLeastCost_db = 1.0;
constexpr double kLeastFading_db = 6.0;
constexpr double kLeastSpread_db = 6.0;
constexpr double kLeastRoughGround_db = 3.0;
constexpr double kAmplifier_db = 15.0;  // the gain of a usual amplifier [cp: 12 to 20 dB]

std::optional<UnknownFact> unknown_of(Missing missing) {
  switch (missing) {
    case Missing::nothing:
      break;
    case Missing::channel:
      return UnknownFact::channel;
    case Missing::power:
      return UnknownFact::power;
    case Missing::height:
      return UnknownFact::height;
    case Missing::distance:
      return UnknownFact::too_near;
    case Missing::model:
      return UnknownFact::model_range;
  }
  return std::nullopt;
}

class Collector {
 public:
  Collector(const LinkBudget& budget, std::span<const Station> stations,
            std::span<const Measurement> measurements, std::size_t index)
      : budget_(budget),
        receiver_(budget.receiver()),
        index_(index),
        stations_(stations),
        measurements_(measurements),
        station_(stations[index]),
        measurement_(measurements[index]),
        outlook_(measurement_.outlook),
        detail_(measurement_.detail),
        wanted_dbm_(detail_.received_dbm + detail_.helped_db),
        requirement_(detail_.rivals),
        chance_percent_(requirement_.chance_percent(wanted_dbm_, own_spread(outlook_.deviations))) {
  }

  std::vector<Reason> collect();

 private:
  void note(Fact fact) { found_.push_back({.fact = std::move(fact)}); }
  // Only if it is worth showing.
  void cost(double decibel, Fact fact, double least_db = kLeastCost_db) {
    if (decibel < least_db) return;
    found_.push_back({decibel, std::move(fact), gain_percent(decibel, outlook_.deviations)});
  }
  // Points of chance that a stronger signal with these deviations would gain.
  double gain_percent(double stronger_db, const Deviations& deviations) const;
  // The same without an interferer.
  double gain_percent(const Disturber& disturber) const;

  void missing_fact();
  void ground();
  void stop();
  void gear();
  fact::Interferer interferer(const Disturber& disturber) const;
  void others();
  void uncertain();
  void notes();
  void mode();
  void decoding();

  const LinkBudget& budget_;
  const Receiver& receiver_;
  std::size_t index_;
  std::span<const Station> stations_;
  std::span<const Measurement> measurements_;
  const Station& station_;
  const Measurement& measurement_;
  const Outlook& outlook_;
  const Detail& detail_;
  double wanted_dbm_;
  Requirement requirement_;
  double chance_percent_;  // not capped
  std::vector<Reason> found_ = {};
};

double Collector::gain_percent(double stronger_db, const Deviations& deviations) const {
  const double without =
      requirement_.chance_percent(wanted_dbm_ + stronger_db, own_spread(deviations));
  return std::max(0.0, without - chance_percent_);
}

double Collector::gain_percent(const Disturber& disturber) const {
  const Requirement fewer(
      rivals_without(budget_, stations_, measurements_, index_, disturber.station));
  const double without = fewer.chance_percent(wanted_dbm_, own_spread(outlook_.deviations));
  return std::max(0.0, without - chance_percent_);
}

void Collector::missing_fact() {
  const auto what = unknown_of(detail_.missing);
  if (!what) return;
  fact::Unknown unknown{.what = *what};
  if (*what == UnknownFact::channel) unknown.channel = station_.rf_channel;
  if (*what == UnknownFact::too_near) unknown.distance_m = outlook_.distance_m;
  note(unknown);
}

void Collector::ground() {
  const GroundCosts costs = ground_costs(outlook_, std::max(0.0, detail_.excess_db));
  for (std::size_t i = 0; i < outlook_.obstacles.size(); ++i) {
    cost(costs.obstacle_db[i], fact::InTheWay{outlook_.obstacles[i]});
  }
  cost(costs.rest_db,
       fact::RoughGround{.distance_m = outlook_.distance_m,
                         .assumed = outlook_.mode != PathMode::point_to_point,
                         .besides_obstacles = !outlook_.obstacles.empty()},
       kLeastRoughGround_db);
  if (outlook_.mode == PathMode::point_to_point && outlook_.obstacles.empty()) {
    note(fact::ClearLine{outlook_.distance_m});
  }
}

void Collector::stop() {
  const SurroundingsFigures around = figures(receiver_.surroundings);
  fact::AroundStop stop{.around = receiver_.surroundings, .antenna_m = receiver_.gear.height_m};
  if (around.built) stop.clutter_m = around.clutter_height_m;
  cost(detail_.local.surroundings_db, stop);
  cost(detail_.local.leaves_db,
       fact::Leaves{receiver_.leaves_m.value_or(around.leaves_m), !receiver_.in_leaf});
  cost(detail_.local.side_db,
       fact::OnItsSide{receiver_.ring.sides[detail_.side], !receiver_.in_leaf});
  const gear::NoiseSources noise = noise_sources(receiver_);
  const bool measured = noise.measured[static_cast<std::size_t>(outlook_.band)].has_value();
  cost(detail_.external_noise_db, fact::Noise{outlook_.frequency_mhz, noise.environment,
                                              noise.inverter_on && !measured, measured});
}

void Collector::gear() {
  cost(detail_.polarization_db, fact::CrossedPolarization{receiver_.gear.antenna.horizontal});
  cost(detail_.heading_db, fact::HeadingError{receiver_.heading_error_deg});
  cost(detail_.overload_db, fact::Overload{detail_.overload_sum_dbm, detail_.overload_by_towers},
       0.1);
  cost(receiver_.gear.off_loss_db, fact::AmplifierOff{});
  const double short_db = -outlook_.margin_db.value_or(0.0);
  cost(short_db, fact::Shortfall{.beyond_amplifier = short_db > kAmplifier_db});
}

fact::Interferer Collector::interferer(const Disturber& disturber) const {
  return {.call_sign = stations_[disturber.station].call_sign,
          .distance_m = measurements_[disturber.station].outlook.distance_m,
          .over_db = disturber.over_db};
}

void Collector::others() {
  constexpr double kLeastGain_percent = 3.0;
  const auto tell = [&](const std::optional<Disturber>& worst, auto fact) {
    if (!worst) return;
    const double gain = gain_percent(*worst);
    if (worst->cost_db < kLeastCost_db && gain < kLeastGain_percent) return;
    static_cast<fact::Interferer&>(fact) = interferer(*worst);
    found_.push_back({worst->cost_db, fact, gain});
  };
  tell(detail_.same_channel, fact::SameChannel());
  tell(detail_.next_channel, fact::NextChannel());
}

void Collector::uncertain() {
  const LearnedBias& learned = receiver_.learned[static_cast<std::size_t>(outlook_.band)];
  if (learned.stops > 0) {
    const double cost_db = std::max(0.0, -learned.bias_db);
    found_.push_back({cost_db, fact::Lesson{outlook_.band, learned.bias_db, learned.stops},
                      gain_percent(cost_db, outlook_.deviations)});
  }
  const double fading_db = kTenthDeviate * outlook_.deviations.time_db;
  if (fading_db >= kLeastFading_db) {
    Deviations steady = outlook_.deviations;
    steady.time_db = 0.0;
    found_.push_back({fading_db, fact::Fading{outlook_.distance_m}, gain_percent(0.0, steady)});
  }
  const double spread_db = outlook_.spread_db.value_or(0.0);
  if (spread_db >= kLeastSpread_db) {
    Deviations agreed = outlook_.deviations;
    agreed.model_db =
        std::sqrt(std::max(0.0, agreed.model_db * agreed.model_db - spread_db * spread_db / 4.0));
    found_.push_back({spread_db / 2.0, fact::ModelSpread{spread_db, outlook_.distance_m},
                      gain_percent(0.0, agreed)});
  }
  cost(detail_.station_pattern_db, fact::TransmitterPattern{detail_.station_pattern_known});
}

void Collector::notes() {
  const bool guessed = outlook_.mode == PathMode::area || outlook_.mode == PathMode::partial;
  if (guessed && detail_.missing_tile) {
    // What the cap takes.
    const double gain = std::max(0.0, chance_percent_ - outlook_.chance_cap_percent);
    found_.push_back({.fact = fact::NoTerrain{detail_.without_terrain_m, outlook_.distance_m,
                                              terrain::cell_name(*detail_.missing_tile)},
                      .gain_percent = gain});
  } else if (outlook_.mode == PathMode::area) {
    note(fact::Unknown{.what = UnknownFact::antenna_amsl});
  }
  if (!station_.standard && !outlook_.field_dbuvm) return;
  if (!station_.standard) {
    note(fact::Unknown{.what = UnknownFact::standard, .assumed = measurement_.standard});
  }
  if (outlook_.field_dbuvm) mode();
  for (const itm::Warning warning : itm::listed(detail_.itm_warnings)) {
    note(fact::ModelLimit{warning});
  }
}

// A standard with one mode has nothing to assume.
void Collector::mode() {
  const auto modes = gear::modes(measurement_.standard);
  if (modes.size() < 2) return;
  const gear::Mode& mode = gear::default_mode(measurement_.standard);
  const gear::ChannelKind channel = channel_kind(receiver_.surroundings);
  const auto needs_less = [channel](const gear::Mode& a, const gear::Mode& b) {
    return a.required_cn_db(channel) < b.required_cn_db(channel);
  };
  const auto [least, most] = std::minmax_element(modes.begin(), modes.end(), needs_less);
  note(fact::AssumedMode{.standard = measurement_.standard,
                         .mode = std::string(mode.name),
                         .needs_db = mode.required_cn_db(channel),
                         .least_db = least->required_cn_db(channel),
                         .most_db = most->required_cn_db(channel)});
}

// First of all: nothing else matters as much.
void Collector::decoding() {
  if (outlook_.decoding == gear::Decoding::possible) return;
  found_.insert(found_.begin(),
                Reason{.fact = fact::Decoding{outlook_.decoding, measurement_.standard}});
}

std::vector<Reason> Collector::collect() {
  missing_fact();
  if (outlook_.field_dbuvm) {
    ground();
    stop();
    gear();
    others();
    uncertain();
  }
  notes();
  std::stable_sort(found_.begin(), found_.end(), [](const Reason& a, const Reason& b) {
    return std::pair(a.gain_percent, a.decibel) > std::pair(b.gain_percent, b.decibel);
  });
  decoding();
  return std::move(found_);
}

}  // namespace

std::vector<Reason> reasons(const LinkBudget& budget, std::span<const Station> stations,
                            std::span<const Measurement> measurements, std::size_t index) {
  return Collector(budget, stations, measurements, index).collect();
}

}  // namespace mastwise::reception
