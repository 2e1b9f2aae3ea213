#include "core/gear/receive_chain.hpp"

#include "core/gear/decibels.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace mastwise::gear {
namespace {

// A wave of field E received by the effective area of a half-wave dipole, 1.641 lambda^2 / (4 pi),
// with the impedance of free space: P = E^2 / 376.73 ohm * area. Agrees with the planning factors
// to a hundredth.
constexpr double kDipolePowerDbm = -75.06;

double chain_noise_figure_db(const Gear& gear, double frequency_mhz) {
  std::array<Stage, 5> stages{};
  std::size_t count = 0;
  if (gear.amplifier) stages[count++] = {gear.amplifier->gain_db, gear.amplifier->noise_figure_db};
  if (gear.off_loss_db > 0.0) stages[count++] = loss_stage(gear.off_loss_db);
  stages[count++] = loss_stage(gear.cable.loss_db(frequency_mhz));
  stages[count++] = loss_stage(split_loss_db(gear.splits));
  stages[count++] = {.gain_db = 0.0, .noise_figure_db = gear.receiver_noise_figure_db};
  return cascade_noise_figure_db(std::span(stages).first(count));
}

}  // namespace

ReceiveChain receive_chain(const Gear& gear, const ChannelSlot& slot, const Mode& mode,
                           const NoiseSources& sources, ChannelKind channel) {
  const double noise_figure_db = chain_noise_figure_db(gear, slot.center_mhz);
  const double bandwidth_hz = noise_bandwidth_hz(mode.standard, slot.bandwidth_mhz());
  const TotalNoise noise = total_noise(sources, slot.band, slot.center_mhz, noise_figure_db);
  const double noise_dbm = thermal_noise_dbm(bandwidth_hz) + noise.total_db;
  const double gain_dbd = gear.antenna.in(slot.band).gain_dbd;
  const double required_cn_db = mode.required_cn_db(channel);
  return {.noise_figure_db = noise_figure_db,
          .noise_bandwidth_hz = bandwidth_hz,
          .external_noise_db = noise.external_db,
          .noise_power_dbm = noise_dbm,
          .noise_deviation_db = noise.deviation_db,
          .gain_dbd = gain_dbd,
          .required_cn_db = required_cn_db,
          .required_field_dbuvm =
              field_for_power_dbuvm(noise_dbm + required_cn_db, gain_dbd, slot.center_mhz)};
}

double received_power_dbm(double field_dbuvm, double gain_dbd, double frequency_mhz) {
  return field_dbuvm + gain_dbd - 20.0 * std::log10(frequency_mhz) + kDipolePowerDbm;
}

double field_for_power_dbuvm(double power_dbm, double gain_dbd, double frequency_mhz) {
  return power_dbm - gain_dbd + 20.0 * std::log10(frequency_mhz) - kDipolePowerDbm;
}

std::optional<double> summed_power_dbm(std::span<const double> powers_dbm) {
  if (powers_dbm.empty()) return std::nullopt;
  double sum_mw = 0.0;
  for (const double power_dbm : powers_dbm) sum_mw += from_db(power_dbm);
  return to_db(sum_mw);
}

std::optional<Overload> overload(const Gear& gear, std::span<const double> received_dbm) {
  const auto summed_dbm = summed_power_dbm(received_dbm);
  if (!gear.amplifier || !summed_dbm || *summed_dbm < gear.amplifier->overload_dbm) {
    return std::nullopt;
  }
  return Overload{.summed_dbm = *summed_dbm, .limit_dbm = gear.amplifier->overload_dbm};
}

}  // namespace mastwise::gear
