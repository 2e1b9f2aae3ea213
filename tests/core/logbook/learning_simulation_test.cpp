#include "core/logbook/learning.hpp"
#include "tests/support/dice.hpp"
#include "tests/support/sanitized.hpp"

#include <array>
#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::learning;
using test::Dice;

// Checks the learning on logs drawn from a world with known biases: a station comes in at random by
// its margin, bias and deviation.
namespace {

constexpr std::size_t kOutcomesOfStop = 6;
constexpr std::array kGears{"roof", "mast"};

struct World {
  std::array<double, 3> band_db = {};
  std::array<double, 2> gear_db = {};
  std::vector<double> stop_db = {};  // none: 0 everywhere
};

std::string stop_name(std::size_t stop) {
  return "stop-" + std::to_string(stop);
}

Trial draw(Dice& dice, const World& world, std::size_t stop, std::size_t band) {
  const std::size_t gear = dice.below(kGears.size());
  const double margin_db = dice.between(-20.0, 20.0), deviation_db = dice.between(6.0, 11.0);
  const double stop_db = world.stop_db.empty() ? 0.0 : world.stop_db[stop];
  const double true_margin_db = margin_db + world.band_db[band] + world.gear_db[gear] + stop_db +
                                deviation_db * dice.normal();
  return {.margin_db = margin_db,
          .deviation_db = deviation_db,
          .outcome = true_margin_db > 0.0             ? Outcome::steady
                     : true_margin_db > -kBreaksUp_db ? Outcome::breaks_up
                                                      : Outcome::nothing,
          .band = static_cast<Band>(band),
          .gear = kGears[gear],
          .stop_id = stop_name(stop)};
}

std::vector<Trial> draw_log(Dice& dice, const World& world, std::size_t outcomes) {
  std::vector<Trial> log;
  for (std::size_t i = 0; i < outcomes; ++i) {
    log.push_back(draw(dice, world, i / kOutcomesOfStop, dice.below(3)));
  }
  return log;
}

// The Brier scores of new outcomes, by the computed and by the corrected chances.
struct Held {
  double computed = 0.0;
  double corrected = 0.0;
};
Held hold_out(Dice& dice, const World& world, const Learned& learned, std::size_t stops,
              bool known_stops) {
  constexpr int kHeldOut = 200;
  Held held;
  for (int i = 0; i < kHeldOut; ++i) {
    const Trial next = draw(dice, world, known_stops ? dice.below(stops) : 0, dice.below(3));
    const Correction correction =
        learned.correction(next.band, next.gear, known_stops ? next.stop_id : "");
    const double steady = next.outcome == Outcome::steady ? 1.0 : 0.0;
    const double computed = reception::chance_percent(next.margin_db, next.deviation_db) / 100.0;
    const double corrected =
        corrected_chance_percent(next.margin_db, next.deviation_db, correction) / 100.0;
    held.computed += (computed - steady) * (computed - steady) / kHeldOut;
    held.corrected += (corrected - steady) * (corrected - steady) / kHeldOut;
  }
  return held;
}

struct LogSize {
  std::size_t outcomes;
  int logs;
};
constexpr std::array kLogSizes{LogSize{5, 400},  LogSize{10, 400}, LogSize{20, 300},
                               LogSize{40, 200}, LogSize{80, 150}, LogSize{160, 80},
                               LogSize{500, 30}};

}  // namespace

// The bound is on the mean over logs of the ratio of Brier scores, corrected to computed, on 200
// new outcomes of the same world: for each size of log, and over all logs. A single log can be
// further off.
TEST_CASE("on well-calibrated logs the correction costs at most 2 % of the Brier score",
          "[learning]") {
  for (const bool known_stops : {false, true}) {
    double sum = 0.0;
    int all = 0;
    for (const LogSize size : kLogSizes) {
      double sum_of_size = 0.0;
      for (int log = 0; log < size.logs; ++log) {
        Dice dice(static_cast<std::uint64_t>(log) * 1000 + size.outcomes);
        const World calibrated;
        const Learned learned = learn(draw_log(dice, calibrated, size.outcomes));
        const std::size_t stops = (size.outcomes + kOutcomesOfStop - 1) / kOutcomesOfStop;
        const Held held = hold_out(dice, calibrated, learned, stops, known_stops);
        sum_of_size += held.corrected / held.computed;
      }
      INFO("logs of " << size.outcomes << " outcomes, at " << (known_stops ? "known" : "new")
                      << " stops: mean ratio " << sum_of_size / size.logs);
      CHECK(sum_of_size / size.logs <= 1.02);
      sum += sum_of_size;
      all += size.logs;
    }
    CHECK(sum / all <= 1.02);
  }
}

// Owners whose bands, gears and stops differ as the priors say: what the mean owner sees at the
// next stop.
TEST_CASE("the next stop's Brier score never gets worse on average, from the first outcome on",
          "[learning]") {
  for (const LogSize size :
       {LogSize{1, 4000}, LogSize{3, 3000}, LogSize{10, 1500}, LogSize{100, 300}}) {
    Held sum;
    for (int owner = 0; owner < (test::kSanitized ? size.logs / 20 : size.logs); ++owner) {
      Dice dice(static_cast<std::uint64_t>(owner) * 1000 + size.outcomes);
      World world;
      for (double& band_db : world.band_db) band_db = kBandPrior_db * dice.normal();
      for (double& gear_db : world.gear_db) gear_db = kGearPrior_db * dice.normal();
      const std::size_t stops = (size.outcomes + kOutcomesOfStop - 1) / kOutcomesOfStop;
      for (std::size_t stop = 0; stop < stops; ++stop) {
        world.stop_db.push_back(kStopPrior_db * dice.normal());
      }
      const Learned learned = learn(draw_log(dice, world, size.outcomes));
      // At a stop that the log does not have.
      world.stop_db = {kStopPrior_db * dice.normal()};
      const Held held = hold_out(dice, world, learned, stops, false);
      sum.computed += held.computed;
      sum.corrected += held.corrected;
    }
    INFO(size.outcomes << " outcomes: ratio " << sum.corrected / sum.computed);
    CHECK(sum.corrected <= sum.computed);
    if (size.outcomes == 100) CHECK(sum.corrected < 0.98 * sum.computed);
  }
}

TEST_CASE("on logs with a bias of 6 dB the correction improves the Brier score", "[learning]") {
  const auto mean_ratio = [](std::size_t outcomes, int logs) {
    double sum = 0.0;
    for (int log = 0; log < logs; ++log) {
      Dice dice(static_cast<std::uint64_t>(log) * 1000 + 7);
      const World world{.band_db = {-6.0, -6.0, 0.0}};
      const Learned learned = learn(draw_log(dice, world, outcomes));
      const Held held = hold_out(dice, world, learned, 1, false);
      sum += held.corrected / held.computed;
    }
    return sum / logs;
  };
  CHECK(mean_ratio(20, 200) <= 1.0);
  CHECK(mean_ratio(80, 100) <= 0.96);
  CHECK(mean_ratio(500, 20) <= 0.90);
}

TEST_CASE("the 95 % interval contains the bias of logs drawn from the priors", "[learning]") {
  constexpr int kLogs = 2000;
  int at_new_stop = 0, at_known_stop = 0;
  for (int log = 0; log < kLogs; ++log) {
    Dice dice(50'000 + static_cast<std::uint64_t>(log));
    World world;
    for (double& effect_db : world.band_db) effect_db = kBandPrior_db * dice.normal();
    for (double& effect_db : world.gear_db) effect_db = kGearPrior_db * dice.normal();
    const std::size_t outcomes = 5 + dice.below(76);
    for (std::size_t i = 0; i < outcomes; i += kOutcomesOfStop) {
      world.stop_db.push_back(kStopPrior_db * dice.normal());
    }
    const Learned learned = learn(draw_log(dice, world, outcomes));
    const std::size_t band = dice.below(3), gear = dice.below(2);
    const double bias_db = world.band_db[band] + world.gear_db[gear];
    const auto holds = [](const Correction& correction, double true_db) {
      return std::fabs(correction.bias_db - true_db) <= 1.959964 * correction.sigma_db ? 1 : 0;
    };
    at_new_stop += holds(learned.correction(static_cast<Band>(band), kGears[gear]), bias_db);
    const std::size_t stop = dice.below(world.stop_db.size());
    at_known_stop +=
        holds(learned.correction(static_cast<Band>(band), kGears[gear], stop_name(stop)),
              bias_db + world.stop_db[stop]);
  }
  for (const int held : {at_new_stop, at_known_stop}) {
    INFO(held << " of " << kLogs);
    CHECK(held >= 0.93 * kLogs);
    CHECK(held <= 0.995 * kLogs);
  }
}

TEST_CASE("a bias of 6 dB is recovered within two sigmas from 40 outcomes on", "[learning]") {
  constexpr int kLogs = 500;
  for (const double bias_db : {-6.0, 6.0}) {
    for (const std::size_t outcomes : {40, 80}) {
      int within = 0;
      double sum_db = 0.0;
      for (int log = 0; log < kLogs; ++log) {
        Dice dice(90'000 + static_cast<std::uint64_t>(log));
        const World world{.band_db = {0.0, bias_db, 0.0}};
        std::vector<Trial> trials;
        for (std::size_t i = 0; i < outcomes; ++i) {
          trials.push_back(draw(dice, world, i / kOutcomesOfStop, 1));
        }
        const Correction found = learn(trials).correction(Band::high_vhf, "roof");
        within += std::fabs(found.bias_db - bias_db) <= 2.0 * found.sigma_db ? 1 : 0;
        sum_db += found.bias_db;
      }
      INFO(bias_db << " dB, " << outcomes << " outcomes: " << within << " of " << kLogs << ", mean "
                   << sum_db / kLogs);
      CHECK(within >= 0.93 * kLogs);
      // Shrunk toward 0, but not by much.
      CHECK(sum_db / kLogs == Approx(bias_db).margin(1.5));
    }
  }
}

// One stop behind a hill nobody knows of, however many stations were tried there.
TEST_CASE("a single stop never moves a band by more than its prior", "[learning]") {
  for (const std::size_t outcomes : {1u, 3u, 10u, 100u}) {
    for (const Outcome outcome : {Outcome::nothing, Outcome::steady}) {
      const double margin_db = outcome == Outcome::nothing ? 30.0 : -30.0;
      std::vector<Trial> log;
      for (std::size_t i = 0; i < outcomes; ++i) {
        log.push_back({.margin_db = margin_db,
                       .deviation_db = 8.0,
                       .outcome = outcome,
                       .band = Band::uhf,
                       .gear = "roof",
                       .stop_id = "one"});
      }
      const Correction elsewhere = learn(log).correction(Band::uhf, "another gear", "two");
      INFO(outcomes << " outcomes: " << elsewhere.bias_db << " dB");
      CHECK(std::fabs(elsewhere.bias_db) <= kBandPrior_db);
    }
  }
}
