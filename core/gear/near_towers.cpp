#include "core/gear/near_towers.hpp"

#include "core/gear/decibels.hpp"
#include "core/gear/receive_chain.hpp"
#include "core/propagation/field.hpp"
#include "core/propagation/itm/medium.hpp"
#include "core/text/words.hpp"

#include <string>
#include <vector>

#include <fmt/format.h>

namespace mastwise::gear {
namespace {

constexpr double kRadio_mhz = 98.0, kCell_mhz = 635.0;

double tower_dbm(TowerService service, TowerRange range, double gain_dbd, double frequency_mhz) {
  const double loss_db = itm::free_space_loss_db(frequency_mhz, tower_distance_m(service, range));
  const double field_dbuvm =
      field_of_1kw_dbuvm(loss_db, frequency_mhz) + to_db(tower_erp_kw(service));
  return received_power_dbm(field_dbuvm, gain_dbd, frequency_mhz);
}

}  // namespace

std::string_view to_text(TowerRange range) {
  switch (range) {
    case TowerRange::none:
      return "none";
    case TowerRange::in_sight:
      return "in sight";
    case TowerRange::near:
      return "near";
    case TowerRange::beside:
      return "beside";
  }
  return "none";
}

Result<TowerRange> parse_tower_range(std::string_view text) {
  for (const TowerRange range : kTowerRanges) {
    if (words::same_word(to_text(range), words::trimmed(text))) return range;
  }
  return Error{.what = fmt::format("\"{}\" does not say how near a tower is", text),
               .remedy = "use none, in sight, near or beside"};
}

double tower_distance_m(TowerService service, TowerRange range) {
  const bool radio = service == TowerService::radio;
  switch (range) {
    case TowerRange::in_sight:
      return radio ? 16'000.0 : 1'600.0;
    case TowerRange::near:
      return radio ? 5'000.0 : 400.0;
    default:
      return radio ? 1'600.0 : 160.0;
  }
}

double tower_erp_kw(TowerService service) {
  return service == TowerService::radio ? 100.0 : 1.0;
}

std::optional<double> near_towers_dbm(const Antenna& antenna, const NearTowers& towers) {
  std::vector<double> powers_dbm;
  if (towers.radio != TowerRange::none) {
    powers_dbm.push_back(
        tower_dbm(TowerService::radio, towers.radio, antenna.low_vhf.gain_dbd, kRadio_mhz));
  }
  if (towers.cell != TowerRange::none) {
    powers_dbm.push_back(
        tower_dbm(TowerService::cell, towers.cell, antenna.uhf.gain_dbd, kCell_mhz));
  }
  return summed_power_dbm(powers_dbm);
}

}  // namespace mastwise::gear
