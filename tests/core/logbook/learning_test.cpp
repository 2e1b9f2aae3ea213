#include "core/logbook/learning.hpp"

#include "tests/support/logbook_records.hpp"

#include <cmath>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::learning;

namespace {

Trial trial(double margin_db, Outcome outcome, Band band = Band::high_vhf,
            const std::string& stop = "a", const std::string& gear = "roof") {
  return {.margin_db = margin_db,
          .deviation_db = 8.0,
          .outcome = outcome,
          .band = band,
          .gear = gear,
          .stop_id = stop};
}

// Stations that come in exactly by their margin and the bias, without randomness.
std::vector<Trial> shifted(double bias_db, int stops, Band band = Band::high_vhf) {
  std::vector<Trial> trials;
  for (int stop = 0; stop < stops; ++stop) {
    for (double margin_db = -18.0; margin_db <= 18.0; margin_db += 4.0) {
      const double true_db = margin_db + bias_db;
      const Outcome outcome = true_db > 0.0             ? Outcome::steady
                              : true_db > -kBreaksUp_db ? Outcome::breaks_up
                                                        : Outcome::nothing;
      trials.push_back(trial(margin_db, outcome, band, "stop-" + std::to_string(stop)));
    }
  }
  return trials;
}

}  // namespace

TEST_CASE("without outcomes the correction is 0 with the prior's sigma", "[learning]") {
  const Correction correction = learn({}).correction(Band::uhf, "roof");
  CHECK(correction.bias_db == 0.0);
  CHECK(correction.sigma_db == Approx(std::hypot(kBandPrior_db, kGearPrior_db)));
  CHECK(correction.outcomes == 0);
  CHECK_FALSE(correction.applied);
  CHECK(corrected_chance_percent(5.0, 8.0, correction) == reception::chance_percent(5.0, 8.0));
}

// One outcome against the most probable bias found by trying every bias in turn.
TEST_CASE("the most probable bias equals the result of an exhaustive search", "[learning]") {
  for (const Outcome outcome : {Outcome::steady, Outcome::breaks_up, Outcome::nothing}) {
    for (const double margin_db : {-12.0, -3.0, 0.0, 9.0}) {
      const auto normal = [](double z) { return 0.5 * std::erfc(-z / std::sqrt(2.0)); };
      const double prior_db2 = kBandPrior_db * kBandPrior_db + kGearPrior_db * kGearPrior_db +
                               kStopPrior_db * kStopPrior_db;
      double best_db = 0.0, best = -1e300;
      for (double bias_db = -40.0; bias_db <= 40.0; bias_db += 0.001) {
        const double steady = normal((margin_db + bias_db) / 8.0);
        const double nothing = normal(-(margin_db + bias_db + kBreaksUp_db) / 8.0);
        const double chance = outcome == Outcome::steady    ? steady
                              : outcome == Outcome::nothing ? nothing
                                                            : 1.0 - steady - nothing;
        const double height = std::log((1.0 - kMistakes) * chance + kMistakes / 3.0) -
                              0.5 * bias_db * bias_db / prior_db2;
        if (height > best) {
          best = height;
          best_db = bias_db;
        }
      }
      const Learned learned = learn(std::vector{trial(margin_db, outcome)});
      INFO(to_text(outcome) << " at " << margin_db << " dB");
      // Of one outcome the sum of the three effects is as likely as one effect of their variance.
      CHECK(learned.correction(Band::high_vhf, "roof", "a").bias_db ==
            Approx(best_db).margin(0.01));
      // Each takes its part of it, by its variance.
      CHECK(learned.correction(Band::high_vhf, "roof").bias_db ==
            Approx(best_db * (prior_db2 - kStopPrior_db * kStopPrior_db) / prior_db2).margin(0.01));
    }
  }
}

TEST_CASE("the sigmas of effects and of their sums are those of the whole matrix", "[learning]") {
  // Two bands, one gear, two stops, worked out with a matrix of all five effects at once: with
  // margins symmetric about the middle of the steady threshold and the lower one, and one steady
  // for each that is not, the most probable effects are 0 and the information of each is known.
  const double edge_db = -0.5 * kBreaksUp_db;
  std::vector<Trial> trials;
  for (const char* stop : {"a", "b"}) {
    for (const Band band : {Band::high_vhf, Band::uhf}) {
      trials.push_back(trial(edge_db, Outcome::steady, band, stop));
      trials.push_back(trial(edge_db, Outcome::nothing, band, stop));
    }
  }
  const double z = edge_db / 8.0;
  const double density = std::exp(-0.5 * z * z) / std::sqrt(2.0 * 3.14159265358979324) / 8.0;
  const double steady = 0.5 * std::erfc(-z / std::sqrt(2.0));
  const double slope = (1.0 - kMistakes) * density;
  const double one =
      2.0 * slope * slope / ((1.0 - kMistakes) * steady + kMistakes / 3.0);  // of one outcome
  // Sum and difference over bands and over stops are independent, since all is symmetric:
  // u = (v + w) / 2 of the bands' effects, likewise of the stops'. 8 outcomes see u + g + t.
  const double band2 = kBandPrior_db * kBandPrior_db, gear2 = kGearPrior_db * kGearPrior_db,
               stop2 = kStopPrior_db * kStopPrior_db;
  const double common = band2 / 2.0 + gear2 + stop2 / 2.0, wanted = band2 / 2.0 + gear2;
  const double mean = wanted - wanted * wanted / (common + 1.0 / (8.0 * one));
  const double halved = 1.0 / (2.0 / band2 + 8.0 * one);  // half the bands' difference
  const Correction correction = learn(trials).correction(Band::uhf, "roof");
  CHECK(correction.bias_db == Approx(0.0).margin(1e-3));
  CHECK(correction.sigma_db == Approx(std::sqrt(mean + halved)).epsilon(1e-4));
  // With a stop, u + g + t and half of each difference.
  const double all = 1.0 / (1.0 / common + 8.0 * one);
  const double stops_halved = 1.0 / (2.0 / stop2 + 8.0 * one);
  CHECK(learn(trials).correction(Band::uhf, "roof", "a").sigma_db ==
        Approx(std::sqrt(all + halved + stops_halved)).epsilon(1e-4));
}

TEST_CASE("few outcomes move the bias little, many move it fully, failures like successes",
          "[learning]") {
  const auto bias_db = [](double true_db, int stops) {
    return learn(shifted(true_db, stops)).correction(Band::high_vhf, "roof").bias_db;
  };
  CHECK(std::fabs(bias_db(-10.0, 1)) < std::fabs(bias_db(-10.0, 4)));
  CHECK(bias_db(-10.0, 30) == Approx(-10.0).margin(2.0));
  // The same log with its outcomes mirrored about the middle of the two thresholds.
  std::vector<Trial> failures = shifted(-6.0, 5), successes = failures;
  for (Trial& turned : successes) {
    turned.margin_db = -turned.margin_db - kBreaksUp_db;
    if (turned.outcome != Outcome::breaks_up) {
      turned.outcome = turned.outcome == Outcome::steady ? Outcome::nothing : Outcome::steady;
    }
  }
  CHECK(learn(failures).correction(Band::high_vhf, "roof").bias_db ==
        Approx(-learn(successes).correction(Band::high_vhf, "roof").bias_db).margin(1e-3));
}

TEST_CASE("one plainly wrong touch does not outweigh a log", "[learning]") {
  std::vector<Trial> trials = shifted(0.0, 4);
  const double before_db = learn(trials).correction(Band::high_vhf, "roof").bias_db;
  trials.push_back(trial(60.0, Outcome::nothing));
  CHECK(learn(trials).correction(Band::high_vhf, "roof").bias_db == Approx(before_db).margin(0.1));
}

TEST_CASE("a band's bias stays with its band, a gear's with its gear, a stop's with its stop",
          "[learning]") {
  std::vector<Trial> trials = shifted(-10.0, 8, Band::high_vhf);
  for (const Trial& good : shifted(0.0, 8, Band::uhf)) trials.push_back(good);
  const Learned learned = learn(trials);
  CHECK(learned.correction(Band::high_vhf, "roof").bias_db < -6.0);
  CHECK(std::fabs(learned.correction(Band::uhf, "roof").bias_db) < 2.5);
  const Correction low = learned.correction(Band::low_vhf, "roof");
  CHECK(low.outcomes == 0);
  CHECK_FALSE(low.applied);
  // An unknown gear has the full spread of gears.
  CHECK(learned.correction(Band::high_vhf, "mast").sigma_db >
        learned.correction(Band::high_vhf, "roof").sigma_db);

  std::vector<Trial> behind_a_hill = shifted(0.0, 8);
  for (Trial& there : shifted(-15.0, 1)) {
    there.stop_id = "hill";
    behind_a_hill.push_back(there);
  }
  const Learned places = learn(behind_a_hill);
  CHECK(places.correction(Band::high_vhf, "roof", "hill").bias_db < -4.0);
  CHECK(std::fabs(places.correction(Band::high_vhf, "roof", "stop-1").bias_db) < 2.0);
  CHECK(std::fabs(places.correction(Band::high_vhf, "roof").bias_db) < 2.0);
}

TEST_CASE("an applied correction moves the margin and raises the deviation", "[learning]") {
  const Correction correction{.bias_db = -6.0, .sigma_db = 3.0, .applied = true};
  CHECK(corrected_chance_percent(4.0, 4.0, correction) ==
        Approx(reception::chance_percent(-2.0, 5.0)));
}

TEST_CASE("outcomes without margin, or deleted, teach nothing", "[learning]") {
  OutcomeRecord good = test::full_outcome("a"), bare = good, deleted = good;
  bare.margin_db.reset();
  deleted.mark.deleted = true;
  const auto found = trials(std::vector{good, bare, deleted});
  REQUIRE(found.size() == 1);
  CHECK(found[0].margin_db == *good.margin_db);
  CHECK(found[0].deviation_db == *good.deviation_db);
  CHECK(found[0].band == Band::high_vhf);
  CHECK(found[0].stop_id == "a");
}
