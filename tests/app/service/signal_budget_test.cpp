#include "core/reception/signal_budget.hpp"

#include "app/service/startup.hpp"
#include "app/service/stop_survey.hpp"
#include "core/gear/modes.hpp"
#include "core/gear/noise.hpp"
#include "core/gear/receive_chain.hpp"

#include <cmath>
#include <set>

#include <catch2/catch.hpp>

// Where the signal goes, in the practice area.
using namespace mastwise;
using reception::SignalBudget;
using reception::SignalLoss;

namespace {

struct Budgets {
  std::vector<Station> stations = {};
  std::vector<reception::Outlook> outlooks = {};
  std::vector<SignalBudget> budgets = {};
};

Budgets budgets_for(reception::Receiver receiver) {
  const auto practice = service::load_practice();
  REQUIRE(practice);
  receiver.position = practice->position;
  StopSurveyor surveyor({.practice_stations = practice->stations,
                         .practice_terrain_folder = service::practice_folder()},
                        2);
  const auto visited = surveyor.countries().visit(true);
  REQUIRE(visited);
  auto survey = surveyor.survey(*visited->country, receiver, {});
  REQUIRE(survey);
  REQUIRE(*survey);
  Budgets found;
  for (std::size_t i = 0; i < (*survey)->size(); ++i) {
    const auto budget = (*survey)->budget(i);
    INFO((*survey)->station(i).call_sign);
    REQUIRE(budget.has_value() == (*survey)->outlook(i)->margin_db.has_value());
    if (!budget) continue;
    found.stations.push_back((*survey)->station(i));
    found.outlooks.push_back(*(*survey)->outlook(i));
    found.budgets.push_back(*budget);
  }
  return found;
}

double sum_db(const SignalBudget& budget) {
  double left_db = budget.tower_db;
  for (const auto& step : budget.steps) left_db -= step.decibel;
  return left_db;
}

const reception::SignalStep* step_of(const SignalBudget& budget, SignalLoss what) {
  for (const auto& step : budget.steps) {
    if (step.what == what) return &step;
  }
  return nullptr;
}

reception::Receiver plain() {
  return {.position = *Position::at_deg(0.0, 0.0), .gear = gear_of({})};
}

}  // namespace

TEST_CASE("the steps of every station of the practice area add up to its margin") {
  std::vector<reception::Receiver> receivers(8, plain());
  receivers[1].surroundings = reception::Surroundings::forest;
  receivers[2].surroundings = reception::Surroundings::town;
  receivers[2].inverter_on = true;
  receivers[3].gear.antenna.horizontal = false;
  receivers[4].learned.fill({.bias_db = -4.5, .sigma_db = 2.0, .stops = 3});
  receivers[5].gear = gear::switched_off(receivers[5].gear);
  receivers[5].gear.amplifier.reset();
  receivers[5].gear.off_loss_db = 12.0;
  receivers[6].gear.amplifier =
      gear::Amplifier{.gain_db = 20.0, .noise_figure_db = 3.0, .overload_dbm = -60.0};
  receivers[7].ring.sides.fill(reception::usual_side(reception::SideKind::trees, false, true));
  std::set<SignalLoss> seen;
  for (std::size_t i = 0; i < receivers.size(); ++i) {
    const Budgets found = budgets_for(receivers[i]);
    REQUIRE(found.budgets.size() == 32);
    for (std::size_t k = 0; k < found.budgets.size(); ++k) {
      INFO("receiver " << i << ", " << found.stations[k].call_sign);
      const SignalBudget& budget = found.budgets[k];
      CHECK(std::abs(sum_db(budget) - *found.outlooks[k].margin_db) < 1e-6);
      CHECK(budget.margin_db == *found.outlooks[k].margin_db);
      for (const auto& step : budget.steps) seen.insert(step.what);
    }
  }
  // All but a second transmitter of one program, which the practice area does not have.
  CHECK(seen.size() == reception::kSignalLosses - 1);
  CHECK(seen.count(SignalLoss::helpers) == 0);
}

TEST_CASE("the two models' margins lie around the forecast's, as far apart as their fields") {
  const Budgets found = budgets_for(plain());
  for (std::size_t k = 0; k < found.budgets.size(); ++k) {
    const SignalBudget& budget = found.budgets[k];
    INFO(found.stations[k].call_sign);
    REQUIRE(budget.margin_p1812_db);
    REQUIRE(budget.margin_itm_db);
    CHECK((*budget.margin_p1812_db + *budget.margin_itm_db) / 2.0 == Approx(budget.margin_db));
    CHECK(std::abs(*budget.margin_p1812_db - *budget.margin_itm_db) ==
          Approx(*found.outlooks[k].spread_db));
  }
}

// Recommendation ITU-R P.525-4, section 2.3: 32.4 + 20 log f + 20 log d between isotropic antennas;
// a half-wave dipole has 2.15 dBi at either end [Recommendation ITU-R BS.561].
TEST_CASE("the step of distance is the loss of free space between two dipoles") {
  const Budgets found = budgets_for(plain());
  for (std::size_t k = 0; k < found.budgets.size(); ++k) {
    const reception::Outlook& outlook = found.outlooks[k];
    INFO(found.stations[k].call_sign);
    const double free_space_db = 32.45 + 20.0 * std::log10(outlook.frequency_mhz) +
                                 20.0 * std::log10(outlook.distance_m / 1000.0);
    const auto* distance = step_of(found.budgets[k], SignalLoss::distance);
    REQUIRE(distance != nullptr);
    CHECK(distance->decibel == Approx(free_space_db - 2.0 * 2.15).margin(0.05));
    CHECK(distance->distance_m == outlook.distance_m);
  }
}

// The planning factors of the FCC's Sixth Report and Order, appendix A: thermal noise -106.2 dBm,
// carrier-to-noise ratio 15, here 15.7: 15.19 as measured and half a decibel for echoes in the
// open; ERP in dBm as 60 + 10 log kW.
TEST_CASE("the tower's figure is its power and the antenna's gain above what the TV needs") {
  const Budgets found = budgets_for(plain());
  const gear::Gear gear = plain().gear;
  std::size_t checked = 0;
  for (std::size_t k = 0; k < found.budgets.size(); ++k) {
    const Station& station = found.stations[k];
    if (station.standard && *station.standard != BroadcastStandard::atsc1) continue;
    const auto slot = channel_slot(station.raster, station.rf_channel);
    REQUIRE(slot);
    const gear::ReceiveChain chain = gear::receive_chain(
        gear, *slot, gear::default_mode(BroadcastStandard::atsc1), noise_sources(plain()));
    const double needed_dbm = -106.2 + chain.noise_figure_db + 15.7;
    const double erp_dbm = 60.0 + 10.0 * std::log10(*station.erp_kw);
    INFO(station.call_sign);
    CHECK(found.budgets[k].tower_db ==
          Approx(erp_dbm + gear.antenna.in(slot->band).gain_dbd - needed_dbm).margin(0.1));
    ++checked;
  }
  CHECK(checked >= 20);
}

TEST_CASE("a low antenna, crossed polarization and a dead amplifier are steps of their own") {
  const Budgets usual = budgets_for(plain());
  reception::Receiver crossed = plain();
  crossed.gear.antenna.horizontal = false;
  reception::Receiver dead = plain();
  dead.gear.amplifier.reset();
  dead.gear.off_loss_db = 12.0;
  const Budgets upright = budgets_for(crossed), unpowered = budgets_for(dead);
  bool any_crossed = false;
  for (std::size_t k = 0; k < usual.budgets.size(); ++k) {
    INFO(usual.stations[k].call_sign);
    const auto* low = step_of(usual.budgets[k], SignalLoss::low_antenna);
    REQUIRE(low != nullptr);
    CHECK(low->height_m == plain().gear.height_m);
    CHECK(low->decibel > 0.0);
    if (const auto* across = step_of(upright.budgets[k], SignalLoss::polarization)) {
      CHECK(across->decibel == 15.0);
      any_crossed = true;
    }
    const auto* off = step_of(unpowered.budgets[k], SignalLoss::amplifier_off);
    REQUIRE(off != nullptr);
    // A loss before all else adds itself to the noise figure [Friis].
    CHECK(off->decibel == Approx(12.0));
  }
  CHECK(any_crossed);
}
