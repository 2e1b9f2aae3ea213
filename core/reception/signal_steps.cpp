#include "core/reception/signal_steps.hpp"

#include "core/propagation/itm/medium.hpp"
#include "core/reception/ground_costs.hpp"
#include "core/reception/path_fields.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace mastwise::reception {
namespace {

constexpr std::array<std::string_view, kSignalLosses> kNames{
    "distance", "transmitter_pattern", "ridge",        "earth_curve",
    "ground",   "low_antenna",         "surroundings", "leaves",
    "beside",   "polarization",        "heading",      "amplifier_off",
    "noise",    "same_channel",        "next_channel", "helpers",
    "logbook"};

class Budgeter {
 public:
  Budgeter(const LinkBudget& budget, std::span<const Station> stations,
           std::span<const Measurement> measurements, std::size_t index)
      : budget_(budget),
        receiver_(budget.receiver()),
        stations_(stations),
        measurements_(measurements),
        station_(stations[index]),
        measurement_(measurements[index]),
        outlook_(measurement_.outlook),
        detail_(measurement_.detail) {}

  SignalBudget collect();

 private:
  void take(SignalStep step) {
    if (step.decibel != 0.0) found_.steps.push_back(std::move(step));
  }
  double noise_figure_db(const gear::Gear& gear) const;
  void tower();
  void ground();
  void stop();
  void amplifier();
  void others();
  SignalStep others_on(SignalLoss what, const Disturber& worst, double decibel) const;

  const LinkBudget& budget_;
  const Receiver& receiver_;
  std::span<const Station> stations_;
  std::span<const Measurement> measurements_;
  const Station& station_;
  const Measurement& measurement_;
  const Outlook& outlook_;
  const Detail& detail_;
  SignalBudget found_ = {};
};

// Of the gear with its amplifier powered, if it has one.
double Budgeter::noise_figure_db(const gear::Gear& gear) const {
  return gear::receive_chain(gear, measurement_.slot, gear::default_mode(measurement_.standard),
                             noise_sources(receiver_), channel_kind(receiver_.surroundings))
      .noise_figure_db;
}

void Budgeter::tower() {
  const gear::ReceiveChain chain = budget_.chain(measurement_, !outlook_.amplifier_off);
  gear::Gear powered = receiver_.gear;
  powered.off_loss_db = 0.0;
  const double off_db = chain.noise_figure_db - noise_figure_db(powered);
  found_.erp_kw = *station_.erp_kw;
  const double needed_dbm = gear::thermal_noise_dbm(chain.noise_bandwidth_hz) +
                            chain.noise_figure_db - off_db + chain.required_cn_db;
  const double erp_dbm = 60.0 + 10.0 * std::log10(found_.erp_kw);
  found_.tower_db = erp_dbm + chain.gain_dbd - needed_dbm;
  const double free_dbuvm = field_per_kilowatt_dbuvm(
      itm::free_space_loss_db(outlook_.frequency_mhz, outlook_.distance_m), outlook_.frequency_mhz);
  take({.what = SignalLoss::distance,
        .decibel = 60.0 - gear::received_power_dbm(free_dbuvm, 0.0, outlook_.frequency_mhz),
        .distance_m = outlook_.distance_m});
  take({.what = SignalLoss::amplifier_off, .decibel = off_db});
}

void Budgeter::ground() {
  const GroundCosts costs = ground_costs(outlook_, std::max(0.0, detail_.excess_db));
  for (std::size_t i = 0; i < outlook_.obstacles.size(); ++i) {
    const Obstacle& obstacle = outlook_.obstacles[i];
    take({.what = obstacle.earth_curve ? SignalLoss::earth_curve : SignalLoss::ridge,
          .decibel = costs.obstacle_db[i],
          .distance_m = obstacle.distance_m});
  }
  take({.what = SignalLoss::ground, .decibel = costs.rest_db + std::min(0.0, detail_.excess_db)});
}

void Budgeter::stop() {
  const bool among =
      figures(receiver_.surroundings).built || figures(receiver_.surroundings).wooded;
  take({.what = among ? SignalLoss::surroundings : SignalLoss::low_antenna,
        .decibel = detail_.local.surroundings_db,
        .height_m = receiver_.gear.height_m});
  take({.what = SignalLoss::leaves, .decibel = detail_.local.leaves_db});
  take({.what = SignalLoss::beside, .decibel = detail_.local.side_db});
  take({.what = SignalLoss::polarization, .decibel = detail_.polarization_db});
  take({.what = SignalLoss::heading, .decibel = detail_.heading_db});
  take({.what = SignalLoss::noise, .decibel = detail_.external_noise_db});
}

SignalStep Budgeter::others_on(SignalLoss what, const Disturber& worst, double decibel) const {
  return {.what = what,
          .decibel = decibel,
          .distance_m = measurements_[worst.station].outlook.distance_m,
          .station = stations_[worst.station].call_sign};
}

void Budgeter::others() {
  const double whole_db = detail_.rivals.needed_dbm() - detail_.noise_dbm - detail_.required_cn_db;
  const auto &same = detail_.same_channel, &next = detail_.next_channel;
  const double same_db = same ? same->cost_db : 0.0, next_db = next ? next->cost_db : 0.0;
  const double share = same_db + next_db > 0.0 ? same_db / (same_db + next_db) : 0.0;
  if (same) take(others_on(SignalLoss::same_channel, *same, share * whole_db));
  if (next) take(others_on(SignalLoss::next_channel, *next, (1.0 - share) * whole_db));
  take({.what = SignalLoss::helpers, .decibel = -detail_.helped_db});
}

SignalBudget Budgeter::collect() {
  tower();
  take({.what = SignalLoss::transmitter_pattern, .decibel = detail_.station_pattern_db});
  ground();
  stop();
  others();
  const LearnedBias& learned = receiver_.learned[static_cast<std::size_t>(outlook_.band)];
  take({.what = SignalLoss::logbook, .decibel = -learned.bias_db});
  std::stable_sort(found_.steps.begin(), found_.steps.end(),
                   [](const SignalStep& a, const SignalStep& b) { return a.what < b.what; });
  found_.margin_db = *outlook_.margin_db;
  if (outlook_.field_p1812_dbuvm) {
    found_.margin_p1812_db = found_.margin_db + *outlook_.field_p1812_dbuvm - *outlook_.field_dbuvm;
    found_.margin_itm_db = found_.margin_db + *outlook_.field_itm_dbuvm - *outlook_.field_dbuvm;
  }
  return std::move(found_);
}

}  // namespace

std::string_view to_text(SignalLoss what) {
  const auto number = static_cast<std::size_t>(what);
  return number < kNames.size() ? kNames[number] : std::string_view{};
}

std::optional<SignalBudget> signal_budget(const LinkBudget& budget,
                                          std::span<const Station> stations,
                                          std::span<const Measurement> measurements,
                                          std::size_t index) {
  const Measurement& measurement = measurements[index];
  if (!measurement.heard() || !measurement.outlook.margin_db) return std::nullopt;
  return Budgeter(budget, stations, measurements, index).collect();
}

}  // namespace mastwise::reception
