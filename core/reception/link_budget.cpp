#include "core/reception/link_budget.hpp"

#include "core/gear/decibels.hpp"
#include "core/gear/nulls.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace mastwise::reception {
namespace {

constexpr double kCrossPolarization_db = 15.0;

// Nodes and weights to integrate over a standard normal distribution: Gauss-Hermite with five
// points [Abramowitz and Stegun table 25.10, scaled].
struct Node {
  double deviate;
  double weight;
};
constexpr std::array kNormalNodes{
    Node{-2.8569700138728, 0.0112574113277}, Node{-1.3556261799742, 0.2220759220057},
    Node{0.0, 0.5333333333333}, Node{1.3556261799742, 0.2220759220057},
    Node{2.8569700138728, 0.0112574113277}};

Receiver with_antenna_in_place(Receiver receiver) {
  receiver.gear.antenna = gear::in_place(std::move(receiver.gear.antenna));
  return receiver;
}

}  // namespace

double milliwatts(double dbm) {
  return gear::from_db(dbm);
}

double dbm(double milliwatts) {
  return gear::to_db(milliwatts);
}

BroadcastStandard standard_of(const Station& station) {
  if (station.standard) return *station.standard;
  switch (station.raster) {
    case Raster::atsc:
      return BroadcastStandard::atsc1;
    case Raster::europe:
    case Raster::australia:
      return BroadcastStandard::dvb_t;
    case Raster::japan:
    case Raster::brazil:
      return BroadcastStandard::isdb_t;
  }
  return BroadcastStandard::atsc1;
}

gear::ChannelKind channel_kind(Surroundings surroundings) {
  return figures(surroundings).built ? gear::ChannelKind::rayleigh : gear::ChannelKind::ricean;
}

Measurement start_measurement(const Station& station) {
  Measurement measurement;
  measurement.standard = standard_of(station);
  const auto slot = channel_slot(station.raster, station.rf_channel);
  if (!slot) {
    measurement.detail.missing = Missing::channel;
    return measurement;
  }
  measurement.slot = *slot;
  measurement.outlook.frequency_mhz = slot->center_mhz;
  measurement.outlook.band = slot->band;
  return measurement;
}

HeadingLoss heading_loss(const gear::Pattern& pattern, Turn off, double error_deg) {
  double mean_db = 0.0;
  double square_db = 0.0;
  for (const Node& node : kNormalNodes) {
    const double loss_db =
        -pattern.relative_db(Turn::clockwise_deg(off.clockwise_deg() + node.deviate * error_deg));
    mean_db += node.weight * loss_db;
    square_db += node.weight * loss_db * loss_db;
  }
  return {mean_db, std::sqrt(std::max(0.0, square_db - mean_db * mean_db))};
}

LinkBudget::LinkBudget(Receiver receiver)
    : receiver_(with_antenna_in_place(std::move(receiver))),
      without_amplifier_(gear::switched_off(receiver_.gear)),
      noise_(noise_sources(receiver_)),
      channel_(channel_kind(receiver_.surroundings)) {
  for (const Band band : {Band::low_vhf, Band::high_vhf, Band::uhf}) {
    heading_losses_[static_cast<std::size_t>(band)] =
        heading_loss(receiver_.gear.antenna.in(band).pattern, Turn(), receiver_.heading_error_deg);
  }
}

double LinkBudget::polarization_loss_db(const Station& station) const {
  const auto crossed =
      receiver_.gear.antenna.horizontal ? Polarization::vertical : Polarization::horizontal;
  return station.polarization == crossed ? kCrossPolarization_db : 0.0;
}

double LinkBudget::off_axis_db(Band band, Turn off_axis) const {
  return receiver_.gear.antenna.in(band).pattern.relative_db(off_axis);
}

gear::ReceiveChain LinkBudget::chain(const Measurement& measurement, bool with_amplifier) const {
  return gear::receive_chain(with_amplifier ? receiver_.gear : without_amplifier_, measurement.slot,
                             gear::default_mode(measurement.standard), noise_, channel_);
}

void LinkBudget::apply(const Station& station, Measurement& measurement,
                       bool with_amplifier) const {
  Outlook& outlook = measurement.outlook;
  Detail& detail = measurement.detail;
  outlook.decoding = gear::decoding(receiver_.gear.decoders, station, measurement.standard);
  if (!outlook.field_dbuvm) return;
  const gear::ReceiveChain chain = this->chain(measurement, with_amplifier);
  const HeadingLoss& heading = heading_losses_[static_cast<std::size_t>(outlook.band)];
  const LearnedBias& learned = receiver_.learned[static_cast<std::size_t>(outlook.band)];
  outlook.deviations.logbook_db = learned.sigma_db;
  outlook.deviations.noise_db = chain.noise_deviation_db;
  detail.polarization_db = polarization_loss_db(station);
  detail.heading_db = heading.mean_db;
  detail.received_dbm =
      gear::received_power_dbm(*outlook.field_dbuvm, chain.gain_dbd, outlook.frequency_mhz) -
      detail.polarization_db - detail.heading_db + learned.bias_db;
  detail.noise_dbm = chain.noise_power_dbm;
  detail.external_noise_db = chain.noise_power_dbm - chain.noise_figure_db -
                             gear::thermal_noise_dbm(chain.noise_bandwidth_hz);
  detail.required_cn_db = chain.required_cn_db;
  outlook.deviations.heading_db = heading.deviation_db;
  outlook.amplifier_off = !with_amplifier && receiver_.gear.amplifier.has_value();
  detail.helped_db = 0.0;
  conclude(measurement, {.needed_alone_dbm = detail.noise_dbm + detail.required_cn_db});
}

Spread own_spread(const Deviations& deviations) {
  Deviations own = deviations;
  own.interference_db = own.station_db = 0.0;
  return {.deviation_db = own.total_db(), .unknown_pattern = deviations.station_db > 0.0};
}

void conclude(Measurement& measurement, const Rivals& rivals) {
  Detail& detail = measurement.detail;
  Outlook& outlook = measurement.outlook;
  detail.rivals = rivals;
  const double wanted_dbm = detail.received_dbm + detail.helped_db;
  const Spread spread = own_spread(outlook.deviations);
  outlook.margin_db = wanted_dbm - rivals.needed_dbm();
  outlook.deviations.interference_db = rivals.deviation_db();
  const Requirement requirement(rivals);
  outlook.chance_cap_percent = 100.0;
  if (outlook.terrain_coverage < kKnownEnough) {
    const double rough_percent =
        requirement.chance_percent(wanted_dbm - detail.rough_ground_db, spread);
    outlook.chance_cap_percent = chance_cap_percent(outlook.terrain_coverage, rough_percent);
  }
  if (outlook.decoding != gear::Decoding::possible) {
    outlook.chance_cap_percent = std::min(outlook.chance_cap_percent, kMayNotDecode_percent);
  }
  outlook.chance_percent =
      std::min(outlook.chance_cap_percent, requirement.chance_percent(wanted_dbm, spread));
  if (outlook.decoding == gear::Decoding::impossible) outlook.chance_percent.reset();
}

}  // namespace mastwise::reception
